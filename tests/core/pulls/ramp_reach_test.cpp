#include "core/pulls/ramp_reach.h"

#include <gtest/gtest.h>

#include "tests/core/pulls/random_tube.h"

namespace wend::pulls {
namespace {

TEST(RampReach, ARestReachesWhatOneValueServes) {
  const auto marks = rampReach({{0, 0, 4}, {1, 1, 5}, {2, 3, 6}}, 10);
  EXPECT_EQ(marks.back().ramps, 0u);
  EXPECT_NEAR(marks.back().reached.lo, 3, 1e-8);
  EXPECT_NEAR(marks.back().reached.hi, 4, 1e-8);
}

TEST(RampReach, ARestEndsWhereTheFloorPassesIt) {
  // The floor rises from 0 to 4 and passes the ceiling's 2 half way from one sample to the next.
  const auto marks = rampReach({{0, 0, 2}, {1, 4, 6}}, 10);
  ASSERT_EQ(marks.size(), 3u);
  EXPECT_FALSE(marks[1].sample);
  EXPECT_NEAR(marks[1].t, 0.5, 1e-8);
  EXPECT_NEAR(marks[1].reached.middle(), 2, 1e-8);
  EXPECT_EQ(marks[2].ramps, 1u);
}

TEST(RampReach, OneStraightRampGoesNoFurtherThanItSees) {
  // Up by 10, down by 10: a straight line cannot turn, and the rest between serves nothing.
  const auto marks = rampReach({{0, 0, 1}, {1, 10, 11}, {2, 0, 1}}, 20);
  EXPECT_EQ(marks.back().ramps, 2u);
}

TEST(RampReach, OneMoreRampThanTheFewestReachesEverything) {
  const Mark mark{1, {0, 10}, 2, {3, 4}, {3, 3.5}, true};
  EXPECT_EQ(mark.reachedBy(3).hi, 10);
  EXPECT_EQ(mark.reachedBy(2).hi, 4);
  EXPECT_TRUE(mark.reachedBy(1).empty());
  EXPECT_EQ(mark.flownTo(2).hi, 3.5);
}

TEST(RampReach, MarksAreInOrderAndInsideTheTube) {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    const Passable way = passable(randomTube(seed, {.samples = 300}), 120);
    const auto marks = rampReach(way.reachable, 120);
    for (std::size_t i = 0; i < marks.size(); ++i) {
      ASSERT_GE(marks[i].reached.lo, marks[i].bounds.lo) << "seed " << seed;
      ASSERT_LE(marks[i].reached.hi, marks[i].bounds.hi) << "seed " << seed;
      if (i == 0) continue;
      ASSERT_GE(marks[i].t, marks[i - 1].t) << "seed " << seed;
      ASSERT_GE(marks[i].ramps, marks[i - 1].ramps) << "seed " << seed;
    }
  }
}

// The mirror image of a tube in time asks for as many ramps.
TEST(RampReach, BackwardsTakesAsManyRamps) {
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    const Passable way = passable(randomTube(seed, {.samples = 400, .gaps = 0}), 120);
    Tube mirrored(way.reachable.rbegin(), way.reachable.rend());
    for (TubeSample& s : mirrored) s.t = way.reachable.back().t - s.t;
    ASSERT_EQ(rampReach(way.reachable, 120).back().ramps, rampReach(mirrored, 120).back().ramps) << "seed " << seed;
  }
}

}  // namespace
}  // namespace wend::pulls
