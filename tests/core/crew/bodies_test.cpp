#include "core/crew/bodies.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace wend::crew {
namespace {

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (double(random() >> 11) / 9007199254740992.0);
}

double flatFloor(Point) {
  return 0;
}

Obstacle block(std::string id, double x0, double y0, double x1, double y1, double top = 2) {
  return {std::move(id), {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}, true, 0, 0, top};
}

/// A doorway 1.10 wide, walked through to the east: jambs north and south.
const std::vector<Obstacle> kDoorway{block("south jamb", -0.2, -3, 0, 0), block("north jamb", -0.2, 1.1, 0, 4)};

TEST(BodiesAlong, StandBehindTheSensorAndToItsRight) {
  // The lens looks east from (5, 2): behind is west, right is south.
  const geometry::Pose sensor{{5, 2, 1.5}, 90, -30};
  const auto bodies =
      bodiesAlong(sensor, {"camera", 0.35}, {{"op", 0.5, 0, 0.35, 1.8}, {"spot", 1.1, 0.25, 0.25, 1.7}}, flatFloor);
  ASSERT_EQ(bodies.size(), 3u);
  EXPECT_EQ(bodies[0].id, "camera");
  EXPECT_EQ(bodies[0].at, (Point{5, 2}));
  EXPECT_DOUBLE_EQ(bodies[0].top, 1.85);
  EXPECT_NEAR(bodies[1].at.x, 4.5, 1e-12);
  EXPECT_NEAR(bodies[1].at.y, 2, 1e-12);
  EXPECT_NEAR(bodies[2].at.x, 3.9, 1e-12);
  EXPECT_NEAR(bodies[2].at.y, 1.75, 1e-12);
  EXPECT_EQ(bodies[2].radius, 0.25);
}

TEST(BodiesAlong, EachStandsOnTheFloorBeneath) {
  const FloorAt kerb = [](Point p) { return p.x > 4 ? -0.12 : 0.0; };
  const auto bodies = bodiesAlong({{4.2, 0, 1.5}, 90, 0}, {}, {{"op", 0.5, 0, 0.35, 1.8}}, kerb);
  EXPECT_DOUBLE_EQ(bodies[0].bottom, -0.12);
  EXPECT_DOUBLE_EQ(bodies[1].bottom, 0);
  EXPECT_DOUBLE_EQ(bodies[1].top, 1.8);
}

TEST(ClearanceAt, ADoorwayIsMetOnBothSides) {
  const Body rig{"camera", {-0.1, 0.45}, 0.35, 0, 1.85};
  const Clearance clearance = clearanceAt(rig, 90, kDoorway);
  ASSERT_TRUE(clearance.left && clearance.right);
  EXPECT_NEAR(clearance.right->metres, 0.10, 1e-12);
  EXPECT_EQ(clearance.right->obstacle, 0u);
  EXPECT_FALSE(clearance.right->onLeft);
  EXPECT_NEAR(clearance.left->metres, 0.30, 1e-12);
  EXPECT_EQ(clearance.left->obstacle, 1u);
  EXPECT_TRUE(clearance.left->onLeft);
}

TEST(ClearanceAt, TheSidesChangePlacesOnTheWayBack) {
  const Body rig{"camera", {-0.1, 0.45}, 0.35, 0, 1.85};
  const Clearance there = clearanceAt(rig, 90, kDoorway), back = clearanceAt(rig, -90, kDoorway);
  EXPECT_EQ(there.left->metres, back.right->metres);
  EXPECT_EQ(there.right->metres, back.left->metres);
}

TEST(ClearanceAt, OneWallRoundAPassageIsMetOnBothSides) {
  const std::vector<Obstacle> wall{{"wall", {{-1, 5}, {-1, 0}, {0.5, 0}, {0.5, 5}}, false, 0, 0, 3}};
  const Clearance clearance = clearanceAt({"op", {0, 3}, 0.35, 0, 1.8}, 0, wall);
  EXPECT_FALSE(clearance.left) << "0.65 away is not told";
  EXPECT_NEAR(clearance.right->metres, 0.15, 1e-12);
  EXPECT_NEAR(clearanceAt({"op", {0, 3}, 0.35, 0, 1.8}, 0, wall, 1).left->metres, 0.65, 1e-12);
}

