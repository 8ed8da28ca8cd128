#include "core/geometry/polygon.h"

#include <gtest/gtest.h>

#include <random>

namespace wend::geometry {
namespace {

/// The same numbers on every machine.
double uniform(std::mt19937_64& random, double low, double high) {
  return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53;
}

const Ring kEll{{0, 0}, {4, 0}, {4, 2}, {2, 2}, {2, 4}, {0, 4}};

TEST(Ring, AreaAndInsideOfAnL) {
  EXPECT_DOUBLE_EQ(signedArea(kEll), 12);
  EXPECT_DOUBLE_EQ(signedArea(Ring(kEll.rbegin(), kEll.rend())), -12);
  EXPECT_TRUE(contains(kEll, {1, 3}));
  EXPECT_FALSE(contains(kEll, {3, 3}));
  EXPECT_DOUBLE_EQ(distanceToEdge(kEll, {3, 3}), 1);
  EXPECT_DOUBLE_EQ(distanceToEdge(kEll, {1, 3}), 1);
  EXPECT_EQ(extentOf(kEll), (Extent{{0, 0}, {4, 4}}));
}

TEST(Ring, NeighboursShareNoPlaceOfTheirCommonEdge) {
  const Ring left{{0, 0}, {1, 0}, {1, 1}, {0, 1}}, right{{1, 0}, {2, 0}, {2, 1}, {1, 1}};
  for (const double y : {0.0, 0.3, 0.999}) EXPECT_NE(contains(left, {1, y}), contains(right, {1, y})) << y;
}

TEST(Shadow, IsWhereTheWayFromTheSourceCrossesTheRing) {
  std::mt19937_64 random(11);
  const Ring square{{1, 1}, {2, 1}, {2, 2}, {1, 2}};
  int inShadow = 0;
  for (int i = 0; i < 5000; ++i) {
    const Point source{uniform(random, 0, 3), uniform(random, 0, 3)},
        origin{uniform(random, -1, 4), uniform(random, -1, 4)};
    if (contains(square, source)) {
      EXPECT_FALSE(shadowOn(square, source, origin, {1, 0}));
      continue;
    }
    const Vec u = turned({1, 0}, uniform(random, -3, 3));
    const auto shadow = shadowOn(square, source, origin, u);
    const double r = uniform(random, 0, 5);
    const bool cut = crosses(square, {source, origin + u * r});
    EXPECT_EQ(cut, shadow && shadow->from < r && r < shadow->until);
    inShadow += cut;
  }
  EXPECT_GT(inShadow, 500);
}

}  // namespace
}  // namespace wend::geometry
