#include "core/sight/half_plane.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <limits>

#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

constexpr Slopes kAll{-100, 100};

bool lineSeen(double eye, std::vector<Upright> blocks, double r, double height) {
  return anyFree(eye, blocks, {r, r, 0, height}, kAll);
}

TEST(HeightRule, ALowPieceUnderTheEyeHidesOnlyShorterThingsAndOnlyNearBehindIt) {
  // e = 1.5, t = 0.9, H = 0.6 at ri = 2: hidden while r / ri <= (e - H) / (e - t) = 1.5, so up to r = 3.
  EXPECT_FALSE(lineSeen(1.5, {{2, 2, 0, 0.9}}, 2.5, 0.6));
  EXPECT_FALSE(lineSeen(1.5, {{2, 2, 0, 0.9}}, 2.999, 0.6));
  EXPECT_TRUE(lineSeen(1.5, {{2, 2, 0, 0.9}}, 3.001, 0.6));
  EXPECT_TRUE(lineSeen(1.5, {{2, 2, 0, 0.9}}, 2.001, 1.0)) << "taller than the piece";
}

TEST(HeightRule, APieceAboveTheEyeHidesATallerBodyFromACertainDistanceOn) {
  // e = 1.5, t = 1.6, H = 1.8: hidden when r / ri >= (H - e) / (t - e) = 3, so from r = 6 at ri = 2.
  EXPECT_TRUE(lineSeen(1.5, {{2, 2, 0, 1.6}}, 5.999, 1.8));
  EXPECT_FALSE(lineSeen(1.5, {{2, 2, 0, 1.6}}, 6.001, 1.8));
  EXPECT_FALSE(lineSeen(1.5, {{2, 2, 0, 1.8}}, 2.1, 1.8)) << "as tall as the body: always";
}

TEST(HeightRule, ABarBetweenTwoHeightsLeavesTheRestOfTheBodySeen) {
  EXPECT_TRUE(lineSeen(1.5, {{2, 2, 0.5, 1.4}}, 4, 1.8));
  EXPECT_FALSE(lineSeen(1.5, {{2, 2, 0.5, 1.7}, {1, 1, 0, 1.0}}, 4, 1.8)) << "two that hide together";
}

TEST(HeightRule, ASolidHidesWithItsNearAndItsFarEdge) {
  // Seen from above a deep solid hides with its far top edge: slope (0.9 - 1.5) / 4 = -0.15 reaches 0.6 at r = 6.
  EXPECT_FALSE(lineSeen(1.5, {{2, 4, 0, 0.9}}, 5.999, 0.6));
  EXPECT_TRUE(lineSeen(1.5, {{2, 4, 0, 0.9}}, 6.001, 0.6));
  // From below with its near one: slope 0.1 / 2 reaches 1.8 at r = 6.
  EXPECT_TRUE(lineSeen(1.5, {{2, 4, 0, 1.6}}, 5.999, 1.8));
  EXPECT_FALSE(lineSeen(1.5, {{2, 4, 0, 1.6}}, 6.001, 1.8));
}

TEST(HeightRule, InsideASolidOnlyWhatStandsOutOfItIsSeen) {
  EXPECT_FALSE(lineSeen(1.5, {{2, 4, 0, 0.9}}, 3, 0.9));
  EXPECT_TRUE(lineSeen(1.5, {{2, 4, 0, 0.9}}, 3, 1.0));
  EXPECT_FALSE(lineSeen(0.5, {{2, 4, 0, 0.9}}, 3, 1.0)) << "from below the near edge hides the head: 0.4 / 2 * 3 > 0.5";
  EXPECT_TRUE(lineSeen(0.5, {{2, 4, 0, 0.9}}, 2.4, 1.0));
}

TEST(WidestFree, APersonLeaningOverABenchIsSeenInFrontOfIt) {
  // The disc reaches from 1.8 to 2.4, the bench front stands at 2: the near 20 cm are before it.
  EXPECT_TRUE(anyFree(1.5, std::vector<Upright>{{2, 3, 0, 2.5}}, {1.8, 2.4, 0, 1.8}, kAll));
  EXPECT_FALSE(anyFree(1.5, std::vector<Upright>{{1.7, 3, 0, 2.5}}, {1.8, 2.4, 0, 1.8}, kAll));
}

TEST(WidestFree, GivesTheWidestGapInsideTheWindow) {
  const std::vector<Upright> blocks{{1, 1, 1.0, 1.4}, {1, 1, 1.6, 1.7}};
  const Slopes gap = widestFree(1.5, blocks, {2, 2, 0, 3}, {-0.6, 0.5});
  EXPECT_DOUBLE_EQ(gap.low, 0.2);
  EXPECT_DOUBLE_EQ(gap.high, 0.5);
  EXPECT_TRUE(widestFree(1.5, blocks, {2, 2, 0, 3}, {-0.5, -0.1}).empty());
}

TEST(WidestFree, SliversDoNotCount) {
  const std::vector<Upright> shut{{1, 1, 0, 1.5}, {1, 1, 1.5 + 0.5e-9, 3}};
  const std::vector<Upright> slit{{1, 1, 0, 1.5}, {1, 1, 1.5 + 2e-9, 3}};
  EXPECT_FALSE(anyFree(1.5, shut, {2, 2, 0, 3}, {-1, 1}));
  EXPECT_TRUE(anyFree(1.5, slit, {2, 2, 0, 3}, {-1, 1}));
}

