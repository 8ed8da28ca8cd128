// What hides a change of iris or zoom: on First Batch, whose sheet names the covers, and on takes small enough to be
// worked out by hand.
#include "core/answers/covers.h"

#include <cmath>

#include "core/answers/move_cover.h"
#include "core/answers/whole_take.h"
#include "core/pulls/zoom_cover.h"
#include "tests/core/answers/first_batch.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

using pulls::CoverKind;
using pulls::CoverSpan;
using snags::Move;

std::vector<CoverSpan> ofKind(const std::vector<CoverSpan>& covers, CoverKind kind, const std::string& by = "") {
  std::vector<CoverSpan> found;
  for (const auto& cover : covers)
    if (cover.kind == kind && (by.empty() || cover.by == by)) found.push_back(cover);
  return found;
}

Move moveAt(Move::Axis axis, double from) {
  for (const auto& move : movesOn(firstBatch(), axis))
    if (std::abs(move.from - from) < 0.05) return move;
  ADD_FAILURE() << "no move at " << from;
  return {};
}

TEST(CoversOfFirstBatch, AreTheDoorwayTheLampCordAndThePan) {
  const auto& covers = firstBatch().evidence->covers;
  const auto doorway = ofKind(covers, CoverKind::doorway, "D2");
  ASSERT_EQ(doorway.size(), 1u);
  // The lens passes D2 at 95.6; the opening fills a quarter of the frame for seconds before that.
  EXPECT_LE(doorway[0].span.from, 92.5);
  EXPECT_NEAR(doorway[0].span.until, 95.5, 0.6);
  const auto cord = ofKind(covers, CoverKind::lightCue, "LIGHT 1");
  ASSERT_EQ(cord.size(), 1u);
  EXPECT_NEAR(cord[0].span.from, 34 - pulls::kCueLead, 1e-9);
  // 112 degrees of bearing in 2.5 s.
  bool panned = false;
  for (const auto& pan : ofKind(covers, CoverKind::fastPan))
    panned = panned || (pan.span.from < 113.1 && pan.span.until > 115.4 && pan.strength > 45 && pan.strength < 55);
  EXPECT_TRUE(panned);
}

TEST(CoversOfFirstBatch, BeginWithAShutDoorWhenItOpens) {
  const auto doorway = ofKind(firstBatch().evidence->covers, CoverKind::doorway, "D1");
  ASSERT_FALSE(doorway.empty());
  EXPECT_GE(doorway[0].span.from, 24.9) << "D1 opens at 25.0; the lens has stood before it since 15";
}

TEST(CoversOfFirstBatch, HideTheIrisThroughTheDoorway) {
  const Move iris = moveAt(Move::Axis::iris, 91.5);
  EXPECT_NE(iris.cover.find("D2"), std::string::npos) << iris.cover;
  ASSERT_TRUE(iris.exposed);
  EXPECT_LE(iris.exposed->worst, 1) << "at " << iris.exposed->at;
}

TEST(CoversOfFirstBatch, HideTheZoomInThePan) {
  const Move zoom = moveAt(Move::Axis::zoom, 113);
  EXPECT_NEAR(zoom.peakPercentPerSecond, 10.9, 0.1);
  ASSERT_TRUE(zoom.exposed);
  EXPECT_LE(zoom.exposed->worst, 1) << "at " << zoom.exposed->at;
  ASSERT_TRUE(zoom.flowShare);
  EXPECT_LT(*zoom.flowShare, pulls::kCoveredShare);
}

/// T4 until 4, T8 from 6, set by hand: a stop a second.
plan::Plan rampingPlan() {
  plan::Plan plan = smallPlan();
  plan.iris.keys.resize(2);
  plan.iris.keys[0].stop = 4;
  plan.iris.keys[1].time = {{"", 4}, 2, plan::Pace::even};
  plan.iris.keys[1].stop = 8;
  return plan;
}

Move rampOf(const plan::Plan& plan, Move::Axis axis = Move::Axis::iris) {
  const auto take = takeOf(plan);
  const auto samples = samplesOf(*take);
  for (const auto& move : movesOf(*take, samples, coversOf(*take, samples)))
    if (move.axis == axis) return move;
  ADD_FAILURE() << "no ramp";
  return {};
}

TEST(Covers, LeaveARampInAStillFrameSeenAllAlong) {
  const Move ramp = rampOf(rampingPlan());
  ASSERT_TRUE(ramp.exposed);
  EXPECT_TRUE(std::isinf(ramp.exposed->worst));
  EXPECT_NEAR(ramp.exposed->rate, 1, 1e-6);
  EXPECT_NEAR(ramp.exposed->seconds, 2, 0.2);
  EXPECT_TRUE(ramp.cover.empty()) << ramp.cover;
  EXPECT_FALSE(ramp.better) << "nothing in this take covers anything";
}

