// Tables of the light sheet that not every plan has.
#include "core/sheets/dept_sheets.h"
#include "tests/core/answers/sunlit.h"

namespace wend::sheets {
namespace {

using namespace answers;

std::vector<SheetPart> partsOf(const plan::Plan& plan) {
  const auto answers = answersOf(takeOf(plan));
  EXPECT_TRUE(answers.ok());
  return lightTrapParts(**answers);
}

TEST(LightSheet, HasNoTableOfWhatDoesNotComeUp) {
  EXPECT_TRUE(partsOf(smallPlan()).empty());
}

TEST(LightSheet, TellsTheSunAtBothEndsWithTheShadowItThrows) {
  const auto parts = partsOf(sunlit(38));
  ASSERT_GE(parts.size(), 1u);
  EXPECT_EQ(parts[0].heading.rfind("The sun", 0), 0u);
  const auto cells = parts[0].table.cells();
  ASSERT_EQ(cells.size(), 3u);
  EXPECT_EQ(cells[1][3], "38.0\u00b0");
  EXPECT_EQ(cells[1][4], "2.24 m");
}

TEST(LightSheet, TellsWhoTakesALampOffWhom) {
  plan::Plan plan = smallPlan();
  plan::Fixture lamp;
  lamp.id = base::Id<plan::Fixture>("f1");
  lamp.name = "KEY";
  lamp.pos = {3, 0};
  lamp.height = 1.7;
  lamp.bearing = -45;
  plan.fixtures.add(lamp);
  plan.crew.add(standing("grip", {1.5, 1.5}));
  const auto parts = partsOf(plan);
  ASSERT_EQ(parts.size(), 1u);
  const auto row = parts[0].table.cells().back();
  EXPECT_EQ(row[1], "KEY");
  EXPECT_EQ(row[2], "NORA");
  EXPECT_EQ(row[3], "grip");
  EXPECT_EQ(row[4], "100 %");
}

}  // namespace
}  // namespace wend::sheets