TEST(WidestFree, MoreBlocksThanFitTheFirstPlaceStillAllHide) {
  std::vector<Upright> blocks;
  for (int i = 0; i < 100; ++i) blocks.push_back({1, 1, i * 0.03, i * 0.03 + 0.03});
  EXPECT_FALSE(anyFree(1.5, blocks, {2, 2, 0.1, 2.9}, {-1, 1}));
  blocks.erase(blocks.begin() + 50);
  const Slopes gap = widestFree(1.5, blocks, {2, 2, 0.1, 2.9}, {-1, 1});
  EXPECT_NEAR(gap.low, 0, 1e-12);
  EXPECT_NEAR(gap.high, 0.03, 1e-12);
}

TEST(Hidden, APointIsHiddenByWhatTheLineToItEntersFirst) {
  const std::vector<Upright> bench{{2, 4, 0, 0.9}};
  EXPECT_TRUE(hidden(1.5, bench, 3, 0.5));
  EXPECT_FALSE(hidden(1.5, bench, 3, 0.91));
  EXPECT_FALSE(hidden(1.5, bench, 2, 0.5)) << "on its front";
  EXPECT_TRUE(hidden(1.5, bench, 5, 0.7));
  EXPECT_FALSE(hidden(1.5, bench, 5, 0.8));
}

TEST(HeightRule, AgreesWithDensePointsOnRandomBoxes) {
  const std::uint64_t seed = 20261;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  int seenOften = 0, disagreements = 0;
  for (int trial = 0; trial < 3000; ++trial) {
    const double eye = world::uniform(random, 0.2, 2.5);
    std::vector<Upright> blocks;
    for (int i = 0, n = static_cast<int>(random() % 4) + 1; i < n; ++i) {
      const double near = world::uniform(random, 0.3, 5), bottom = world::uniform(random, -0.5, 1.5);
      blocks.push_back({near, near + (random() % 3 ? world::uniform(random, 0, 2) : 0), bottom,
                        bottom + world::uniform(random, 0.1, 2)});
    }
    const double near = world::uniform(random, 1, 6);
    const Upright target{near, near + world::uniform(random, 0.01, 0.6), world::uniform(random, -0.2, 0.3),
                         world::uniform(random, 0.5, 2)};
    bool dense = false;
    for (int i = 0; i <= 60 && !dense; ++i)
      for (int k = 0; k <= 120 && !dense; ++k)
        dense = !hidden(eye, blocks, geometry::lerp(target.near, target.far, i / 60.0),
                        geometry::lerp(target.bottom, target.top, k / 120.0));
    const Slopes gap = widestFree(eye, blocks, target, kAll);
    seenOften += dense;
    // Dense points miss gaps narrower than their spacing; they never see what is not there.
    if (dense) {
      EXPECT_FALSE(gap.empty()) << "trial " << trial;
    }
    if (!dense && !gap.empty()) {
      ++disagreements;
      EXPECT_LT(gap.high - gap.low, 0.02) << "trial " << trial;
    }
  }
  EXPECT_GT(seenOften, 500);
  EXPECT_LT(seenOften, 2900);
  EXPECT_LT(disagreements, 60);
}

TEST(SeenDistances, AWindowDownToTheNadirIsOpen) {
  SeenDistances distances;
  std::vector<Upright> none;
  std::vector<Span> out;
  distances.append(1.5, none, 0, 1.8, {-std::numeric_limits<double>::infinity(), -0.1}, {0, 40}, out);
  ASSERT_EQ(out.size(), 1u);
  EXPECT_EQ(out[0].from, 0);
  EXPECT_DOUBLE_EQ(out[0].until, 15) << "the floor line of a tenth down from 1.5 m";
}

TEST(SeenDistances, AreThoseAtWhichAnUprightLineIsSeen) {
  const std::uint64_t seed = 20262;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  SeenDistances distances;
  int asked = 0, seen = 0;
  for (int trial = 0; trial < 500; ++trial) {
    const double eye = world::uniform(random, 0.2, 2.5);
    std::vector<Upright> blocks;
    for (int i = 0, n = static_cast<int>(random() % 5); i < n; ++i) {
      const double near = world::uniform(random, 0.3, 8), bottom = world::uniform(random, -0.5, 1.5);
      blocks.push_back({near, near + (random() % 3 ? world::uniform(random, 0, 2) : 0), bottom,
                        bottom + world::uniform(random, 0.1, 2.5)});
    }
    const Slopes window{world::uniform(random, -1, 0), world::uniform(random, 0, 1)};
    std::vector<Span> out;
    distances.append(eye, blocks, 0, 1.8, window, {0, 12}, out);
    for (std::size_t i = 1; i < out.size(); ++i) EXPECT_GT(out[i].from, out[i - 1].until);
    for (int k = 0; k < 100; ++k) {
      const double r = world::uniform(random, 0.01, 12);
      bool listed = false, nearEdge = false;
      for (const Span& span : out) {
        listed = listed || span.contains(r);
        nearEdge = nearEdge || std::abs(r - span.from) < 1e-6 || std::abs(r - span.until) < 1e-6;
      }
      if (nearEdge) continue;
      ++asked;
      seen += listed;
      EXPECT_EQ(listed, anyFree(eye, blocks, {r, r, 0, 1.8}, window)) << "trial " << trial << " r " << r;
    }
  }
  EXPECT_GT(seen, asked / 10);
  EXPECT_LT(seen, asked * 9 / 10);
}

}  // namespace
}  // namespace wend::sight