TEST(Covers, ARampBetweenTwoFramesIsLookedAtToo) {
  plan::Plan plan = rampingPlan();
  plan.iris.keys[1].time.over = 0.03;
  const Move ramp = rampOf(plan);
  ASSERT_TRUE(ramp.exposed);
  EXPECT_TRUE(std::isinf(ramp.exposed->worst)) << "two stops at once, in a frame that stands still";
}

TEST(Covers, APanLastsAsLongAsTheCameraTurns) {
  plan::Plan plan = rampingPlan();
  plan.camera.aims.push_back({{{"", 4}, 2, plan::Pace::even}, plan::OnBearing{100, 0}, {0, 0}, 0, {}});
  const auto take = takeOf(plan);
  const auto pans = ofKind(coversOf(*take, samplesOf(*take)), CoverKind::fastPan);
  ASSERT_EQ(pans.size(), 1u);
  const double frame = 1 / take->rate();
  EXPECT_NEAR(pans[0].span.from, 4, frame);
  EXPECT_NEAR(pans[0].span.until, 6, frame);
  EXPECT_NEAR(pans[0].strength, 50, 0.1);
}

TEST(Covers, APanFromTwoSecondsEarlierIsTheBetterPlace) {
  plan::Plan plan = rampingPlan();
  plan.camera.aims.push_back({{{"", 0.5}, 2.5, plan::Pace::even}, plan::OnBearing{100, 0}, {0, 0}, 0, {}});
  const Move ramp = rampOf(plan);
  ASSERT_FALSE(ramp.better)
      << "a stop a second over two stops does not hide under a pan of 40 degrees: half of it does";
  plan.camera.aims.back() = {{{"", 0.5}, 3.4, plan::Pace::even}, plan::OnBearing{600, 0}, {0, 0}, 0, {}};
  const Move swished = rampOf(plan);
  ASSERT_TRUE(swished.better);
  EXPECT_GE(swished.better->span.from, 0.45);
  EXPECT_LE(swished.better->span.until, 3.95);
  EXPECT_NE(swished.betterCover.find("pan"), std::string::npos);
}

/// NORA's face needs T4 all along, and the camera turns right round before the ramp.
plan::Plan litAndSwished() {
  plan::Plan plan = rampingPlan();
  plan::Area floor;
  floor.id = base::Id<plan::Area>("floor");
  floor.shape = plan::Disc{{0, 3}, 2};
  floor.states.emplace_back().readings.push_back({{0, 3}, 4, {}});
  plan.set.areas.add(floor);
  plan.camera.aims.push_back({{{"", 0.5}, 2, plan::Pace::even}, plan::OnBearing{360, 0}, {0, 0}, 0, {}});
  return plan;
}

TEST(Covers, NoPlaceIsBetterThatLeavesAFaceFurtherOff) {
  EXPECT_FALSE(rampOf(litAndSwished()).better) << "NORA would be two stops under from 2.5 s on, not from 6 s on";
  plan::Plan needed = litAndSwished();
  plan::Area floor = needed.set.areas[0];
  floor.states.emplace_back(floor.states[0]).time.at = {"", 2};
  floor.states[1].readings[0].stop = 8;
  needed.set.areas.replace(0, floor);
  const Move late = rampOf(needed);
  ASSERT_TRUE(late.better) << "it is the ramp as set that is late";
  EXPECT_LE(late.better->span.until, 2.55);
}

TEST(Covers, AVariableDensityIsAMoveThatShowsLikeAnIris) {
  plan::Plan plan = smallPlan();
  plan.camera.nd.resize(3);
  plan.camera.nd[1] = {{{"", 4}, 2, plan::Pace::even}, 2, {}};
  plan.camera.nd[2] = {{{"", 7}, 1, plan::Pace::even}, 2, {}};
  const Move ramp = rampOf(plan, Move::Axis::density);
  EXPECT_NEAR(ramp.from, 4, 1e-9);
  EXPECT_NEAR(ramp.until, 6, 1e-9);
  EXPECT_EQ(ramp.valueBefore, 0);
  EXPECT_EQ(ramp.valueAfter, 2);
  EXPECT_NEAR(ramp.peakStopsPerSecond, 1, 1e-9);
  ASSERT_TRUE(ramp.exposed);
  EXPECT_TRUE(std::isinf(ramp.exposed->worst));
  EXPECT_NEAR(ramp.exposed->rate, 1, 1e-6);
  EXPECT_NEAR(sampleAt(*takeOf(plan), 5).iris.density, 1, 1e-9);
}

