#include "core/geometry/nearest.h"

#include <gtest/gtest.h>

#include <random>

namespace wend::geometry {
namespace {

const std::vector<Point> kRoom{{0, 0}, {9, 0}, {9, 8}, {0, 8}};
const std::vector<Point> kEll{{0, 0}, {4, 0}, {4, 1}, {1, 1}, {1, 3}, {0, 3}};

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (double(random() >> 11) / 9007199254740992.0);
}

TEST(NearestOnSegment, StaysBetweenTheEnds) {
  EXPECT_EQ(nearestOnSegment({1, 2}, {0, 0}, {4, 0}), (Point{1, 0}));
  EXPECT_EQ(nearestOnSegment({-1, 2}, {0, 0}, {4, 0}), (Point{0, 0}));
  EXPECT_EQ(nearestOnSegment({9, 2}, {0, 0}, {4, 0}), (Point{4, 0}));
  EXPECT_EQ(nearestOnSegment({9, 2}, {3, 3}, {3, 3}), (Point{3, 3}));
}

TEST(NearestOnRing, CountsTheClosingEdgeAndALineDoesNot) {
  EXPECT_DOUBLE_EQ(nearestOnRing({1, 4}, kRoom).distance, 1);
  EXPECT_EQ(nearestOnRing({1, 4}, kRoom).point, (Point{0, 4}));
  EXPECT_DOUBLE_EQ(nearestOnLine({1, 4}, kRoom).distance, 4);
}

TEST(EdgeDistance, IsPositiveInsideAndNegativeOutside) {
  EXPECT_DOUBLE_EQ(edgeDistance({4, 3}, kRoom).inward, 3);
  EXPECT_DOUBLE_EQ(edgeDistance({12, 12}, kRoom).inward, -5);
  EXPECT_DOUBLE_EQ(edgeDistance({2, 2}, kEll).inward, -1);
  EXPECT_DOUBLE_EQ(edgeDistance({0.5, 2}, kEll).inward, 0.5);
}

TEST(EdgeDistance, IsToAnEdgePointThatNoOtherIsNearerThan) {
  std::mt19937_64 random(7);
  for (int i = 0; i < 500; ++i) {
    const Point p{uniform(random, -1, 5), uniform(random, -1, 4)};
    const EdgeDistance edge = edgeDistance(p, kEll);
    ASSERT_NEAR(std::abs(edge.inward), distance(p, edge.edge), 1e-12);
    ASSERT_NEAR(std::abs(edge.inward), distanceToEdge(kEll, p), 1e-12);
    ASSERT_EQ(edge.inward > 0, p.x > 0 && p.y > 0 && ((p.x < 4 && p.y < 1) || (p.x < 1 && p.y < 3)));
  }
}

}  // namespace
}  // namespace wend::geometry
