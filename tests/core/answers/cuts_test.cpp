// Keys without a change time between unlike values: moves of no duration that no ring makes.
#include <cmath>

#include "core/answers/answers.h"
#include "core/snags/rules.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

using snags::Move;

/// The camera stands, looking at NORA, who is in focus.
plan::Plan stillPlan() {
  plan::Plan plan = smallPlan();
  plan.lens->focal = {28, 80};
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan.iris.keys.push_back({{}, 4, {}});
  return plan;
}

plan::ZoomKey zoomKey(double at, double over, double focal) {
  plan::ZoomKey key;
  key.time = {{"", at}, over, plan::Pace::even};
  key.focal = focal;
  return key;
}

/// The one cut of that axis, with the snag and the reason that go with it.
void expectCut(const plan::Plan& plan, Move::Axis axis, double before, double after, const std::string& reason,
               double rate) {
  const auto answers = answersOf(std::make_shared<const plan::Plan>(plan));
  ASSERT_TRUE(answers.ok());
  const snags::Evidence& evidence = *(*answers)->evidence;
  std::vector<Move> cuts;
  for (const Move& move : evidence.moves)
    if (move.axis == axis) cuts.push_back(move);
  ASSERT_EQ(cuts.size(), 1u);
  const Move& cut = cuts[0];
  EXPECT_TRUE(cut.cut());
  EXPECT_EQ(cut.from, 6);
  EXPECT_NEAR(cut.valueBefore, before, 1e-6);
  EXPECT_NEAR(cut.valueAfter, after, 1e-6);
  EXPECT_TRUE(std::isinf(axis == Move::Axis::zoom ? cut.peakPercentPerSecond : cut.peakStopsPerSecond));
  ASSERT_TRUE(cut.exposed);
  EXPECT_NEAR(cut.exposed->rate, rate, 1e-6 * rate) << "a ramp of one frame";
  EXPECT_NEAR(cut.exposed->seconds, 1.0 / 24, 1e-12);
  int seen = 0, unmet = 0;
  for (const auto& snag : *(*answers)->snags) {
    seen += snag.rule == "ramp-seen" && snag.text.find("in no time at all") != std::string::npos;
    unmet += snag.rule == "slack-unmet" && snag.text == reason && snag.from == 6;
  }
  EXPECT_EQ(seen, 1);
  EXPECT_EQ(unmet, 1) << reason;
}

TEST(Cut, OfTheZoomIsAMoveOfNoTime) {
  plan::Plan plan = stillPlan();
  plan.zoom.keys = {zoomKey(0, 0, 52), zoomKey(6, 0, 35)};
  expectCut(plan, Move::Axis::zoom, 52, 35, "the zoom goes from 52.0 mm to 35.0 mm in no time at all",
            100 * std::log(52.0 / 35) * 24);
}

// From T4 to T8 are two stops, by the numbers and on the ring.
TEST(Cut, OfTheIrisIsAMoveOfNoTime) {
  plan::Plan plan = stillPlan();
  plan.iris.keys.push_back({{{"", 6}, 0, plan::Pace::even}, 8, {}});
  expectCut(plan, Move::Axis::iris, 4, 8, "the iris goes from T4 to T8 in no time at all", 48);
}

TEST(Cut, OfADensityIsAMoveOfNoTime) {
  plan::Plan plan = stillPlan();
  plan.camera.nd = {{{}, 0, {}}, {{{"", 6}, 0, plan::Pace::even}, 3, {}}};
  expectCut(plan, Move::Axis::density, 0, 3, "the density goes from 0.0 stops to 3.0 stops in no time at all", 72);
}

TEST(Cut, OfTheFocusByHandIsToldToo) {
  plan::Plan plan = stillPlan();
  plan.focus.pulls = {{{"", 0}, 0, 3, {}}, {{"", 6}, 0, 3.05, {}}};
  const auto take = takeOf(plan);
  ASSERT_EQ(take->lens().focus().moves.size(), 1u);
  EXPECT_TRUE(std::isinf(take->lens().focus().moves[0].peakRate));
  const auto unmet = take->lens().unmet();
  ASSERT_EQ(unmet.size(), 1u);
  EXPECT_EQ(unmet[0].reason, "the focus goes from 3.00 m to 3.05 m in no time at all");
}

TEST(Cut, BetweenLikeValuesIsNone) {
  plan::Plan plan = stillPlan();
  plan.zoom.keys = {zoomKey(0, 0, 52), zoomKey(6, 0, 52)};
  plan.iris.keys.push_back({{{"", 6}, 0, plan::Pace::even}, 4, {}});
  plan.camera.nd = {{{}, 2, {}}, {{{"", 6}, 0, plan::Pace::even}, 2, {}}};
  const auto answers = answersOf(std::make_shared<const plan::Plan>(plan));
  ASSERT_TRUE(answers.ok());
  for (const Move& move : (*answers)->evidence->moves) EXPECT_EQ(move.axis, Move::Axis::focus);
  EXPECT_TRUE((*answers)->take->lens().unmet().empty());
}

TEST(Cut, WhereTheNextKeyBeginsKeepsWhatItJumpsTo) {
  plan::Plan plan = stillPlan();
  plan.zoom.keys = {zoomKey(0, 0, 52), zoomKey(6, 0, 35), zoomKey(6, 2, 40)};
  const auto cuts = takeOf(plan)->view().zoom().cuts();
  ASSERT_EQ(cuts.size(), 1u);
  EXPECT_NEAR(cuts[0].valueAfter, 35, 1e-9);
}

}  // namespace
}  // namespace wend::answers
