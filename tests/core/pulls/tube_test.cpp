#include "core/pulls/tube.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/pulls/random_tube.h"

namespace wend::pulls {
namespace {

bool anyForced(const Passable& way) {
  for (const bool forced : way.forced)
    if (forced) return true;
  return false;
}

TEST(Passable, LeavesATubeThatAsksLittleAsItIs) {
  const Tube tube{{0, 0, 10}, {1, 1, 11}, {2, 0, 10}};
  const Passable way = passable(tube, 5);
  for (std::size_t i = 0; i < tube.size(); ++i) {
    EXPECT_NEAR(way.reachable[i].lo, tube[i].lo, 2 * kTubeRounding);
    EXPECT_NEAR(way.reachable[i].hi, tube[i].hi, 2 * kTubeRounding);
  }
  EXPECT_FALSE(anyForced(way));
}

TEST(Passable, BoundsAGapByTheRateFromBothSides) {
  const Tube tube{{0, 0, 2}, {1, 0, 0, true}, {2, 0, 0, true}, {3, 20, 22}};
  const Passable way = passable(tube, 10);
  EXPECT_NEAR(way.reachable[1].lo, 0, 1e-6);   // 20 - 2 s at 10
  EXPECT_NEAR(way.reachable[1].hi, 12, 1e-6);  // 2 + 1 s at 10
  EXPECT_NEAR(way.reachable[2].lo, 10, 1e-6);
  EXPECT_NEAR(way.reachable[2].hi, 22, 1e-6);
  EXPECT_FALSE(anyForced(way));
}

TEST(Passable, ForcesACutThroughTheMiddleAtFullRate) {
  Tube tube;
  for (int i = 0; i <= 40; ++i) {
    if (i <= 20) tube.push_back({i * 0.1, -1, 1});
    if (i >= 20) tube.push_back({i * 0.1, 99, 101});
  }
  const Passable way = passable(tube, 100);
  EXPECT_TRUE(anyForced(way));
  double first = 1e9, last = -1e9, before = 0, after = 0;
  for (std::size_t i = 0; i < tube.size(); ++i) {
    if (!way.forced[i]) continue;
    first = std::min(first, tube[i].t);
    last = std::max(last, tube[i].t);
    const double v = way.reachable[i].lo;
    if (i <= 20)
      before = std::max(before, v - 1);
    else
      after = std::max(after, 99 - v);
  }
  // 98 at 100 a second, ten a sample: the sum of the misses is least, and the same, wherever as many samples are missed
  // on either side, which is from 48 to 50.
  EXPECT_NEAR(first, 2 - 0.49, 0.11);
  EXPECT_NEAR(last, 2 + 0.49, 0.11);
  EXPECT_NEAR(before, 49, 1.001) << "leaves as early as it arrives late";
  EXPECT_NEAR(before + after, 98, 1e-3);
}

TEST(Passable, TakesTheMiddleWhereNoValueWouldDo) {
  const Passable way = passable({{0, 0, 10}, {1, 7, 3}, {2, 0, 10}}, 100);
  EXPECT_TRUE(way.forced[1]);
  EXPECT_FALSE(way.forced[0]);
  EXPECT_NEAR(way.reachable[1].lo, 5, 1e-6);
  EXPECT_NEAR(way.reachable[1].hi, 5, 1e-6);
}

TEST(Passable, RestsNowhereWhenNothingIsAsked) {
  const Passable way = passable({{0, 0, 0, true}, {5, 0, 0, true}}, 1);
  EXPECT_EQ(way.reachable[1].lo, kNowhere);
  EXPECT_EQ(way.reachable[1].hi, kNowhere);
  EXPECT_FALSE(anyForced(way));
}

TEST(Passable, EveryValueReachesTheNextSample) {
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    const Tube tube = randomTube(seed, {.samples = 150, .drift = 150, .gaps = 0.03, .cuts = seed % 3 ? 0 : 0.02});
    const double rate = 60;
    const Passable way = passable(tube, rate);
    for (std::size_t i = 0; i < tube.size(); ++i) {
      ASSERT_LE(way.reachable[i].lo, way.reachable[i].hi) << "seed " << seed << " at " << i;
      ASSERT_GE(way.reachable[i].lo, way.wanted[i].lo) << "seed " << seed << " at " << i;
      ASSERT_LE(way.reachable[i].hi, way.wanted[i].hi) << "seed " << seed << " at " << i;
      if (!tube[i].open && !way.forced[i]) {
        ASSERT_GE(way.wanted[i].lo, tube[i].lo);
        ASSERT_LE(way.wanted[i].hi, tube[i].hi);
      }
      if (i == 0) continue;
      const TubeSample &a = way.reachable[i - 1], &b = way.reachable[i];
      const double step = rate * (b.t - a.t) + 1e-12 * 300;
      ASSERT_LE(a.lo - step, b.hi) << "seed " << seed << " at " << i;
      ASSERT_LE(b.lo, a.lo + step) << "seed " << seed << " at " << i;
      ASSERT_GE(b.hi, a.hi - step) << "seed " << seed << " at " << i;
    }
  }
}

TEST(Passable, KeepsEveryTrackThatObeysTheTube) {
  int kept = 0;
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    const Tube tube = randomTube(seed, {.samples = 60, .drift = 50, .gaps = 0.03, .narrowest = 4});
    const Passable way = passable(tube, 60);
    // A walk that leans at random between what it may reach, kept when it obeys the whole tube.
    Draw draw(seed + 1000);
    std::vector<double> walk{draw.uniform(tube[0].lo, tube[0].hi)};
    const double lean = draw.uniform(0, 1);
    for (std::size_t i = 1; i < tube.size(); ++i) {
      const double step = 60 * (tube[i].t - tube[i - 1].t);
      double lo = walk.back() - step, hi = walk.back() + step;
      if (!tube[i].open) {
        lo = std::max(lo, tube[i].lo);
        hi = std::min(hi, tube[i].hi);
      }
      if (lo > hi) break;
      walk.push_back(lo + (hi - lo) * (draw.chance(0.8) ? lean : draw.uniform(0, 1)));
    }
    if (walk.size() < tube.size()) continue;
    ++kept;
    ASSERT_FALSE(anyForced(way)) << "seed " << seed;
    for (std::size_t i = 0; i < walk.size(); ++i) {
      ASSERT_GE(walk[i], way.reachable[i].lo - 1e-6) << "seed " << seed << " at " << i;
      ASSERT_LE(walk[i], way.reachable[i].hi + 1e-6) << "seed " << seed << " at " << i;
    }
  }
  EXPECT_GT(kept, 50);
}

}  // namespace
}  // namespace wend::pulls
