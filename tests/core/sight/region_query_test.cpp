#include "core/sight/region_query.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>

#include "tests/core/sight/swept_reference.h"

namespace wend::sight {
namespace {

using geometry::Segment;
using reference::uniform;

/// A square of two metres whose east side is not widened, and a slice beyond its north side.
SweptRegion square() {
  SweptRegion region;
  const Point a{0, 0}, b{2, 0}, c{2, 2}, d{0, 2};
  region.ring = {{a, b}, {b, c, false}, {c, d}, {d, a}};
  region.slices.push_back({{Point{0.5, 2}, Point{1.5, 2}, Point{1, 4}}, 3});
  return region;
}

TEST(RegionQuery, IsZeroForAWayWithAPointInRingOrSlice) {
  const SweptRegion region = square();
  EXPECT_EQ(distance(region, {{1, 1}, {1, 1}}), 0);
  EXPECT_EQ(distance(region, {{1, 3}, {1, 3}}), 0);
  EXPECT_EQ(distance(region, {{-1, 1}, {5, 1}}), 0) << "both ends outside";
  EXPECT_EQ(distance(region, {{3, 1}, {1, 1}}), 0) << "across the side that is not widened";
  EXPECT_EQ(distance(region, {{0, 3}, {2, 3}}), 0);
  EXPECT_TRUE(ringHolds(region, {1, 1}));
  EXPECT_FALSE(ringHolds(region, {1, 3}));
}

TEST(RegionQuery, MeasuresToWidenedEdgesAndSlicesOnly) {
  const SweptRegion region = square();
  EXPECT_DOUBLE_EQ(distance(region, {{-0.3, 1}, {-5, 1}}), 0.3);
  EXPECT_DOUBLE_EQ(distance(region, {{2.3, 1}, {2.3, 1}}), std::hypot(0.3, 1)) << "to the corners, past the bare side";
  EXPECT_DOUBLE_EQ(distance(region, {{0, 4.5}, {2, 4.5}}), 0.5) << "the tip, from the middle of the way";
  EXPECT_EQ(distance({}, {{0, 0}, {1, 1}}), HUGE_VAL);
}

TEST(RegionQuery, HoldsByParityWhereRingsLieInRings) {
  SweptRegion region = square();
  const Point a{0.5, 0.5}, b{0.5, 1.5}, c{1.5, 1.5}, d{1.5, 0.5};
  region.ring.insert(region.ring.end(), {{a, b}, {b, c}, {c, d}, {d, a}});
  EXPECT_FALSE(ringHolds(region, {1, 1}));
  EXPECT_DOUBLE_EQ(distance(region, {{1, 1}, {1, 1}}), 0.5);
}

TEST(RegionQuery, MeetsExactlyWithinTheRadius) {
  std::mt19937_64 random(20277);
  const SweptRegion region = square();
  int met = 0;
  for (int i = 0; i < 20000; ++i) {
    const Point a{uniform(random, -2, 5), uniform(random, -2, 6)};
    const Segment way{a, a + Vec{uniform(random, -1, 1), uniform(random, -1, 1)}};
    const double radius = uniform(random, 0, 0.5), away = distance(region, way);
    ASSERT_EQ(meets(region, way, radius), away <= radius);
    met += away <= radius;
    // No point of the way is nearer than the way, and one is no further.
    double least = HUGE_VAL;
    for (int k = 0; k <= 64; ++k) {
      const Point p = lerp(way.a, way.b, k / 64.0);
      least = std::min(least, distance(region, {p, p}));
    }
    ASSERT_LE(away, least + 1e-12);
    ASSERT_GE(away, least - length(way.b - way.a) / 64);
  }
  EXPECT_GT(met, 3000);
  EXPECT_LT(met, 15000);
}

}  // namespace
}  // namespace wend::sight
