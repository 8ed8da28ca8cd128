#include "core/geometry/band.h"

#include <gtest/gtest.h>

namespace wend::geometry {
namespace {

double bandArea(const std::vector<Point>& points, double width, Span part) {
  double area = 0;
  for (const Quad& quad : bandAround(Course(points), width, part)) area += signedArea(quad);
  return area;
}

TEST(Band, OfARightAngleIsMitred) {
  const std::vector<Quad> quads = bandAround(Course(std::vector<Point>{{0, 0}, {4, 0}, {4, 3}}), 0.2, {0, 7});
  ASSERT_EQ(quads.size(), 2u);
  const auto near = [](Point a, Point b) { return distance(a, b) < 1e-12; };
  EXPECT_TRUE(near(quads[0][0], {0, -0.1}));
  EXPECT_TRUE(near(quads[0][1], {4.1, -0.1})) << "the outer corner";
  EXPECT_TRUE(near(quads[0][2], {3.9, 0.1})) << "the inner corner";
  EXPECT_TRUE(near(quads[1][0], {4.1, -0.1}));
  EXPECT_TRUE(near(quads[1][3], {3.9, 0.1}));
  EXPECT_TRUE(near(quads[1][1], {4.1, 3}));
}

TEST(Band, HasTheAreaOfItsCourseAndIsCutWithoutGapOrOverlap) {
  const std::vector<Point> points{{0, 0}, {4, 0}, {5, 3}, {2, 5}};
  const double length = Course(points).length();
  // A mitre adds outside what it takes inside.
  EXPECT_NEAR(bandArea(points, 0.3, {0, length}), 0.3 * length, 1e-12);
  EXPECT_NEAR(bandArea(points, 0.3, {0, 2}) + bandArea(points, 0.3, {2, 6}) + bandArea(points, 0.3, {6, length}),
              0.3 * length, 1e-12);
}

TEST(Band, ACutInsideAMitreTurnsNothingOver) {
  const std::vector<Point> points{{0, 0}, {4, 0}, {0.5, 1}};
  for (double cut = 3; cut < 5; cut += 0.01)
    for (const Quad& quad : bandAround(Course(points), 0.4, {0, cut})) EXPECT_GE(signedArea(quad), -1e-12) << cut;
}

TEST(Course, NamesPlacesByMetres) {
  const Course course(std::vector<Point>{{0, 0}, {4, 0}, {4, 0}, {4, 3}});
  EXPECT_DOUBLE_EQ(course.length(), 7);
  EXPECT_EQ(course.at(5), (Point{4, 1}));
  EXPECT_EQ(course.at(99), (Point{4, 3}));
  EXPECT_EQ(course.direction(4), (Vec{0, 1}));
}

}  // namespace
}  // namespace wend::geometry
