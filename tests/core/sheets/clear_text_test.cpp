// The map of clear ground in signs, of grids written by hand, with what of it glass shows.
#include <gtest/gtest.h>

#include "core/base/text.h"
#include "core/sheets/text_tables.h"

namespace wend::sheets {
namespace {

/// 200 by 12 cells of ten centimetres, all of it ground and none of it clear: three by six a sign, two rows of signs.
answers::ClearGround dark() {
  const geometry::Grid grid{{0, 0}, 0.1, 200, 12};
  return {grid, std::vector<std::uint8_t>(grid.cells(), 0), std::vector<std::uint8_t>(grid.cells(), 1)};
}

/// Nothing of it shows in glass.
std::string textOf(const answers::ClearGround& clear) {
  plan::Plan plan;
  plan.clock.length = 10;
  return clearText(plan, clear, {clear.grid, {}, {}}, {0, 10});
}

/// The rows of signs, north first.
std::vector<std::string> signsOf(const answers::ClearGround& clear) {
  const auto lines = base::split(textOf(clear), '\n');
  return {lines.at(3), lines.at(4)};
}

TEST(ClearText, ShowsAPocketSmallerThanASign) {
  answers::ClearGround clear = dark();
  clear.cells[clear.grid.cellAt({7.05, 0.25}).value()] = 1;
  const auto signs = signsOf(clear);
  EXPECT_EQ(signs[0], std::string(67, '.'));
  EXPECT_EQ(signs[1], std::string(23, '.') + "+" + std::string(43, '.'));
  EXPECT_NE(textOf(clear).find("+ some of it clear"), std::string::npos);
}

TEST(ClearText, CallsClearOnlyWhatIsClearAllOver) {
  answers::ClearGround clear = dark();
  for (auto& cell : clear.cells) cell = 1;
  EXPECT_EQ(signsOf(clear)[1], std::string(67, '#'));
  clear.cells[clear.grid.cellAt({0.05, 0.05}).value()] = 0;
  EXPECT_EQ(signsOf(clear)[1][0], '+');
  clear.ground[clear.grid.cellAt({0.35, 0.05}).value()] = 0;
  EXPECT_EQ(signsOf(clear)[1][1], '+') << "a sign that a wall cuts through";
}

TEST(ClearText, LeavesWhereNobodyCanStandBlankHoweverClear) {
  answers::ClearGround clear = dark();
  for (auto& cell : clear.cells) cell = 1;
  for (auto& cell : clear.ground) cell = 0;
  EXPECT_EQ(signsOf(clear)[0], "");
  clear.ground[clear.grid.cellAt({0.05, 1.15}).value()] = 1;
  clear.cells[clear.grid.cellAt({0.05, 1.15}).value()] = 0;
  EXPECT_EQ(signsOf(clear)[0], ".") << "what is clear beside it is no ground";
}

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
  EXPECT_NE(text.find("# clear, + some of it clear, . not, blank no ground\n"), std::string::npos) << text;
  EXPECT_NE(text.find("\n###\n"), std::string::npos) << text;
  EXPECT_EQ(text.find("glass"), std::string::npos) << text;
}

TEST(ClearText, MarksWhatShowsInGlassAndSaysInWhichPaneWhen) {
  const answers::GlassGround glass{fourCells().grid, {"w1"}, {{1, 0, {3, 4}}, {2, 0, {4.1, 5}}, {2, 0, {9, 9.5}}}};
  const std::string text = clearText(shop(), fourCells(), glass, {0, 20});
  EXPECT_NE(text.find("# clear, + some of it clear, g clear but shows in glass, . not, blank no ground\n"),
            std::string::npos)
      << text;
  EXPECT_NE(text.find("\n#gg\n"), std::string::npos) << text;
  EXPECT_NE(text.find("clear ground: 0.8 m\u00b2 of 0.8 m\u00b2\nof it 0.5 m\u00b2 shows in glass"), std::string::npos)
      << text;
  EXPECT_NE(text.find("shop window: 0.5 m\u00b2, 3.0\u20135.0, 9.0\u20139.5\n"), std::string::npos) << text;
}

}  // namespace
}  // namespace wend::sheets
