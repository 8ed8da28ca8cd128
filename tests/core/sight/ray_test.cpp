#include "core/sight/ray.h"

#include <gtest/gtest.h>

#include <cstdio>

#include "core/sight/fan.h"
#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

Scene roomWithDoor() {
  SceneInput input;
  input.walls.push_back(world::wall({{-5, 3}, {5, 3}}, 0.2, 3, 1));
  OpeningCut cut;
  cut.along = {4.5, 5.5};
  cut.head = 2;
  cut.tag = 9;
  input.openings.push_back(cut);
  input.pieces.push_back(world::box({-1, 5}, {1, 6}, 0, 1, 2));
  return Scene(input);
}

TEST(RayHit, FindsTheFirstSolidInSpace) {
  const Scene scene = roomWithDoor();
  const SceneAt now = scene.at(0);
  const auto wall = rayHit(now, {2, 0, 1.5}, {0, 1, 0}, 100);
  ASSERT_TRUE(wall);
  EXPECT_DOUBLE_EQ(wall->distance, 2.9);
  EXPECT_EQ(wall->source, (Source{Owner::wall, 1}));
  EXPECT_FALSE(rayHit(now, {0, 0, 1.5}, {0, 1, 0}, 100)) << "through the door and over the box";
  // Falling one in five from 1.5 m: at the box's front, 5 m off, 0.5 m high.
  const double s = std::sqrt(1.04);
  const auto box = rayHit(now, {0, 0, 1.5}, {0, 1 / s, -0.2 / s}, 100);
  ASSERT_TRUE(box);
  EXPECT_NEAR(box->distance, 5 * s, 1e-12);
  EXPECT_EQ(box->source, (Source{Owner::piece, 2}));
  // One in ten meets its top at 5 m exactly at the edge height 1.0; a little less steep lands on the top.
  const double q = std::sqrt(1 + 0.0081);
  const auto top = rayHit(now, {0, 0, 1.5}, {0, 1 / q, -0.09 / q}, 100);
  ASSERT_TRUE(top);
  EXPECT_NEAR(top->distance, 0.5 / 0.09 * q, 1e-12);
  EXPECT_FALSE(rayHit(now, {0, 0, 1.5}, {0, 1 / q, -0.09 / q}, 5)) << "too far";
}

TEST(RayHit, StraightDownMeetsWhatStandsBelow) {
  const Scene scene = roomWithDoor();
  const auto hit = rayHit(scene.at(0), {0, 5.5, 3}, {0, 0, -1}, 10);
  ASSERT_TRUE(hit);
  EXPECT_DOUBLE_EQ(hit->distance, 2);
  EXPECT_FALSE(rayHit(scene.at(0), {0, 8, 3}, {0, 0, -1}, 10));
}

TEST(OpenBetween, SaysWhatTheFirstHitSays) {
  const std::uint64_t seed = 20272;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  int open = 0, shut = 0;
  for (int trial = 0; trial < 400; ++trial) {
    SceneInput input;
    const auto whole = [&](double low, double high) { return std::round(world::uniform(random, low, high)); };
    for (int i = 0; i < 4; ++i) {
      const Point low{whole(-5, 5), whole(-5, 5)};
      input.walls.push_back(world::wall({low, low + Vec{whole(1, 4), whole(-3, 3)}}));
      input.pieces.push_back(world::box(low + Vec{0, 1}, low + Vec{1, 2}, whole(0, 1), 1 + whole(1, 2)));
      input.pieces.push_back(world::disc({whole(-5, 5), whole(-5, 5)}, 0.4, 0, whole(1, 3)));
    }
    const Scene scene(input);
    const SceneAt now = scene.at(0);
    const std::vector<Hider> others{{{{whole(-5, 5), whole(-5, 5)}, 0.3, 0, 1.8}, 1}};
    for (int i = 0; i < 60; ++i) {
      // On the lattice too, where lines graze corners and tops, and straight up and down.
      const bool lattice = i % 2 == 0;
      const auto place = [&](double low, double high) {
        return lattice ? whole(low, high) : world::uniform(random, low, high);
      };
      const Point3 a{place(-6, 6), place(-6, 6), place(0, 3)};
      const Point3 b = i % 10 == 0 ? Point3{a.x, a.y, place(0, 3)} : Point3{place(-6, 6), place(-6, 6), place(0, 3)};
      const geometry::Vec3 way = b - a;
      const double metres = geometry::length(way);
      const bool expected = !(metres > 0) || !rayHit(now, a, way * (1 / metres), metres - 1e-9, others);
      ASSERT_EQ(openBetween(now, a, b, others), expected) << "trial " << trial << " way " << i;
      ++(expected ? open : shut);
    }
  }
  EXPECT_GT(open, 2000);
  EXPECT_GT(shut, 2000);
}

