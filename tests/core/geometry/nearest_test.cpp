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

TEST(InsideRing, DoesNotDependOnTheSenseOfTurning) {
  const std::vector<Point> back(kEll.rbegin(), kEll.rend());
  std::mt19937_64 random(7);
  int inside = 0;
  for (int i = 0; i < 2000; ++i) {
    const Point p{uniform(random, -1, 5), uniform(random, -1, 4)};
    const bool truth = p.x > 0 && p.y > 0 && ((p.x < 4 && p.y < 1) || (p.x < 1 && p.y < 3));
    ASSERT_EQ(insideRing(p, kEll), truth) << p.x << ' ' << p.y;
    ASSERT_EQ(insideRing(p, back), truth) << p.x << ' ' << p.y;
    inside += truth;
  }
  EXPECT_GT(inside, 200);
}

TEST(InsideRing, CountsARayThroughACornerOnce) {
  const std::vector<Point> diamond{{0, -1}, {1, 0}, {0, 1}, {-1, 0}};
  EXPECT_TRUE(insideRing({0, 0}, diamond));
  EXPECT_FALSE(insideRing({-2, 0}, diamond));
  EXPECT_FALSE(insideRing({2, 0}, diamond));
}

TEST(Meeting, IsTheShareAlongTheFirstSegment) {
  EXPECT_DOUBLE_EQ(meeting({0, 0}, {4, 0}, {1, -1}, {1, 1}).value(), 0.25);
  EXPECT_DOUBLE_EQ(meeting({0, 0}, {4, 0}, {4, 0}, {4, 3}).value(), 1);
  EXPECT_FALSE(meeting({0, 0}, {4, 0}, {5, -1}, {5, 1}));
  EXPECT_FALSE(meeting({0, 0}, {4, 0}, {1, 1}, {1, 2}));
  EXPECT_FALSE(meeting({0, 0}, {4, 0}, {0, 0}, {4, 0}));
}

}  // namespace
}  // namespace wend::geometry
