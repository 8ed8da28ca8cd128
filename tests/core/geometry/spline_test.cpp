#include "core/geometry/spline.h"

#include <gtest/gtest.h>

#include <random>

namespace wend::geometry {
namespace {

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (static_cast<double>(random() >> 11) / 9007199254740992.0);
}

std::vector<Point> randomPoints(std::mt19937_64& random) {
  std::vector<Point> points;
  while (points.size() < 7) points.push_back({uniform(random, -5, 5), uniform(random, -5, 5)});
  return points;
}

TEST(CatmullRom, PassesThroughItsPointsWithOneDirection) {
  std::mt19937_64 random(21);
  for (int run = 0; run < 100; ++run) {
    const std::vector<Point> points = randomPoints(random);
    const std::vector<Cubic> pieces = catmullRom(points);
    ASSERT_EQ(pieces.size(), points.size() - 1);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      EXPECT_EQ(pieces[i].place(0), points[i]);
      EXPECT_EQ(pieces[i].place(1), points[i + 1]);
      if (i == 0) continue;
      const double before = std::sqrt(distance(points[i - 1], points[i])),
                   after = std::sqrt(distance(points[i], points[i + 1]));
      EXPECT_LT(length(pieces[i - 1].slope(1) / before - pieces[i].slope(0) / after), 1e-12) << run;
    }
  }
}

TEST(CatmullRom, EndsRunAlongTheirChordsAndTwoPointsAreALine) {
  const std::vector<Cubic> bent = catmullRom({{0, 0}, {2, 1}, {3, 4}});
  EXPECT_NEAR(cross(bent.front().slope(0), {2, 1}), 0, 1e-12);
  EXPECT_NEAR(cross(bent.back().slope(1), {1, 3}), 0, 1e-12);
  const Cubic line = catmullRom({{0, 0}, {4, 2}}).front();
  for (double u = 0; u <= 1; u += 0.1) EXPECT_LT(distance(line.place(u), lerp(line.from, line.to, u)), 1e-12);
}

TEST(CatmullRom, MirroredNeighboursSetTheEnds) {
  const std::vector<Point> points{{0, 0}, {2, 1}, {3, 4}, {7, 4}};
  std::vector<Point> longer{points[0] - (points[1] - points[0])};
  longer.insert(longer.end(), points.begin(), points.end());
  longer.push_back(points[3] + (points[3] - points[2]));
  const std::vector<Cubic> ours = catmullRom(points), inner = catmullRom(longer);
  for (std::size_t i = 0; i < ours.size(); ++i)
    for (double u = 0; u <= 1; u += 0.25) EXPECT_LT(distance(ours[i].place(u), inner[i + 1].place(u)), 1e-12);
}

TEST(CatmullRom, APieceForgetsPointsBeyondItsNeighbours) {
  std::vector<Point> points{{0, 0}, {2, 1}, {3, 4}, {7, 4}, {8, 8}};
  const Cubic before = catmullRom(points)[0];
  points[3] = {-9, 9};
  const Cubic after = catmullRom(points)[0];
  EXPECT_EQ(before.arriving, after.arriving);
  EXPECT_EQ(before.leaving, after.leaving);
}

TEST(CatmullRom, NoPieceStopsOrTurnsBackHoweverUnevenThePoints) {
  std::mt19937_64 random(22);
  for (int run = 0; run < 300; ++run) {
    std::vector<Point> points{{0, 0}};
    for (int k = 0; k < 6; ++k) {
      const double far = std::pow(10.0, uniform(random, -3, 1.5));
      points.push_back(points.back() + direction(uniform(random, 0, 360)) * far);
    }
    for (const Cubic& piece : catmullRom(points))
      for (double u = 0; u <= 1; u += 0.02)
        EXPECT_GT(length(piece.slope(u)), 1e-6 * length(piece.to - piece.from)) << run;
  }
}

TEST(Cubic, SlopeAndBendAreDerivatives) {
  const Cubic cubic{{0, 0}, {3, 1}, {4, -1}, {0, 5}};
  for (double u = 0.1; u < 1; u += 0.1) {
    const double h = 1e-5;
    EXPECT_LT(length((cubic.place(u + h) - cubic.place(u - h)) / (2 * h) - cubic.slope(u)), 1e-8);
    EXPECT_LT(length((cubic.slope(u + h) - cubic.slope(u - h)) / (2 * h) - cubic.bend(u)), 1e-8);
  }
}

TEST(Cubic, LengthAddsUpAndIsExactForALine) {
  const Cubic line{{0, 0}, {3, 4}, {3, 4}, {3, 4}};
  EXPECT_NEAR(line.length(0, 1), 5, 1e-14);
  EXPECT_NEAR(line.length(0.2, 0.6), 2, 1e-14);
  const Cubic bent{{0, 0}, {3, 1}, {4, -1}, {2, 5}};
  EXPECT_NEAR(bent.length(0, 0.5) + bent.length(0.5, 1), bent.length(0, 1), 1e-3);
}

}  // namespace
}  // namespace wend::geometry
