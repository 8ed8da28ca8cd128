#include "core/sight/swept_view.h"

#include <gtest/gtest.h>

#include <cstring>

#include "tests/core/sight/swept_reference.h"

namespace wend::sight {
namespace {

using geometry::Segment;
using reference::uniform;

constexpr geometry::Extent kBox{{0, 0}, {10, 10}};

SweptRegion seen(const std::vector<Segment>& walls, const SweptStep& step) {
  const Triangulation triangles(walls, kBox);
  SweptView view(triangles);
  SweptRegion region;
  view.of(step, region);
  return region;
}

SweptStep still(Point at, double bearing, double halfAngle) {
  return {{at, bearing, halfAngle}, {at, bearing, halfAngle}};
}

bool holds(const SweptRegion& region, Point p) {
  return distance(region, {p, p}) == 0;
}

double areaOf(const SweptRegion& region) {
  double sum = 0;
  for (const RegionEdge& edge : region.ring) sum += cross(edge.a - Point{0, 0}, edge.b - Point{0, 0}) / 2;
  return sum;
}

/// How often the rings go round p.
int turnsAround(const SweptRegion& region, Point p) {
  int turns = 0;
  for (const RegionEdge& edge : region.ring) {
    if ((edge.a.y > p.y) == (edge.b.y > p.y)) continue;
    const bool up = edge.b.y > edge.a.y;
    if ((cross(edge.b - edge.a, p - edge.a) > 0) == up) turns += up ? 1 : -1;
  }
  return turns;
}

SweptStep anyStep(std::mt19937_64& random) {
  const Point at{uniform(random, 1, 9), uniform(random, 1, 9)};
  const double half = uniform(random, 5, 60);
  return {{at, uniform(random, 0, 360), half},
          {at + Vec{uniform(random, -0.2, 0.2), uniform(random, -0.2, 0.2)}, uniform(random, 0, 360), half}};
}

std::vector<Segment> anyWalls(std::mt19937_64& random) {
  std::vector<Segment> walls;
  for (std::size_t i = 0, n = 2 + random() % 8; i < n; ++i)
    walls.push_back({{uniform(random, 1, 9), uniform(random, 1, 9)}, {uniform(random, 1, 9), uniform(random, 1, 9)}});
  return walls;
}

Point rounded(Point p) {
  return {std::round(p.x), std::round(p.y)};
}

TEST(SweptView, OfAStillLensIsItsPlainViewAndNoSlice) {
  // All round but for the shadow of a wall: two metres wide at its foot, ten where it meets the box four metres on.
  const auto region = seen({{{4, 6}, {6, 6}}}, still({5, 5}, 0, 180));
  EXPECT_NEAR(areaOf(region), 100 - 4 * (2 + 10) / 2.0, 1e-9);
  EXPECT_TRUE(region.slices.empty());
  // A quarter of the box from its middle, bare.
  const auto quarter = seen({}, still({5, 5}, 0, 45));
  EXPECT_NEAR(areaOf(quarter), 25, 1e-9);
  EXPECT_TRUE(holds(quarter, {5, 9}));
  EXPECT_FALSE(holds(quarter, {5, 4.9}));
}

TEST(SweptView, SeesThroughASlitBetweenTwoInstants) {
  // From either end of the step the slit of 2 cm shows only ground beside the point behind it.
  const std::vector<Segment> walls{{{0, 6}, {4.99, 6}}, {{5.01, 6}, {10, 6}}};
  const SweptStep step{{{4.8, 5.5}, 0, 40}, {{5.2, 5.5}, 0, 40}};
  const Point behind{5, 9};
  const auto plain = reference::wallsOf(Triangulation(walls, kBox));
  EXPECT_FALSE(reference::seenAt(plain, step, 0, behind));
  EXPECT_FALSE(reference::seenAt(plain, step, 1, behind));
  EXPECT_TRUE(holds(seen(walls, step), behind));
}

TEST(SweptView, SeesPastACornerAsFarAsTheFurtherEndOfTheStep) {
  // A wall from the west ends at (5, 6). From (6, 5) the ground beyond the line x + y = 11 shows behind it.
  const auto region = seen({{{0, 6}, {5, 6}}}, {{{5, 5}, 0, 44}, {{6, 5}, 0, 44}});
  EXPECT_TRUE(holds(region, {4.01, 7.1}));
  EXPECT_FALSE(holds(region, {3.9, 7.0}));
}

TEST(SweptView, TurnsByAnyAngle) {
  // Once around and more while it moves; behind a wall nothing is seen all the same.
  const std::vector<Segment> walls{{{3, 7}, {7, 7}}};
  const auto region = seen(walls, {{{5, 5}, 0, 20}, {{5.1, 5}, 760, 20}});
  for (const Point p : {Point{5, 1}, Point{1, 5}, Point{9, 5}, Point{5, 6.9}, Point{1, 1}, Point{5.05, 5}})
    EXPECT_TRUE(holds(region, p)) << p.x << " " << p.y;
  EXPECT_FALSE(holds(region, {5, 9}));
  const auto half = seen(walls, {{{5, 5}, 0, 45}, {{5.1, 5}, 150, 45}});
  EXPECT_TRUE(holds(half, {5, 1}));
  EXPECT_FALSE(holds(half, {1, 5}));
  EXPECT_EQ(seen({}, {{{5, 5}, 0, 45}, {{5, 5}, 200, 45}}).slices.size(), 0u) << "turning on the spot makes one ring";
}

TEST(SweptView, OnAWallSeesBothSides) {
  const std::vector<Segment> walls{{{0, 5}, {10, 5}}};
  const auto on = seen(walls, still({5, 5}, 90, 60));
  EXPECT_TRUE(holds(on, {8, 6}));
  EXPECT_TRUE(holds(on, {8, 4}));
  const auto across = seen(walls, {{{5, 4.9}, 0, 30}, {{5, 5.1}, 0, 30}});
  EXPECT_TRUE(holds(across, {5, 9}));
  EXPECT_TRUE(holds(across, {5, 4.95}));
  const auto beside = seen(walls, still({5, 4.999}, 0, 30));
  EXPECT_FALSE(holds(beside, {5, 5.1}));
}

TEST(SweptView, OutsideTheBoxSeesEverything) {
  EXPECT_TRUE(holds(seen({}, still({11, 5}, 0, 20)), {1, 1}));
}

TEST(SweptView, KeepsRingsApartAndLeavesNoEdgeBareWithoutASlice) {
  std::mt19937_64 random(20279);
  int rings = 0, bare = 0;
  for (int trial = 0; trial < 3000; ++trial) {
    auto walls = anyWalls(random);
    SweptStep step = anyStep(random);
    if (trial % 2) step.until.bearing = step.from.bearing + uniform(random, 0, 20);
    // Every third on whole metres, where rays pass one corner after another.
    if (trial % 3 == 0) {
      for (Segment& wall : walls) wall = {rounded(wall.a), rounded(wall.b)};
      step = {{rounded(step.from.pupil), 180, 52.5}, {rounded(step.from.pupil) + Vec{0.25, -0.25}, 180, 52.5}};
    }
    const auto region = seen(walls, step);
    SweptRegion slices;
    slices.slices = region.slices;
    const std::size_t n = region.ring.size();
    rings += n > 0;
    for (std::size_t i = 0; i < n; ++i) {
      const RegionEdge& edge = region.ring[i];
      ASSERT_EQ(edge.b, region.ring[(i + 1) % n].a) << "one closed ring";
      if (edge.widened) continue;
      ++bare;
      for (const double share : {0.001, 0.3, 0.999}) {
        const Point p = lerp(edge.a, edge.b, share);
        ASSERT_LE(distance(slices, {p, p}), 1e-6) << trial;
      }
    }
    for (int i = 0; i < 30; ++i) {
      const int turns = turnsAround(region, {uniform(random, 0, 10), uniform(random, 0, 10)});
      ASSERT_TRUE(turns == 0 || turns == 1) << trial;
    }
  }
  EXPECT_GT(rings, 1000);
  EXPECT_GT(bare, 500);
}

TEST(SweptView, CallsAnEdgeOnAWallOnlyAlongWalls) {
  std::mt19937_64 random(20281);
  long onWall = 0, others = 0;
  for (int trial = 0; trial < 2000; ++trial) {
    auto walls = anyWalls(random);
    // Doubled, overlapping and joined ones among them.
    if (trial % 2 == 0) walls.push_back({lerp(walls[0].a, walls[0].b, 0.3), lerp(walls[0].a, walls[0].b, 1.4)});
    if (trial % 3 == 0) walls.push_back({walls[1].b, walls[0].a});
    const SweptRegion region = seen(walls, anyStep(random));
    for (const RegionEdge& edge : region.ring) {
      ++(edge.onWall ? onWall : others);
      if (!edge.onWall) continue;
      for (const double share : {0.0, 0.1, 0.5, 0.8, 1.0}) {
        double nearest = HUGE_VAL;
        for (const Segment wall : walls) nearest = std::min(nearest, distance(lerp(edge.a, edge.b, share), wall));
        ASSERT_LE(nearest, 2 * Triangulation::kJoin) << trial;
      }
    }
  }
  EXPECT_GT(onWall, 600);
  EXPECT_GT(others, 600);
}

TEST(SweptView, GivesTheSameGroundWhateverWasAskedBefore) {
  std::mt19937_64 random(20280);
  for (int trial = 0; trial < 500; ++trial) {
    const Triangulation triangles(anyWalls(random), kBox);
    SweptStep step = anyStep(random);
    // Some stand on a corner of the lattice, where several triangles hold the lens.
    if (trial % 3 == 0) step.from.pupil = triangles.corners()[random() % triangles.cornerCount()];
    SweptView fresh(triangles), used(triangles);
    SweptRegion first, again;
    fresh.of(step, first);
    used.of(anyStep(random), again);
    used.of(step, again);
    ASSERT_EQ(first.ring.size(), again.ring.size()) << trial;
    ASSERT_EQ(first.slices.size(), again.slices.size()) << trial;
    for (std::size_t i = 0; i < first.ring.size(); ++i) {
      ASSERT_EQ(first.ring[i].a, again.ring[i].a);
      ASSERT_EQ(first.ring[i].widened, again.ring[i].widened);
    }
    for (std::size_t i = 0; i < first.slices.size(); ++i) ASSERT_EQ(first.slices[i].corner, again.slices[i].corner);
  }
}

TEST(SweptView, OfTheImageInAMirrorEndsAtItsLine) {
  // The mirror's line is y = 5, the mirror from 4 to 6. A wall stands in front, and its image behind.
  const std::vector<Segment> walls{{{0, 5}, {4, 5}}, {{6, 5}, {10, 5}}, {{4.5, 7}, {5.5, 7}}, {{4.5, 3}, {5.5, 3}}};
  for (const double depth : {0.001, 1.0, 4.5}) {
    SweptRegion region = seen(walls, {{{5, 5 - depth}, 0, 60}, {{5.02, 5 - depth}, 0, 60}});
    keepFront(region, {{0, 5}, {10, 5}});
    EXPECT_FALSE(holds(region, {5, 4.9})) << depth;
    EXPECT_EQ(holds(region, {5.4, 5.5}), depth < 4) << "the image of the wall hides it from far back";
    EXPECT_FALSE(holds(region, {5, 7.5})) << depth;
    for (std::size_t i = 0, n = region.ring.size(); i < n; ++i) {
      EXPECT_EQ(region.ring[i].b, region.ring[(i + 1) % n].a) << depth;
      EXPECT_GE(region.ring[i].a.y, 5 - 1e-12);
      EXPECT_FALSE(region.ring[i].onWall && region.ring[i].a.y < 5 + 1e-6 && region.ring[i].b.y < 5 + 1e-6);
    }
  }
}

TEST(SweptView, CutsRingsThatLeaveTheFrontMoreThanOnce) {
  SweptRegion region;
  const std::vector<Point> comb{{0, 1}, {1, -1}, {2, 1}, {3, -1}, {4, 1}, {4, 2}, {0, 2}};
  for (std::size_t i = 0; i < comb.size(); ++i) region.ring.push_back({comb[i], comb[(i + 1) % comb.size()]});
  keepFront(region, {{-1, 0}, {1, 0}});
  // Eight square metres above the line, less a tooth and two halves of one.
  EXPECT_NEAR(areaOf(region), 8 - 1, 1e-12);
  EXPECT_TRUE(ringHolds(region, {1, 0.1}));
  EXPECT_FALSE(ringHolds(region, {1, -0.1}));
  EXPECT_FALSE(ringHolds(region, {2, 0.5}));
  EXPECT_FALSE(ringHolds(region, {2.9, -0.5}));
}

/// Places and sides of a way from pose to pose lie within what one step over it all allows.
TEST(StepOver, HoldsEveryInstantOfTheWay) {
  std::mt19937_64 random(2029);
  for (int trial = 0; trial < 300; ++trial) {
    std::vector<SweptPose> poses;
    for (std::size_t i = 0, n = 1 + random() % 12; i < n; ++i)
      poses.push_back(
          {{uniform(random, 0, 4), uniform(random, 0, 4)}, uniform(random, -400, 400), uniform(random, 0, 60)});
    const SweptStep step = stepOver(poses);
    EXPECT_EQ(step.from.pupil, poses.front().pupil);
    EXPECT_EQ(step.until.pupil, poses.back().pupil);
    const auto sides = [](const SweptPose& p) {
      return geometry::Span{p.bearing - p.halfAngle, p.bearing + p.halfAngle};
    };
    const geometry::Span a = sides(step.from), b = sides(step.until);
    double sway = 0, turn = 0;
    for (std::size_t i = 0; i + 1 < poses.size(); ++i)
      for (int k = 0; k <= 20; ++k) {
        const SweptPose pose = reference::poseAt({poses[i], poses[i + 1]}, k / 20.0);
        sway = std::max(sway, geometry::distance(pose.pupil, Segment{step.from.pupil, step.until.pupil}));
        turn = std::max(
            {turn, std::min(a.from, b.from) - sides(pose).from, sides(pose).until - std::max(a.until, b.until)});
      }
    EXPECT_NEAR(step.sway, sway, 1e-9) << "no less than needed, and no more";
    EXPECT_NEAR(step.turn, turn, 1e-9);
  }
}

}  // namespace
}  // namespace wend::sight
