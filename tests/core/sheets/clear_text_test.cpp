// Clear ground as letters, with what of it glass shows.
#include <gtest/gtest.h>

#include "core/sheets/text_tables.h"

namespace wend::sheets {
namespace {

/// Four cells of half a metre: three clear, the last no ground.
answers::ClearGround fourCells() {
  const geometry::Grid grid{{0, 0}, 0.5, 4, 1};
  return {grid, {1, 1, 1, 1}, {1, 1, 1, 0}};
}

plan::Plan shop() {
  plan::Plan plan;
  plan.clock.length = 20;
  plan::Opening window;
  window.id = base::Id<plan::Opening>("w1");
  window.name = "shop window";
  plan.set.openings.add(window);
  return plan;
}

TEST(ClearText, SaysNothingOfGlassWhereNoneShowsIt) {
  const std::string text = clearText(shop(), fourCells(), {fourCells().grid, {}, {}}, {0, 20});
  EXPECT_NE(text.find("# clear, . not, blank no ground\n"), std::string::npos) << text;
  EXPECT_NE(text.find("\n###\n"), std::string::npos) << text;
  EXPECT_EQ(text.find("glass"), std::string::npos) << text;
}

TEST(ClearText, MarksWhatShowsInGlassAndSaysInWhichPaneWhen) {
  const answers::GlassGround glass{fourCells().grid, {"w1"}, {{1, 0, {3, 4}}, {2, 0, {4.1, 5}}, {2, 0, {9, 9.5}}}};
  const std::string text = clearText(shop(), fourCells(), glass, {0, 20});
  EXPECT_NE(text.find("# clear, g clear but shows in glass, . not, blank no ground\n"), std::string::npos) << text;
  EXPECT_NE(text.find("\n#gg\n"), std::string::npos) << text;
  EXPECT_NE(text.find("clear ground: 0.8 m\u00b2 of 0.8 m\u00b2\nof it 0.5 m\u00b2 shows in glass"), std::string::npos)
      << text;
  EXPECT_NE(text.find("shop window: 0.5 m\u00b2, 3.0\u20135.0, 9.0\u20139.5\n"), std::string::npos) << text;
}

}  // namespace
}  // namespace wend::sheets