TEST(ClearanceAt, CountsOnlyWhatIsAsHighAsTheBody) {
  const Body person{"ac", {0, 0}, 0.28, 0, 1.8};
  const auto near = [&](double bottom, double top) {
    Obstacle o = block("o", 0.4, -1, 1, 1, top);
    o.bottom = bottom;
    const std::vector<Obstacle> list{o};
    const Clearance clearance = clearanceAt(person, 0, list);
    return clearance.left.has_value() || clearance.right.has_value();
  };
  EXPECT_TRUE(near(0, 0.9));
  EXPECT_TRUE(near(1.0, 2.1));
  EXPECT_FALSE(near(2.05, 3)) << "a lintel";
  EXPECT_FALSE(near(1.8, 3)) << "touching the head only";
  EXPECT_FALSE(near(0, 0)) << "a mark on the floor";
  EXPECT_FALSE(near(-0.5, 0)) << "the edge of a pit";
}

TEST(ClearanceAt, InsideASolidIsMinusTheWayOutAndTheRadius) {
  const std::vector<Obstacle> bench{block("bench", 0, 0, 4, 1)};
  const Clearance clearance = clearanceAt({"op", {2, 0.25}, 0.35, 0, 1.8}, 90, bench);
  ASSERT_TRUE(clearance.right);
  EXPECT_NEAR(clearance.right->metres, -0.6, 1e-12);
  EXPECT_FALSE(clearance.left);
}

TEST(ClearanceAt, ThroughASheetIsMinusTheRadius) {
  const std::vector<Obstacle> leaf{{"leaf", {{0, -1}, {0, 1}}, false, 0, 0, 2.05}};
  const Clearance clearance = clearanceAt({"op", {0, 0}, 0.35, 0, 1.8}, 90, leaf);
  ASSERT_TRUE(clearance.left);
  EXPECT_NEAR(clearance.left->metres, -0.35, 1e-12);
}

TEST(ClearanceAt, OfTwoBodiesIsTheSameFromEither) {
  std::mt19937_64 random(3);
  for (int i = 0; i < 300; ++i) {
    const Body a{"a", {uniform(random, 0, 1), uniform(random, 0, 1)}, uniform(random, 0.2, 0.4), 0, 1.8};
    const Body b{"b", {uniform(random, 0, 1), uniform(random, 0, 1)}, uniform(random, 0.2, 0.4), 0, 1.6};
    const std::vector<Obstacle> toB{obstacleOf(b)}, toA{obstacleOf(a)};
    const Clearance ab = clearanceAt(a, 30, toB, 5), ba = clearanceAt(b, 30, toA, 5);
    const Gap there = ab.left ? *ab.left : *ab.right, back = ba.left ? *ba.left : *ba.right;
    EXPECT_NEAR(there.metres, geometry::distance(a.at, b.at) - a.radius - b.radius, 1e-12);
    EXPECT_EQ(there.metres, back.metres);
    EXPECT_NE(there.onLeft, back.onLeft);
  }
}

TEST(ClearanceAt, AgreesWithManyPointsOfTheOutline) {
  std::mt19937_64 random(17);
  for (int i = 0; i < 300; ++i) {
    std::vector<Obstacle> list;
    for (int k = 0; k < 3; ++k) {
      const double x = uniform(random, -2, 2), y = uniform(random, -2, 2);
      list.push_back(block("b", x, y, x + uniform(random, 0.1, 1), y + uniform(random, 0.1, 1)));
    }
    const Body body{"op", {0, 0}, 0.3, 0, 1.8};
    double nearest = 1e9;
    bool inside = false;
    for (const Obstacle& o : list) {
      inside |= o.points[0].x < 0 && o.points[2].x > 0 && o.points[0].y < 0 && o.points[2].y > 0;
      for (std::size_t e = 0; e < 4; ++e)
        for (int s = 0; s <= 400; ++s)
          nearest = std::min(nearest, length(geometry::lerp(o.points[e], o.points[(e + 1) % 4], s / 400.0) - Point{}));
    }
    if (inside) continue;
    const Clearance clearance = clearanceAt(body, uniform(random, -180, 180), list, 10);
    double told = 1e9;
    for (const auto& side : {clearance.left, clearance.right})
      if (side) told = std::min(told, side->metres);
    EXPECT_NEAR(told, nearest - 0.3, 0.002);
    EXPECT_LE(told, nearest - 0.3 + 1e-12);
  }
}

TEST(Narrower, KeepsTheNarrowerOfEachSideUnderItsOwnPlace) {
  Clearance first, second;
  first.left = Gap{4, 0.3, {}, true};
  first.right = Gap{5, 0.1, {}, false};
  second.left = Gap{1, 0.2, {}, true};
  second.right = Gap{0, 0.2, {}, false};
  const Clearance both = narrower(first, second, 10);
  EXPECT_EQ(both.left->obstacle, 11u);
  EXPECT_EQ(both.right->obstacle, 5u);
  EXPECT_EQ(narrower({}, second, 10).right->obstacle, 10u);
  EXPECT_EQ(narrower(first, {}, 10).left->obstacle, 4u);
}

}  // namespace
}  // namespace wend::crew
