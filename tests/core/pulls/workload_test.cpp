#include "core/pulls/workload.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/core/pulls/random_tube.h"

namespace wend::pulls {
namespace {

constexpr std::size_t kFocus = 0, kIris = 1, kZoom = 2;

TEST(Workload, TwoExactAxesTogetherNeedTwoHands) {
  const Workload work = workloadOf({{kFocus, {10, 12}, 90, true}, {kZoom, {11, 14}, 70, true}});
  ASSERT_EQ(work.stretches.size(), 3u);
  EXPECT_EQ(work.stretches[0].hands, 1);
  EXPECT_EQ(work.stretches[1].span, (geometry::Span{11, 12}));
  EXPECT_EQ(work.stretches[1].hands, 2);
  EXPECT_EQ(work.stretches[1].degreesPerSecond, 160);
  EXPECT_EQ(work.stretches[1].axes, (std::vector<std::size_t>{kFocus, kZoom}));
  EXPECT_EQ(work.stretches[2].hands, 1);
  EXPECT_EQ(work.mostHands, 2);
}

TEST(Workload, SimpleMoveRidesAlongWithAnExactOne) {
  EXPECT_EQ(workloadOf({{kFocus, {0, 2}, 60, true}, {kIris, {0, 2}, 10, false}}).mostHands, 1);
  EXPECT_EQ(handsFor(3, 1), 2);
  EXPECT_EQ(handsFor(3, 2), 2);
  EXPECT_EQ(handsFor(2, 0), 1);
  EXPECT_EQ(handsFor(3, 0), 2);
  EXPECT_EQ(handsFor(0, 0), 0);
}

TEST(Workload, MovesThatOnlyTouchAreNotTogether) {
  const Workload work = workloadOf({{kFocus, {0, 1}, 60, true}, {kZoom, {1, 2}, 60, true}});
  EXPECT_EQ(work.mostHands, 1);
  EXPECT_EQ(work.stretches.size(), 2u);
}

TEST(Workload, CountsTheTimeSinceTheLastStart) {
  const Workload work =
      workloadOf({{kIris, {5.4, 6}, 20, false}, {kFocus, {3, 4}, 60, true}, {kFocus, {5, 7}, 60, true}});
  ASSERT_EQ(work.starts.size(), 3u);
  EXPECT_TRUE(std::isinf(work.starts[0].sinceLast));
  EXPECT_FALSE(work.starts[0].pressed);
  EXPECT_EQ(work.starts[1].sinceLast, 2);
  EXPECT_FALSE(work.starts[1].pressed);
  EXPECT_NEAR(work.starts[2].sinceLast, 0.4, 1e-12);
  EXPECT_TRUE(work.starts[2].pressed);
  EXPECT_EQ(work.starts[2].axis, kIris);
}

TEST(Workload, CountsTheMostStartsInTenSeconds) {
  std::vector<AxisMove> moves;
  for (const double at : {0.0, 4.0, 10.0, 11.0, 13.9, 14.0, 30.0}) moves.push_back({kFocus, {at, at + 0.05}, 60, true});
  EXPECT_EQ(workloadOf(moves).mostStarts, 4);  // 4 to 13.9, and 10 to 14 without the 4
}

TEST(Workload, NothingMovesNothingIsNeeded) {
  const Workload work = workloadOf({});
  EXPECT_TRUE(work.stretches.empty());
  EXPECT_EQ(work.mostHands, 0);
  EXPECT_EQ(work.mostStarts, 0);
}

TEST(Workload, StretchesCoverWhatMovesAndNothingElse) {
  for (std::uint64_t seed = 1; seed <= 50; ++seed) {
    Draw draw(seed);
    std::vector<AxisMove> moves;
    for (int i = 0; i < 12; ++i) {
      const double from = draw.uniform(0, 30);
      moves.push_back(
          {static_cast<std::size_t>(draw.below(3)), {from, from + draw.uniform(0.1, 4)}, 10, draw.chance(0.5)});
    }
    const Workload work = workloadOf(moves);
    for (int k = 0; k < 500; ++k) {
      const double t = draw.uniform(0, 34);
      double rate = 0, found = 0;
      for (const AxisMove& move : moves) rate += move.span.contains(t) ? move.degreesPerSecond : 0;
      for (const WorkStretch& stretch : work.stretches)
        found += stretch.span.contains(t) ? stretch.degreesPerSecond : 0;
      ASSERT_EQ(rate, found) << "seed " << seed << " at " << t;
    }
  }
}

}  // namespace
}  // namespace wend::pulls
