// How fast a ring turns at its fastest: what is between its marks, and how the move is paced.
#include <cmath>

#include "core/answers/answers.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

plan::Plan markedPlan() {
  plan::Plan plan = smallPlan();
  plan.lens->focal = {28, 80};
  plan.lens->limits.irisStopsPerSecond = 10;
  plan.iris.keys.push_back({{}, 2.8, {}});
  plan.lens->irisMarks = {{2.8, 0, {}}, {11, 74, {}}};
  plan.lens->zoomMarks = {{28, 0, {}}, {35, 70, {}}, {50, 90, {}}, {80, 100, {}}};
  return plan;
}

snags::Move moveOf(const plan::Plan& plan, snags::Move::Axis axis) {
  const auto answers = answersOf(std::make_shared<const plan::Plan>(plan));
  if (!answers.ok()) throw std::runtime_error("no answers");
  for (const auto& move : (*answers)->evidence->moves)
    if (move.axis == axis) return move;
  throw std::runtime_error("no move");
}

// 3 s^2 - 2 s^3 is fastest in its middle, at 1.5 times its mean.
TEST(RingPeak, OfAnEasedMoveIsHalfAsMuchAgainAsItsMean) {
  plan::Plan plan = markedPlan();
  plan.iris.keys.push_back({{{"", 4}, 4, plan::Pace::eased}, 11, {}});
  EXPECT_NEAR(moveOf(plan, snags::Move::Axis::iris).peakDegPerSecond, 1.5 * 74 / 4, 0.02);
  plan.iris.keys[1].time.pace = plan::Pace::even;
  EXPECT_NEAR(moveOf(plan, snags::Move::Axis::iris).peakDegPerSecond, 74.0 / 4, 1e-6);
}

// An even zoom runs evenly in the logarithm: from 28 to 35 mm, 70 degrees, it takes ln(35/28) / ln(80/28) of its time.
TEST(RingPeak, OfUnevenMarksIsThatOfTheWidestGap) {
  plan::Plan plan = markedPlan();
  plan::ZoomKey from, to;
  from.focal = 28;
  to.focal = 80;
  to.time = {{"", 2}, 6, plan::Pace::even};
  plan.zoom.keys = {from, to};
  const double seconds = 6 * std::log(35.0 / 28) / std::log(80.0 / 28), widest = 70 / seconds;
  const double peak = moveOf(plan, snags::Move::Axis::zoom).peakDegPerSecond;
  EXPECT_GE(peak, widest) << "no curve through both marks turns slower everywhere";
  EXPECT_LE(peak, 1.5 * widest);
}

// 24 to 72 mm in the last second, at ln 3 = 110 % a second against a limit of 50: unmet until the very end.
TEST(ZoomLimit, IsHeldAgainstTheEndOfTheTakeToo) {
  plan::Plan plan = markedPlan();
  plan.lens->focal = {24, 72};
  plan.lens->zoomMarks.clear();
  plan.lens->limits.zoomPercentPerSecond = 50;
  plan::ZoomKey from, to;
  from.focal = 24;
  to.focal = 72;
  to.time = {{"", 9}, 1, plan::Pace::even};
  plan.zoom.keys = {from, to};
  const auto take = takeOf(plan);
  const auto unmet = take->lens().unmet();
  ASSERT_EQ(unmet.size(), 1u);
  EXPECT_EQ(unmet[0].axis, "zoom");
  EXPECT_NEAR(unmet[0].span.from, 9, 1.0 / 24);
  EXPECT_EQ(unmet[0].span.until, 10);
  EXPECT_NEAR(take->view().zoomRateAt(10), 100 * std::log(3.0), 1e-6) << "no slower at the end itself";
}

TEST(BarrelRate, IsNoSlowerAtTheEndsOfTheTake) {
  plan::Plan plan = markedPlan();
  plan.lens->closeFocus = 0.6;
  // An uncharted barrel turns evenly in 1/distance and so does a pull in degrees: one rate all along.
  plan.focus.pulls = {{{"", 0}, 0, 3, {}}, {{"", 9}, 1, 6, {}}};
  const auto take = takeOf(plan);
  EXPECT_NEAR(take->lens().barrelRateAt(10), take->lens().barrelRateAt(9.5), 1e-6);
  EXPECT_GT(std::abs(take->lens().barrelRateAt(9.5)), 1);
}

// Two frames of zoom in a frame that stands still are all that moves in it.
TEST(ZoomFlow, OfTwoFramesIsLookedAt) {
  plan::Plan plan = markedPlan();
  plan::Room room;
  room.id = base::Id<plan::Room>("room");
  room.outline = {{-4, -1}, {4, -1}, {4, 8}, {-4, 8}};
  plan.set.rooms.add(room);
  plan::ZoomKey from, to;
  from.focal = 28;
  to.focal = 40;
  to.time = {{"", 4}, 2.0 / 24, plan::Pace::even};
  plan.zoom.keys = {from, to};
  const auto share = moveOf(plan, snags::Move::Axis::zoom).flowShare;
  ASSERT_TRUE(share);
  EXPECT_GT(*share, 0.5);
}

}  // namespace
}  // namespace wend::answers
