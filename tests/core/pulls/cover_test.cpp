// Cover: what lets which change pass, spans of it, and what a move leaves seen.
#include "core/pulls/cover.h"

#include <gtest/gtest.h>

#include <cmath>

namespace wend::pulls {
namespace {

const CoverSpan kDoorway{CoverKind::doorway, {2, 6}, 0.8, "D1"};
const CoverSpan kPanning{CoverKind::pan, {4, 9}, 30, ""};

TEST(Cover, AFasterIrisNeedsMoreCover) {
  const std::pair<CoverKind, double> table[] = {
      {CoverKind::movingFrame, 0.25}, {CoverKind::travel, 0.5}, {CoverKind::pan, 0.5},    {CoverKind::fastPan, 0.5},
      {CoverKind::leaf, 1},           {CoverKind::doorway, 1},  {CoverKind::crossing, 1}, {CoverKind::lightCue, 1}};
  for (const auto& [kind, rate] : table) EXPECT_EQ(rateUnder(kind, Hidden::iris), rate) << int(kind);
  EXPECT_TRUE(std::isinf(rateUnder(CoverKind::swish, Hidden::iris)));
  EXPECT_TRUE(std::isinf(rateUnder(CoverKind::wipe, Hidden::iris)));
  EXPECT_EQ(rateUncovered(Hidden::iris), 0) << "no ramp hides in a frame that stands still";
}

TEST(Cover, AllowsTheZoomMoreTheFasterThePan) {
  EXPECT_DOUBLE_EQ(rateUncovered(Hidden::zoom), 3.5);
  EXPECT_DOUBLE_EQ(rateUnder(CoverKind::travel, Hidden::zoom), 10);
  EXPECT_DOUBLE_EQ(rateUnder(CoverKind::pan, Hidden::zoom), 10);
  EXPECT_DOUBLE_EQ(rateUnder(CoverKind::fastPan, Hidden::zoom), 25);
  EXPECT_TRUE(std::isinf(rateUnder(CoverKind::swish, Hidden::zoom)));
  EXPECT_TRUE(std::isinf(rateUnder(CoverKind::wipe, Hidden::zoom)));
}

TEST(Cover, IsTheBestOfWhatHappensAtOnce) {
  const std::vector<CoverSpan> covers{kDoorway, kPanning};
  EXPECT_EQ(rateAllowed(covers, Hidden::iris, 1), 0);
  EXPECT_EQ(rateAllowed(covers, Hidden::iris, 3), 1);
  EXPECT_EQ(rateAllowed(covers, Hidden::iris, 5), 1);
  EXPECT_EQ(rateAllowed(covers, Hidden::iris, 8), 0.5);
  EXPECT_EQ(rateAllowed(covers, Hidden::iris, 9.01), 0);
}

TEST(Cover, IsFoundWhereAValueIsHighForLongEnough) {
  const std::vector<double> times{0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9};
  const std::vector<double> values{0, 20, 25, 21, 20, 19.9, 30, 30, 0, 22};
  const auto found = coverWhere(CoverKind::pan, "", times, values, 20);
  ASSERT_EQ(found.size(), 1u) << "a tenth of a second and one instant are too short";
  EXPECT_EQ(found[0].span, (geometry::Span{0.1, 0.4}));
  EXPECT_EQ(found[0].strength, 25);
  EXPECT_EQ(coverWhere(CoverKind::pan, "", times, values, 20, 0).size(), 3u);
}

TEST(Cover, IsRankedByWhatItLetsPassAndByTimeShared) {
  const CoverSpan other{CoverKind::lightCue, {5, 5.5}, 2, "LIGHT 1"};
  const auto ranked = rankedFor({kPanning, other, kDoorway, {CoverKind::wipe, {10, 11}, 1, "x"}}, Hidden::iris, {3, 8});
  ASSERT_EQ(ranked.size(), 3u) << "the wipe is later";
  EXPECT_EQ(ranked[0].by, "D1") << "a doorway and a cue let the same pass, and the doorway lasts longer";
  EXPECT_EQ(ranked[1].by, "LIGHT 1");
  EXPECT_EQ(ranked[2].kind, CoverKind::pan);
  EXPECT_TRUE(rankedFor({kDoorway}, Hidden::iris, {6, 7}).empty()) << "an instant in common is none";
}

TEST(Exposed, TellsTheWorstInstantAndForHowLong) {
  std::vector<RateAt> rates;
  for (int i = 0; i <= 50; ++i) rates.push_back({3 + i * 0.1, -0.75});  // 3.75 stops from 3 to 8
  const Exposed seen = exposedIn({kDoorway, kPanning}, Hidden::iris, rates, {0.1});
  EXPECT_DOUBLE_EQ(seen.worst, 1.5) << "0.75 under a pan that allows 0.5";
  EXPECT_NEAR(seen.at, 6.1, 1e-9);
  EXPECT_NEAR(seen.seconds, 2, 1e-9);
  EXPECT_EQ(seen.allowed, 0.5);
  for (auto& at : rates) at.rate = 0.5;
  EXPECT_LE(exposedIn({kDoorway, kPanning}, Hidden::iris, rates, {0.1}).worst, 1);
  EXPECT_TRUE(std::isinf(exposedIn({}, Hidden::iris, rates, {0.1}).worst));
  EXPECT_EQ(exposedIn({{CoverKind::wipe, {0, 20}, 1, ""}}, Hidden::iris, rates, {0.1}).worst, 0);
}

// 0.8 stops eased over 50 s, 0.8 (6 s - 6 s^2) / 50, are fastest in their middle: 0.024 stop/s.
TEST(Exposed, OfAFrameThatStandsStillIsWorstWhereTheRateIs) {
  std::vector<RateAt> rates;
  for (int i = 1; i < 500; ++i) rates.push_back({400 + i * 0.1, 0.8 * 6 * (i / 500.0) * (1 - i / 500.0) / 50});
  const Exposed seen = exposedIn({}, Hidden::iris, rates, {0.1});
  EXPECT_NEAR(seen.at, 425, 1e-6);
  EXPECT_NEAR(seen.rate, 0.024, 1e-6);
  EXPECT_NEAR(seen.seconds, 49.9, 1e-6);
  const Exposed slow = exposedIn({}, Hidden::iris, rates, {0.1, 0.05});
  EXPECT_NEAR(slow.worst, 0.48, 1e-6) << "slower than anybody notices";
  EXPECT_EQ(slow.seconds, 0);
}

TEST(Exposed, OfASingleFrameLastsAFrame) {
  const Exposed seen = exposedIn({}, Hidden::iris, {{3, 2}}, {1.0 / 24});
  EXPECT_NEAR(seen.seconds, 1.0 / 24, 1e-12);
}

}  // namespace
}  // namespace wend::pulls