/// From left to right in five seconds, so many metres in front of the lens.
void letNoraCross(plan::Plan& plan, double metres) {
  plan::Performer nora = plan.performers[0];
  nora.marks = {markAt("n1", {-3, metres}, 2), markAt("n2", {3, metres}, 7)};
  plan.performers.replace(0, nora);
}

TEST(Covers, AZoomLetsNobodyCross) {
  plan::Plan plan = smallPlan();
  plan::Performer nora = plan.performers[0];
  nora.marks = {markAt("n1", {0.3, 1.5})};
  plan.performers.replace(0, nora);
  plan.lens->focal = {20, 60};
  plan.zoom.keys.resize(2);
  plan.zoom.keys[0].focal = 20;
  plan.zoom.keys[1] = {{{"", 5}, 0.8, plan::Pace::even}, 60, "", plan::OnPerformer{}, {}};
  const auto take = takeOf(plan);
  const auto samples = samplesOf(*take);
  double most = 0;
  const auto middle = [&](std::size_t k) {
    return (samples[k].performers[0].frameLeft + samples[k].performers[0].frameRight) / 4;
  };
  for (std::size_t k = 1; k < samples.size(); ++k)
    most = std::max(most, std::abs(middle(k) - middle(k - 1)) * take->rate());
  EXPECT_GT(most, pulls::kCrossingSpeed) << "her share of the frame does move";
  EXPECT_TRUE(ofKind(coversOf(*take, samples), CoverKind::crossing).empty())
      << "but she stands, and so does the camera";
}

TEST(Covers, WhatCoversHardlyAnyOfAChangeIsNotNamedForIt) {
  const auto rampBehind = [](double from, double until) {
    plan::Plan plan = rampingPlan();
    plan::Performer nora = plan.performers[0];
    nora.marks = {markAt("n1", {-3, 1}, from), markAt("n2", {3, 1}, until)};
    plan.performers.replace(0, nora);
    return rampOf(plan);
  };
  EXPECT_EQ(rampBehind(4.6, 5.4).cover, "") << "she is past in a quarter of a second of two";
  const Move behind = rampBehind(0.5, 9.5);
  EXPECT_EQ(behind.cover, "NORA crosses");
  EXPECT_GT(behind.exposed->seconds, 0) << "and still it shows for a part";
}

/// Light on NORA rises by 0.7 stop from 5 to 8 s before a camera that creeps; the iris is set by hand within a fifth of
/// a second.
TEST(Covers, ARampAlongASlopingSlackIsABetterPlaceThanASteepOne) {
  plan::Plan plan = smallPlan();
  plan.clock.length = 16;
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan.camera.marks = {markAt("c1", {0, -2}), markAt("c2", {1.2, -2}, 16)};
  for (auto& mark : plan.camera.marks) mark.height = 1.5;
  plan::Area floor;
  floor.id = base::Id<plan::Area>("floor");
  floor.shape = plan::Disc{{0, 3}, 20};
  floor.states.resize(2);
  floor.states[0].readings.push_back({{0, 3}, 4, {}});
  floor.states[1].readings.push_back({{0, 3}, tNumberOf(4.7), {}});
  floor.states[1].time = {{"", 5}, 3, plan::Pace::even};
  plan.set.areas.add(floor);
  plan.iris.slackStops = 0.2;
  plan.iris.keys.resize(2);
  plan.iris.keys[0].stop = 4;
  plan.iris.keys[1].time = {{"", 6.4}, 0.2, plan::Pace::even};
  plan.iris.keys[1].stop = tNumberOf(4.7);
  const Move steep = rampOf(plan);
  ASSERT_GT(steep.exposed->worst, 1);
  ASSERT_TRUE(steep.better);
  EXPECT_GE(steep.better->span.length(), 0.7 / 0.25 - 1e-9);
  EXPECT_LT(steep.better->span.from, 6.4);
  EXPECT_GT(steep.better->span.until, 6.6);
}

TEST(Covers, SomebodyWhoCrossesCloseHidesMore) {
  plan::Plan plan = smallPlan();
  // Across the frame at a metre, 1.2 m/s: half a metre wide against a frame of 0.71 m by 0.40 m there.
  letNoraCross(plan, 1);
  const auto take = takeOf(plan);
  const auto crossings = ofKind(coversOf(*take, samplesOf(*take)), CoverKind::crossing, "NORA");
  ASSERT_EQ(crossings.size(), 1u);
  EXPECT_NEAR((crossings[0].span.from + crossings[0].span.until) / 2, 4.5, 0.05);
  EXPECT_NEAR(crossings[0].strength, 0.5 / 0.7114, 0.05);
  letNoraCross(plan, 6);
  const auto far = takeOf(plan);
  EXPECT_TRUE(ofKind(coversOf(*far, samplesOf(*far)), CoverKind::crossing).empty()) << "too small at six metres";
}

}  // namespace
}  // namespace wend::answers
