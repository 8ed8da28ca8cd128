// What the focus and the light sheet say on paper of settings that never move, of the lens under each pull, of lamps.
#include <gtest/gtest.h>

#include <limits>

#include "core/sheets/dept_sheets.h"
#include "core/sheets/text_words.h"
#include "tests/core/answers/small_plan.h"

namespace wend::sheets {
namespace {

std::string paperOf(const plan::Plan& plan, const std::string& whom) {
  const auto answers = answers::answersOf(std::make_shared<const plan::Plan>(plan));
  if (!answers.ok()) return base::toText(answers.problems()[0]);
  return sheetText(plan, deptSheet(**answers, whom));
}

void expectHolds(const std::string& paper, const std::string& words) {
  EXPECT_NE(paper.find(words), std::string::npos) << words << "\n" << paper;
}

/// NORA at 3 m in focus, T4 and 35 mm all take.
plan::Plan stillPlan() {
  plan::Plan plan = answers::smallPlan();
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan.focus.distance = plan::DistanceKind::floor;
  plan.iris.keys.push_back({{}, 4, {}});
  return plan;
}

TEST(LensPaper, SaysHowEverythingIsSetAsTheTakeStarts) {
  plan::Plan plan = stillPlan();
  plan.camera.ndStops = 1;
  plan.camera.nd = {{{}, 3, {}}};
  const std::string paper = paperOf(plan, "focus");
  expectHolds(paper, "focus on NORA at 3.00 m, 35 mm, T4, 4.0 stops of density in all");
  expectHolds(paper, "variable density left at");
  EXPECT_EQ(paper.find("as told below"), std::string::npos);
}

TEST(LensPaper, SaysStopAndFocalLengthOfEachPull) {
  plan::Plan plan = stillPlan();
  plan.focus.pulls = {{{"", 0}, 0, 3, {}}, {{"", 4}, 2, 3.2, {}}};
  const std::string paper = paperOf(plan, "focus");
  expectHolds(paper, "Stop and focal length as each pull starts and ends");
  expectHolds(paper, "T4, 35 mm");
}

TEST(LensPaper, SaysWhatDegreesOfBarrelStandFor) {
  plan::Plan plan = stillPlan();
  expectHolds(paperOf(plan, "focus"), "no marks of the focus ring: degrees are counted as 300\u00b0");
  const auto now = [&] {
    const auto take = answers::takeOf(plan);
    return instantText(*take, answers::sampleAt(*take, 1));
  };
  expectHolds(now(), "no marks of the focus ring");
  plan.lens->closeFocus = 0.75;
  plan.lens->focusMarks = {{2, 50, {}, {}}};
  expectHolds(now(), "one mark says nothing of the focus ring");
  plan.lens->focusMarks = {{2, 50, {}, {}}, {1, 150, {}, {}}};
  expectHolds(now(), "\u00b0 (beyond the marks)");
  plan.lens->focusMarks = {{4, 20, {}, {}}, {2, 50, {}, {}}, {1, 150, {}, {}}};
  EXPECT_EQ(now().find("beyond the marks"), std::string::npos);
  EXPECT_EQ(paperOf(plan, "focus").find("degrees are counted"), std::string::npos);
}

TEST(CoverText, SaysForAPartWhereSomethingStaysSeen) {
  snags::Move move;
  move.axis = snags::Move::Axis::zoom;
  EXPECT_EQ(coverText(move), "");
  move.cover = "D2";
  move.exposed = pulls::Exposed{};
  EXPECT_EQ(coverText(move), "D2");
  move.exposed->worst = 1.2;
  move.flowShare = 0.1;
  EXPECT_EQ(coverText(move), "D2 for a part") << "whatever the picture's flow hides";
}

TEST(PullsText, SaysOfACutThatItShowsAtOnce) {
  plan::Plan plan = stillPlan();
  plan.iris.keys.push_back({{{"", 5}, 0, plan::Pace::even}, 8, {}});
  const auto answers = answers::answersOf(std::make_shared<const plan::Plan>(plan));
  ASSERT_TRUE(answers.ok());
  expectHolds(pullsText(plan, *(*answers)->evidence), "shows 1 at once");
}

// Candela and where it hangs are as typed; beam_test holds the lumens against a formula.
TEST(LightPaper, SaysWhereLampsHangAndHowMuchTheyGive) {
  plan::Plan plan = answers::litBySideLamp();
  plan::Fixture lamp = plan.fixtures[0];
  lamp.output = plan::BeamOutput{900, 35, 70};
  plan.fixtures.replace(0, lamp);
  const std::string paper = paperOf(plan, "light");
  expectHolds(paper, "Lamps at full");
  expectHolds(paper, "1.70 m");
  expectHolds(paper, "-45\u00b0");
  expectHolds(paper, "900");
}

TEST(LightPaper, SaysThatALampWhoseFileIsMissingIsUnknown) {
  plan::Plan plan = answers::litBySideLamp();
  plan::Fixture lamp = plan.fixtures[0];
  lamp.output = plan::IesOutput{"none.ies", 1};
  plan.fixtures.replace(0, lamp);
  const std::string paper = paperOf(plan, "light");
  expectHolds(paper, "unknown");
}

TEST(Rates, OfSlowPullsKeepADecimal) {
  EXPECT_EQ(degreesRateText(26 / 77.6), "0.3\u00b0/s");
  EXPECT_EQ(degreesRateText(9.96), "10\u00b0/s");
  EXPECT_EQ(degreesRateText(67.2), "67\u00b0/s");
  EXPECT_EQ(degreesRateText(std::numeric_limits<double>::infinity()), "at once");
}

}  // namespace
}  // namespace wend::sheets
