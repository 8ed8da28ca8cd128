// Zooms that keep a shot size: against the focal length that the size asks for, worked out here.
#include "core/answers/zoom_track.h"

#include <cmath>

#include "core/answers/covers.h"
#include "core/answers/shot_sizes.h"
#include "core/answers/whole_take.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

/// NORA walks from 3 m to 6 m in front of the lens between 2 and 8; full size is asked for.
plan::Plan sizedPlan(double slackShare) {
  plan::Plan plan = smallPlan();
  plan.lens->focal = {14, 90};
  plan.lens->limits.zoomPercentPerSecond = 40;
  plan::Performer nora = plan.performers[0];
  nora.marks = {markAt("n1", {0, 3}), markAt("n2", {0, 6}, 8)};
  nora.marks[0].until = plan::Moment{"", 2};
  plan.performers.replace(0, nora);
  plan::ZoomKey key;
  key.size = "full";
  key.of = plan::OnPerformer{"nora"};
  plan.zoom.keys = {key};
  plan.zoom.slackShare = slackShare;
  return plan;
}

/// f = frame height x distance / (q x stature); the frame is 14 mm high.
double wantedAt(const Take& take, double t) {
  const double y = t < 2 ? 3 : t > 8 ? 6 : 3 + (t - 2) / 6 * 3;
  const plan::Performer& nora = take.plan().performers[0];
  const double eyes = 0.935 * nora.stature, slant = std::hypot(y, eyes - 1.5);
  return 14 * slant / (optics::shotSizeNamed("full", sizesOf(take.plan()))->q * nora.stature);
}

TEST(ZoomSizes, AreRefusedWhereNobodyKnowsThem) {
  plan::Plan plan = sizedPlan(0.06);
  plan.zoom.keys[0].size = "medum";
  EXPECT_EQ(Take::of(std::make_shared<const plan::Plan>(plan)).problems().at(0).where, "/zoom/keys/0/size");
  EXPECT_EQ(unknownSizes(plan).at(0).remedy, "did you mean medium?");
  plan.sizes["medum"] = 0.5;
  EXPECT_TRUE(unknownSizes(plan).empty()) << "the plan's own";
}

TEST(ZoomTrack, KeepsTheSizeWithinTheSlackInFewMoves) {
  const auto take = takeOf(sizedPlan(0.06));
  double worst = 0;
  for (const double t : take->frameTimes())
    worst = std::max(worst, std::abs(std::log2(*take->view().focalAt(t) / wantedAt(*take, t))));
  EXPECT_LE(worst, std::log2(1.06) + 1e-6);
  EXPECT_GT(worst, std::log2(1.02)) << "the slack is used";
  const auto moves = take->view().zoom().plannedMoves();
  ASSERT_EQ(moves.size(), 1u) << "one pull does for a walk of six seconds";
  EXPECT_GE(moves[0].from, 1);
  EXPECT_LE(moves[0].until, 8.5);
  EXPECT_TRUE(take->view().zoom().unmet().empty());
}

TEST(ZoomTrack, EasedItKeepsTheSizeTooAndStartsEarlier) {
  const auto take = takeOf(sizedPlan(0.06));
  const ZoomTrack& zoom = take->view().zoom();
  double worst = 0, differs = 0;
  for (const double t : take->frameTimes()) {
    const double eased = *zoom.focalAt(t, ZoomTrack::Ends::eased);
    worst = std::max(worst, std::abs(std::log2(eased / wantedAt(*take, t))));
    differs = std::max(differs, std::abs(eased - *zoom.focalAt(t)));
  }
  EXPECT_LE(worst, std::log2(1.06) + 1e-6);
  EXPECT_GT(differs, 0.01);
  const auto moves = zoom.plannedMoves();
  ASSERT_EQ(moves.size(), 1u);
  ASSERT_GT(moves[0].easeIn, 0.1);
  const double before = moves[0].from - moves[0].easeIn / 4;
  EXPECT_GT(*zoom.focalAt(before, ZoomTrack::Ends::eased), *zoom.focalAt(before));
}

TEST(ZoomTrack, WithoutSlackItFollowsExactly) {
  const auto take = takeOf(sizedPlan(0));
  for (const double t : take->frameTimes()) EXPECT_NEAR(*take->view().focalAt(t), wantedAt(*take, t), 1e-9) << t;
}

TEST(ZoomTrack, WhatIsPlannedIsListedAmongTheMoves) {
  const auto take = takeOf(sizedPlan(0.06));
  std::size_t zooms = 0;
  const auto samples = samplesOf(*take);
  for (const auto& move : movesOf(*take, samples, coversOf(*take, samples))) {
    if (move.axis != snags::Move::Axis::zoom) continue;
    ++zooms;
    EXPECT_GT(move.valueAfter, move.valueBefore);
    EXPECT_TRUE(move.exposed);
    EXPECT_LE(move.peakPercentPerSecond, 40 * 1.001);
  }
  EXPECT_EQ(zooms, 1u);
}

TEST(ZoomTrack, SaysWhereTheLensIsTooSlowForTheSize) {
  plan::Plan plan = sizedPlan(0.02);
  plan.lens->limits.zoomPercentPerSecond = 4;
  const auto take = takeOf(plan);
  EXPECT_FALSE(take->view().zoom().unmet().empty()) << "the size doubles in six seconds: 12 per cent a second";
  bool told = false;
  for (const auto& unmet : take->lens().unmet()) told = told || unmet.axis == "zoom";
  EXPECT_TRUE(told);
}

TEST(ZoomTrack, AKeyByFocalLengthIsLeftAsItIsSet) {
  plan::Plan plan = sizedPlan(0.06);
  plan::ZoomKey tight;
  tight.time = {{"", 8.5}, 1, plan::Pace::even};
  tight.focal = 50;
  plan.zoom.keys.push_back(tight);
  const auto take = takeOf(plan);
  EXPECT_EQ(*take->view().focalAt(9.5), 50);
  const double before = *take->view().focalAt(8.5);
  EXPECT_NEAR(*take->view().focalAt(9), std::sqrt(before * 50), 0.02 * before);
}

}  // namespace
}  // namespace wend::answers
