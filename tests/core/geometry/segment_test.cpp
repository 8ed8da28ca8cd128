#include "core/geometry/segment.h"

#include <gtest/gtest.h>

namespace wend::geometry {
namespace {

TEST(Ray, CountsAJointOfAChainOnceWhenItPassesAndEvenlyWhenItGrazes) {
  const Point joint{1, 1};
  const Vec u = unit(joint - Point{0, 0});
  for (const Point other : {Point{0, 2}, Point{-1, 1.5}, Point{3, 2}, Point{2, 2}, Point{5, 5.1}}) {
    int met = 0;
    for (const Segment& s : {Segment{{3, -0.5}, joint}, Segment{joint, other}})
      met += whereRayMeets({0, 0}, u, s).has_value();
    EXPECT_EQ(met % 2, cross(u, other - Point{0, 0}) >= 0 ? 1 : 0) << other.x << " " << other.y;
  }
  EXPECT_FALSE(whereRayMeets({0, 0}, {1, 0}, {{1, 0}, {2, 0}})) << "along it";
  EXPECT_FALSE(whereRayMeets({0, 0}, {1, 0}, {{-1, -1}, {-1, 1}})) << "behind";
  EXPECT_DOUBLE_EQ(whereRayMeets({0, 0}, {1, 0}, {{2, -1}, {4, 1}}).value_or(0), 3);
}

TEST(Reflection, KeepsTheLineAndTurnsTheRestOver) {
  const Segment diagonal{{0, 1}, {1, 2}};
  const Point image = reflected(Point{3, 1}, diagonal);
  EXPECT_NEAR(image.x, 0, 1e-12);
  EXPECT_NEAR(image.y, 4, 1e-12);
  EXPECT_NEAR(distance(reflected(image, diagonal), Point{3, 1}), 0, 1e-12);
}

}  // namespace
}  // namespace wend::geometry
