#include "core/geometry/disc.h"

#include <gtest/gtest.h>

#include "core/geometry/segment.h"

namespace wend::geometry {
namespace {

TEST(TangentAngle, IsThirtyDegreesFromTwoRadiiAway) {
  EXPECT_NEAR(*tangentAngle(2, 1), radians(30), 1e-15);
  EXPECT_NEAR(*tangentAngle(0.5, 0.25), radians(30), 1e-15);
}

TEST(TangentAngle, IsNoneFromInsideAndFromTheEdge) {
  EXPECT_FALSE(tangentAngle(0, 1));
  EXPECT_FALSE(tangentAngle(0.999, 1));
  EXPECT_FALSE(tangentAngle(1, 1));
  EXPECT_TRUE(tangentAngle(1.001, 1));
}

TEST(TangentAngle, OfAPointIsZero) {
  EXPECT_EQ(*tangentAngle(3, 0), 0);
}

TEST(TangentAngle, PartsTheRaysThatPassTheDiscFromThoseThatMeetIt) {
  const Point from{0.3, -1.2}, centre{2, 1};
  const double radius = 0.7;
  const Vec towards = unit(centre - from);
  const double angle = *tangentAngle(distance(from, centre), radius);
  for (const double side : {-1.0, 1.0}) {
    EXPECT_TRUE(chord(from, turned(towards, side * (angle - 1e-6)), centre, radius));
    EXPECT_FALSE(chord(from, turned(towards, side * (angle + 1e-6)), centre, radius));
  }
}

TEST(RingWithin, HasItsCornersOnTheCircleCounterClockwise) {
  const Convex ring = ringWithin({2, 1}, 0.5, 12);
  ASSERT_EQ(ring.size(), 12U);
  double twiceArea = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    EXPECT_NEAR(distance(ring[i], Point{2, 1}), 0.5, 1e-12);
    twiceArea += cross(ring[i] - Point{2, 1}, ring[(i + 1) % ring.size()] - Point{2, 1});
  }
  EXPECT_NEAR(twiceArea, 12 * 0.25 * 0.5, 1e-12) << "of a dodecagon: 3 r^2";
}

}  // namespace
}  // namespace wend::geometry
