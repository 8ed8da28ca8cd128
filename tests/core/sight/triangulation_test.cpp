#include "core/sight/triangulation.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <set>

#include "core/sight/lattice.h"
#include "tests/core/sight/swept_reference.h"

namespace wend::sight {
namespace {

using geometry::Segment;
using reference::uniform;

constexpr geometry::Extent kBox{{-1, -1}, {9, 9}};

struct Corners {
  Point a, b, c;
};

Corners cornersOf(const Triangulation& triangles, std::size_t t) {
  const auto at = [&](std::size_t i) { return triangles.corners()[triangles.sides()[3 * t + i].origin]; };
  return {at(0), at(1), at(2)};
}

/// Twice the area of all triangles, each of which must have some.
double doubleAreaOf(const Triangulation& triangles) {
  double sum = 0;
  for (std::size_t t = 0; t < triangles.triangles(); ++t) {
    const auto [a, b, c] = cornersOf(triangles, t);
    const double area = cross(b - a, c - a);
    EXPECT_GT(area, 0) << t;
    sum += area;
  }
  return sum;
}

/// Twins name each other, and what a side says of the triangle beyond is true.
void expectJoined(const Triangulation& triangles) {
  const auto* sides = triangles.sides();
  for (int s = 0; s < 3 * static_cast<int>(triangles.triangles()); ++s) {
    const Triangulation::Side& side = sides[s];
    EXPECT_EQ(side.end, sides[s % 3 == 2 ? s - 2 : s + 1].origin);
    EXPECT_EQ(side.apex < 0, side.wall >= 0);
    if (side.twin < 0) continue;
    EXPECT_EQ(sides[side.twin].twin, s);
    EXPECT_EQ(sides[side.twin].origin, side.end);
    EXPECT_EQ(sides[side.twin].wall, side.wall);
    if (side.apex < 0) continue;
    EXPECT_EQ(sides[side.right].origin, side.origin);
    EXPECT_EQ(sides[side.right].end, side.apex);
    EXPECT_EQ(sides[side.left].origin, side.apex);
    EXPECT_EQ(sides[side.left].end, side.end);
  }
}

/// Whether p lies within `reach` of the closed sides that belong to a wall.
bool nearWall(const std::vector<Segment>& closed, Point p, double reach) {
  return std::any_of(closed.begin(), closed.end(), [&](Segment s) { return geometry::distance(p, s) <= reach; });
}

std::vector<Segment> drawn(std::mt19937_64& random, int kind) {
  std::vector<Segment> walls;
  const auto point = [&] {
    // Bundles of walls a few millimetres apart, which cross at angles too small for the lattice.
    if (kind == 3)
      return Point{random() % 2 ? uniform(random, 0, 8) : 8.0 * static_cast<double>(random() % 2),
                   uniform(random, 3, 3.02)};
    if (kind == 0) return Point{static_cast<double>(random() % 9), static_cast<double>(random() % 9)};
    return Point{uniform(random, 0, 8), uniform(random, 0, 8)};
  };
  for (std::size_t i = 0, n = 1 + random() % 14; i < n; ++i) {
    Point a = point();
    if (kind == 2 && !walls.empty()) {
      const Segment& other = walls[random() % walls.size()];
      const double off = std::pow(10, uniform(random, -6, -2));
      a = lerp(other.a, other.b, uniform(random, 0, 1)) + Vec{uniform(random, -1, 1), uniform(random, -1, 1)} * off;
    }
    walls.push_back({a, point()});
  }
  return walls;
}

TEST(Triangulation, TilesTheBoxAndHoldsEveryWallWhateverIsDrawn) {
  const std::uint64_t seed = 20273;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  for (int trial = 0; trial < 4000; ++trial) {
    const auto walls = drawn(random, trial % 4);
    const Triangulation triangles(walls, kBox);
    ASSERT_EQ(doubleAreaOf(triangles), 200) << trial;
    expectJoined(triangles);
    ASSERT_EQ(triangles.unsettled(), 0);
    std::vector<Segment> drawnWalls(walls);
    drawnWalls.insert(drawnWalls.end(),
                      {{{-1, -1}, {9, -1}}, {{9, -1}, {9, 9}}, {{9, 9}, {-1, 9}}, {{-1, 9}, {-1, -1}}});
    const auto closed = reference::wallsOf(triangles);
    const double slack = 2 * Triangulation::kJoin;
    for (const Segment& wall : walls)
      for (int i = 0; i <= 20 && geometry::distance(wall.a, wall.b) > Triangulation::kJoin; ++i)
        ASSERT_TRUE(nearWall(closed, lerp(wall.a, wall.b, i / 20.0), slack)) << trial;
    for (const Segment& side : closed)
      for (const double share : {0.1, 0.5, 0.9})
        ASSERT_TRUE(nearWall(drawnWalls, lerp(side.a, side.b, share), slack)) << trial;
    ASSERT_FALSE(HasFailure()) << trial;
  }
}

TEST(Triangulation, KeepsCirclesEmptyWhereNoWallForbidsIt) {
  std::mt19937_64 random(20274);
  for (int trial = 0; trial < 300; ++trial) {
    // Walls of no length are corners only.
    std::vector<Segment> walls;
    for (int i = 0; i < 30; ++i) {
      const Point p{uniform(random, 0, 8), uniform(random, 0, 8)};
      walls.push_back({p, p});
    }
    const Triangulation triangles(walls, kBox);
    const auto lattice = [](Point p) { return LatticePoint{std::llround(p.x * 16384), std::llround(p.y * 16384)}; };
    for (std::size_t t = 0; t < triangles.triangles(); ++t) {
      const auto [a, b, c] = cornersOf(triangles, t);
      for (std::size_t i = 0; i < triangles.cornerCount(); ++i)
        ASSERT_FALSE(insideCircle(lattice(a), lattice(b), lattice(c), lattice(triangles.corners()[i])));
    }
  }
}

TEST(Triangulation, GivesCrossingsAndTeesOneCorner) {
  const std::vector<Segment> cross{{{0, 0}, {4, 4}}, {{0, 4}, {4, 0}}};
  EXPECT_EQ(Triangulation(cross, kBox).cornerCount(), 4u + 4u + 1u);
  EXPECT_EQ(reference::wallsOf(Triangulation(cross, kBox)).size(), 4u + 4u);
  const std::vector<Segment> tee{{{0, 0}, {4, 0}}, {{2, 0.0004}, {2, 3}}};
  EXPECT_EQ(Triangulation(tee, kBox).cornerCount(), 4u + 4u);
  const std::vector<Segment> overlap{{{0, 0}, {4, 0}}, {{2, 0}, {6, 0}}, {{6, 0}, {2, 0}}};
  EXPECT_EQ(Triangulation(overlap, kBox).cornerCount(), 4u + 4u);
}

TEST(Triangulation, JoinsEndsThatNearlyMeet) {
  const std::vector<Segment> joined{{{0, 0}, {4, 0}}, {{4.0001, 0.0003}, {6, 2}}};
  EXPECT_EQ(Triangulation(joined, kBox).cornerCount(), 4u + 3u);
  const std::vector<Segment> apart{{{0, 0}, {4, 0}}, {{4.003, 0}, {6, 2}}};
  EXPECT_EQ(Triangulation(apart, kBox).cornerCount(), 4u + 4u);
}

TEST(Triangulation, GrowsTheBoxAroundWalls) {
  const std::vector<Segment> walls{{{-20, 3}, {5, 30.5}}};
  const Triangulation triangles(walls, kBox);
  EXPECT_EQ(triangles.box(), (geometry::Extent{{-21, -1}, {9, 32}}));
  const std::vector<Segment> far{{{40000, 3}, {41000, 5}}};
  EXPECT_EQ(doubleAreaOf(Triangulation(far, {{39990, 0}, {41010, 10}})), 2 * 1020 * 10.0);
}

TEST(Triangulation, IsTheSameForTheSameWalls) {
  std::mt19937_64 random(20275);
  const auto walls = drawn(random, 2);
  const Triangulation a(walls, kBox), b(walls, kBox);
  ASSERT_EQ(a.triangles(), b.triangles());
  for (std::size_t s = 0; s < 3 * a.triangles(); ++s) EXPECT_EQ(a.sides()[s].origin, b.sides()[s].origin);
}

TEST(Triangulation, FindsTheTriangleFromAnywhere) {
  std::mt19937_64 random(20276);
  for (int trial = 0; trial < 400; ++trial) {
    const Triangulation triangles(drawn(random, trial % 3), kBox);
    const Point p{uniform(random, -1, 9), uniform(random, -1, 9)};
    const auto [a, b, c] = cornersOf(triangles, static_cast<std::size_t>(triangles.triangleAt(
                                                    p, static_cast<int>(random() % triangles.triangles()))));
    for (const double turn : {cross(b - a, p - a), cross(c - b, p - b), cross(a - c, p - c)}) EXPECT_GE(turn, 0);
    EXPECT_EQ(triangles.triangleAt({9.5, 3}), -1);
  }
}

}  // namespace
}  // namespace wend::sight
