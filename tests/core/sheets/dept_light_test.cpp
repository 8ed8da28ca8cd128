// Tables of the light sheet that not every plan has.
#include <algorithm>

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

/// The table whose heading begins so.
const TextTable* tableOf(const std::vector<SheetPart>& parts, const std::string& heading) {
  for (const auto& part : parts)
    if (part.heading.rfind(heading, 0) == 0) return &part.table;
  return nullptr;
}

/// What stands for the iris move of that plan in the column of lamps.
std::string lampsCell(const plan::Plan& plan) {
  const auto answers = answersOf(takeOf(plan));
  const auto parts = coverParts(**answers);
  const auto* table = tableOf(parts, "Instead of the iris");
  return table ? table->cells().back().back() : "no table";
}

TEST(LightSheet, TellsWhichLampWouldSpareTheIrisItsMove) {
  plan::Plan plan = litBySideLamp();
  plan::Fixture lamp = plan.fixtures[0];
  lamp.name = "KEY";
  lamp.level = {{{}, 0.5, {}, {}, {}}};
  plan.fixtures.replace(0, lamp);
  plan.lens->stop = {1, 22};
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan.iris.keys = {{{}, 2.8, {}}, {{{"", 4}, 1, plan::Pace::even}, 3.96, {}}};
  EXPECT_EQ(lampsCell(plan), "KEY from 50 % to 25 %");
  plan.iris.keys[1].stop = 1.4;
  EXPECT_EQ(lampsCell(plan), "no: beyond the plan's lamps") << "two stops more than half are over full";
  plan.fixtures = {};
  EXPECT_EQ(lampsCell(plan), "unknown");
}

TEST(LightSheet, TellsDensityInStopsAndWhatOfItCouldComeOut) {
  plan::Plan plan = litBySideLamp();
  plan.lens->stop = {1, 22};
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan.iris.keys = {{{}, 2.8, {}}, {{{"", 4}, 1, plan::Pace::even}, 5.6, {}}};
  const auto cell = [&] {
    const auto answers = answersOf(takeOf(plan));
    const auto parts = coverParts(**answers);
    return tableOf(parts, "Instead of the iris")->cells().back()[4];
  };
  EXPECT_EQ(cell(), "0.0 to 2.0 (optical density 0.6)");
  plan.iris.keys[1].stop = 1.4;
  EXPECT_EQ(cell(), "none: it has to open, and none is in");
  plan.camera.nd.resize(1);
  plan.camera.nd[0].stops = 3;
  EXPECT_EQ(cell(), "3.0 to 1.0 (optical density 0.3)");
  plan.camera.nd[0].stops = 1;
  EXPECT_EQ(cell(), "none: only 1.0 (optical density 0.3) is in");
}

TEST(FocusSheet, TellsHowSoftlyAPlannedPullMayStartAndEnd) {
  plan::Plan plan = smallPlan();
  plan::Performer nora = plan.performers[0];
  nora.marks = {markAt("n1", {0, 6}), markAt("n2", {0, 2}, 6)};
  nora.marks[0].until = plan::Moment{"", 2};
  plan.performers.replace(0, nora);
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan.iris.keys.push_back({{}, 5.6, {}});
  const auto rowsOf = [](const plan::Plan& of) {
    const auto answers = answersOf(takeOf(of));
    for (const SheetPart& part : focusSheet(**answers).parts)
      if (part.heading.find("softly") != std::string::npos) return part.table.cells();
    return std::vector<std::vector<std::string>>{};
  };
  const auto planned = rowsOf(plan);
  ASSERT_GE(planned.size(), 2u);
  EXPECT_EQ(planned[0], (std::vector<std::string>{"#", "start", "end"}));
  EXPECT_GT(std::stod(planned[1][1]), 0);
  EXPECT_GT(std::stod(planned[1][2]), 0);
  plan.focus.pulls = {{{"", 0}, 0, 6, {}}, {{"", 3}, 2, 2, {}}};
  EXPECT_TRUE(rowsOf(plan).empty()) << "by hand it runs as it is set";
}

}  // namespace
}  // namespace wend::sheets