TEST(PointSight, SolidsAndPerformersHideGlassDoesNot) {
  SceneInput input;
  input.pieces.push_back(world::box({-1, 2}, {1, 2.1}, 0, 3, 1, Surface::glass));
  const Scene scene(input);
  const Eye eye = world::eyeAt({0, 0, 1.5}, 0);
  EXPECT_TRUE(pointSight(scene.at(0), eye, {0, 5, 1.5}).seen());
  const std::vector<Hider> others{{{{0, 3}, 0.25, 0, 1.7}, 1}};
  EXPECT_TRUE(pointSight(scene.at(0), eye, {0, 5, 1.5}, others).hidden);
  EXPECT_FALSE(pointSight(scene.at(0), eye, {0, 5, 1.9}, others).hidden) << "over the other's head";
  EXPECT_FALSE(pointSight(scene.at(0), eye, {4, 2, 1.5}).inFrame);
}

TEST(CrossesWall, OpeningsAreGapsWhateverHangsInThem) {
  const Scene scene = roomWithDoor();
  EXPECT_TRUE(crossesWall(scene, {2, 0}, {2, 5}));
  EXPECT_FALSE(crossesWall(scene, {0, 0}, {0, 5}));
  EXPECT_FALSE(crossesWall(scene, {2, 0}, {2, 2.9})) << "touching";
  EXPECT_TRUE(crossesWall(scene, {-3, 2}, {0, 3.2})) << "through the jamb's corner";
  EXPECT_EQ(openingsCrossed(scene, {0, 0}, {0, 5}), (std::vector<int>{9}));
  EXPECT_TRUE(openingsCrossed(scene, {2, 0}, {2, 5}).empty());
}

TEST(Fan, MeetsWhatEachOfItsRaysMeets) {
  std::mt19937_64 random(20265);
  Fan fan;
  std::size_t compared = 0;
  for (int trial = 0; trial < 100; ++trial) {
    SceneInput input;
    for (int i = 0; i < 6; ++i) {
      const Point p{world::uniform(random, -6, 6), world::uniform(random, -6, 6)};
      const Vec d{world::uniform(random, -2, 2), world::uniform(random, -2, 2)};
      if (i < 2) input.walls.push_back(world::wall({p, p + d, p + d + geometry::left(d)}));
      if (i == 2 || i == 3) input.pieces.push_back(world::disc(p, 0.5, 0, 1));
      if (i > 3) input.pieces.push_back(world::mirrorLine(p, p + d, 0, 2, Side::left));
    }
    const Scene scene(input);
    const SceneAt now = scene.at(0);
    const Eye eye = world::eyeAt({world::uniform(random, -1, 1), 0, 1.5}, world::uniform(random, 0, 360),
                                 trial % 4 == 0 ? 85 : 0, 30);
    const Frame frame(eye);
    fan.spread(now, frame, geometry::radians(1), 100);
    for (std::size_t ray = 0; ray < fan.size(); ++ray) {
      std::vector<Crossing> crossings = crossingsAlong(now, frame.foot(), fan.direction(ray), 100);
      ASSERT_EQ(fan.hits(ray).size(), crossings.size()) << "trial " << trial << " ray " << ray;
      std::vector<FanHit> hits(fan.hits(ray).begin(), fan.hits(ray).end());
      std::sort(hits.begin(), hits.end(), [](auto& a, auto& b) { return a.box.near < b.box.near; });
      std::sort(crossings.begin(), crossings.end(), [](auto& a, auto& b) { return a.box.near < b.box.near; });
      for (std::size_t i = 0; i < hits.size(); ++i) {
        EXPECT_NEAR(hits[i].box.near, crossings[i].box.near, 1e-9);
        ++compared;
      }
    }
  }
  EXPECT_GT(compared, 1000u);
}

}  // namespace
}  // namespace wend::sight
