#include "core/sight/body.h"

#include <gtest/gtest.h>

#include <cstdio>

#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

using world::eyeAt;

const Body kPerson{{0, 5}, 0.28, 0, 1.8};

bool sees(const SceneInput& input, const Eye& eye, const Body& body, double t = 0) {
  const Scene scene(input);
  return bodySight(scene.at(t), eye, body).seen;
}

TEST(BodySight, OnEmptyGroundTheFrameDecides) {
  const Scene scene;
  Eye eye = eyeAt({0, 0, 1.5}, 0);
  EXPECT_TRUE(bodySight(scene.at(0), eye, kPerson).seen);
  // The disc's edge lies asin(0.28 / 5) = 3.2103 degrees off its middle; the frame ends at 30.
  const double reach = geometry::degrees(std::asin(0.28 / 5));
  eye.pupil.bearing = 30 + reach - 0.001;
  EXPECT_TRUE(bodySight(scene.at(0), eye, kPerson).seen);
  eye.pupil.bearing = 30 + reach + 0.001;
  EXPECT_FALSE(bodySight(scene.at(0), eye, kPerson).seen);
  eye.marginDegrees = 3;
  EXPECT_TRUE(bodySight(scene.at(0), eye, kPerson).seen);
  eye.pupil.bearing = 33 + reach + 0.001;
  EXPECT_FALSE(bodySight(scene.at(0), eye, kPerson).seen);
  eye.pupil.bearing = 180;
  EXPECT_FALSE(bodySight(scene.at(0), eye, kPerson).seen);
}

TEST(BodySight, TiltedOverAHeadTheFrameMissesIt) {
  // Top of the head at 5 - 0.28 m, 0.3 m up: 3.637 degrees. The frame's lower side stands tilt - 20 degrees up.
  const double head = geometry::degrees(std::atan2(0.3, 4.72));
  const Scene scene;
  EXPECT_TRUE(bodySight(scene.at(0), eyeAt({0, 0, 1.5}, 0, head + 20 - 0.01), kPerson).seen);
  EXPECT_FALSE(bodySight(scene.at(0), eyeAt({0, 0, 1.5}, 0, head + 20 + 0.01), kPerson).seen);
}

TEST(BodySight, AFullHeightWallHidesAndItsEndLetsPeek) {
  // The wall's end at x = w hides the disc's edge at x = 0.28 as long as the line to it passes at w = 0.28 * 2 / 5.
  const Eye eye = eyeAt({0, 0, 1.5}, 0);
  const auto wallTo = [](double x) {
    SceneInput input;
    input.walls.push_back(world::wall({{-4, 2}, {x, 2}}, 0.001));
    return input;
  };
  EXPECT_FALSE(sees(wallTo(0.2), eye, kPerson));
  const double tangent = std::tan(std::asin(0.28 / 5)) * 2.0005;
  EXPECT_FALSE(sees(wallTo(tangent + 1e-4), eye, kPerson));
  EXPECT_TRUE(sees(wallTo(tangent - 1e-3), eye, kPerson));
}

TEST(BodySight, AChinkOfAMillimetreIsFound) {
  // The smallest gap wider than a sliver must be found although no fan would meet it.
  SceneInput input;
  input.walls.push_back(world::wall({{-4, 2}, {0.0333, 2}}, 0.01));
  input.walls.push_back(world::wall({{0.0343, 2}, {4, 2}}, 0.01));
  EXPECT_TRUE(sees(input, eyeAt({0, 0, 1.5}, 0), kPerson));
  input.walls[1].points[0].x = 0.0333;
  EXPECT_FALSE(sees(input, eyeAt({0, 0, 1.5}, 0), kPerson));
}

TEST(BodySight, ABenchHidesACrouchingBodyOnly) {
  SceneInput input;
  input.pieces.push_back(world::box({-2, 3.9}, {2, 4.6}, 0, 1.0));
  const Eye eye = eyeAt({0, 0, 1.5}, 0);
  EXPECT_TRUE(sees(input, eye, kPerson));
  Body low = kPerson;
  low.top = 0.9;
  EXPECT_FALSE(sees(input, eye, low));
}

TEST(BodySight, LinesBehindAThinWallDoNotCountForABodyBeforeIt) {
  // The centre stands hidden in a room whose wall is nearer than its radius: what would stick out does not exist.
  SceneInput input;
  input.walls.push_back(world::wall({{-6, 4.9}, {6, 4.9}}, 0.02));
  Body body = kPerson;
  body.centre = {0, 5.05};
  EXPECT_FALSE(sees(input, eyeAt({0, 0, 1.5}, 0), body));
  body.centre = {0, 4.75};
  EXPECT_TRUE(sees(input, eyeAt({0, 0, 1.5}, 0), body));
}

TEST(BodySight, AnOpeningLetsSeeAndItsHeadAndSillHide) {
  SceneInput input;
  input.walls.push_back(world::wall({{-4, 2}, {4, 2}}));
  OpeningCut cut;
  cut.along = {3.5, 4.5};
  cut.sill = 0;
  cut.head = 2.05;
  input.openings.push_back(cut);
  const Eye eye = eyeAt({0, 0, 1.5}, 0);
  EXPECT_TRUE(sees(input, eye, kPerson));
  input.openings[0].sill = 1.75;  // rays over the sill rise: at the body they pass 1.5 + 0.25 * 4.72 / 2.1 = 2.06
  EXPECT_FALSE(sees(input, eye, kPerson));
  input.openings[0] = cut;
  input.openings[0].head = 1.0;  // rays under the head fall: 1.5 - 0.5 * 4.72 / 1.9 = 0.26 at the near side
  EXPECT_TRUE(sees(input, eye, kPerson));
  input.openings[0].head = 0.7;  // 1.5 - 0.8 * 4.72 / 1.9 < 0: they reach the floor before the body
  EXPECT_FALSE(sees(input, eye, kPerson));
}

TEST(BodySight, GlassShowsAndALeafHidesUntilItMoves) {
  SceneInput input;
  input.walls.push_back(world::wall({{-4, 2}, {4, 2}}));
  OpeningCut cut;
  cut.along = {3.5, 4.5};
  cut.fill = Fill::solid;
  cut.moves = LeafMotion{};
  cut.keys = {{0, 0, false}, {10, 2, false}};
  cut.shares = {0, 1};
  input.openings.push_back(cut);
  const Eye eye = eyeAt({0, 0, 1.5}, 0);
  EXPECT_FALSE(sees(input, eye, kPerson, 9.999));
  EXPECT_TRUE(sees(input, eye, kPerson, 10));
  EXPECT_TRUE(sees(input, eye, kPerson, 13));
  input.openings[0].fill = Fill::glass;
  EXPECT_TRUE(sees(input, eye, kPerson, 0));
  input.openings.clear();
  EXPECT_FALSE(sees(input, eye, kPerson));
  input.walls.clear();
  input.pieces.push_back(world::box({-3, 2}, {3, 2.1}, 0, 3, 1, Surface::glass));
  EXPECT_TRUE(sees(input, eye, kPerson));
}

TEST(BodySight, MarginIsTheAngleToTheNearestFrameSide) {
  const Scene scene;
  const Eye eye = eyeAt({0, 0, 1.5}, 60);
  const double reach = geometry::degrees(std::asin(0.28 / 5));
  EXPECT_NEAR(degreesToFrame(eye, kPerson), 30 - reach, 0.02);
  EXPECT_LE(degreesToFrame(eye, kPerson), 30 - reach);
  EXPECT_NEAR(degreesToFrame(eyeAt({0, 0, 1.5}, 0), kPerson), -20, 1e-9) << "across the axis: the nearer pair of sides";
  const double head = geometry::degrees(std::atan2(0.3, 4.72));
  EXPECT_NEAR(degreesToFrame(eyeAt({0, 0, 1.5}, 0, 50), kPerson), 30 - head, 0.02);
  EXPECT_NEAR(degreesToFrame(eyeAt({0, 0, 1.5}, 180), kPerson), 150 - reach, 0.02);
}

TEST(BodySight, LeastMarginIsNeverMoreThanTheMargin) {
  const std::uint64_t seed = 20271;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  double slack = 0;
  constexpr int kTrials = 20000;
  for (int i = 0; i < kTrials; ++i) {
    const auto eye = eyeAt({world::uniform(random, -6, 6), world::uniform(random, -6, 6), world::uniform(random, 0, 6)},
                           world::uniform(random, -400, 400), world::uniform(random, -80, 80));
    const double floor = world::uniform(random, -1, 1);
    const Body body{{0, 0}, world::uniform(random, 0.05, 2), floor, floor + world::uniform(random, 0.1, 2.5)};
    const double margin = degreesToFrame(eye, body), least = leastDegreesToFrame(eye, body);
    ASSERT_LE(least, margin) << i;
    slack += margin - least;
  }
  std::printf("mean slack %.2f degrees\n", slack / kTrials);
}

TEST(MirrorSight, EqualsTheReflectedSceneWithoutAMirror) {
  // A mirror that fills the way shows exactly what the unfolded scene shows through a hole of its shape.
  const std::uint64_t seed = 20263;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  int seen = 0, unequal = 0;
  const Segment line{{-1, 0}, {1, 0}};
  for (int trial = 0; trial < 600; ++trial) {
    const Eye eye = eyeAt({world::uniform(random, -3, 3), world::uniform(random, 0.8, 3), 1.5},
                          world::uniform(random, 120, 240), world::uniform(random, -10, 10));
    const Body body{{world::uniform(random, -4, 4), world::uniform(random, 0.5, 5)}, 0.28, 0, 1.8};
    const double bottom = world::uniform(random, 0.2, 1.4), top = bottom + world::uniform(random, 0.3, 1);
    SceneInput folded, unfolded;
    folded.pieces.push_back(world::mirrorLine(line.a, line.b, bottom, top, Side::left, 7));
    // The unfolded scene: a screen with a hole where the mirror hangs.
    const auto screen = [&](Point a, Point b, double low, double high) {
      PieceIn piece;
      piece.shape = LineShape{{a, b}};
      piece.bottom = low;
      piece.top = high;
      unfolded.pieces.push_back(piece);
    };
    screen({-50, 0}, line.a, -10, 50);
    screen(line.b, {50, 0}, -10, 50);
    screen(line.a, line.b, -10, bottom);
    screen(line.a, line.b, top, 50);
    for (int i = 0, n = static_cast<int>(random() % 4); i < n; ++i) {
      const Point c{world::uniform(random, -3, 3), world::uniform(random, 0.7, 4)};
      const double radius = world::uniform(random, 0.1, 0.4), height = world::uniform(random, 0.5, 2.5);
      if (geometry::distance(c, geometry::flat(eye.pupil.at)) < radius + 0.1) continue;
      folded.pieces.push_back(world::disc(c, radius, 0, height));
      unfolded.pieces.push_back(world::disc(c, radius, 0, height));
      unfolded.pieces.push_back(world::disc({c.x, -c.y}, radius, 0, height));
    }
    const Scene scene(folded), plain(unfolded);
    Body image = body;
    image.centre.y = -image.centre.y;
    const BodySight direct = bodySight(scene.at(0), eye, body);
    const bool expected = bodySight(plain.at(0), eye, image).seen;
    if (direct.seen && !direct.mirror) continue;  // direct sight comes first
    seen += expected;
    unequal += expected != direct.seen;
    EXPECT_EQ(direct.seen, expected) << "trial " << trial;
    if (direct.seen) {
      EXPECT_EQ(direct.mirror, 7);
    }
  }
  EXPECT_GT(seen, 30);
  EXPECT_EQ(unequal, 0);
}

TEST(MirrorSight, ShowsOnItsSideOnlyAndWinsWithinAMillimetreOfAWall) {
  SceneInput input;
  input.walls.push_back(world::wall({{-5, -0.1}, {5, -0.1}}, 0.2));  // its face at y = 0
  input.pieces.push_back(world::mirrorLine({-1, 0}, {1, 0}, 1, 2, Side::left, 3));
  const Eye eye = eyeAt({-2, 2, 1.5}, 135);
  Body body{{2, 2}, 0.28, 0, 1.8};
  for (const double y : {-0.0009, 0.0, 0.0009}) {
    std::get<LineShape>(input.pieces[0].shape).points = {{-1, y}, {1, y}};
    const Scene scene(input);
    const BodySight sight = bodySight(scene.at(0), eye, body);
    EXPECT_TRUE(sight.seen) << y;
    EXPECT_EQ(sight.mirror, 3) << y;
  }
  std::get<LineShape>(input.pieces[0].shape).points = {{-1, -0.0011}, {1, -0.0011}};
  EXPECT_FALSE(sees(input, eye, body)) << "buried";
  std::get<LineShape>(input.pieces[0].shape).points = {{-1, 0}, {1, 0}};
  input.pieces[0].reflects = Side::right;
  EXPECT_FALSE(sees(input, eye, body));
}

TEST(MirrorSight, AMirrorTooLowOrTooHighShowsNothing) {
  // Eye 1.5 and head 1.8 at equal distances: the highest useful mirror point lies at 1.65.
  SceneInput input;
  input.pieces.push_back(world::mirrorLine({-1, 0}, {1, 0}, 1.70, 2.5, Side::left));
  const Eye eye = eyeAt({-2, 2, 1.5}, 135);
  const Body slender{{2, 2}, 0.001, 0, 1.8};
  EXPECT_FALSE(sees(input, eye, slender));
  input.pieces[0].bottom = 1.64;
  EXPECT_TRUE(sees(input, eye, slender));
}

TEST(BodySight, IsTheSameBothWays) {
  const std::uint64_t seed = 20264;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  int seen = 0;
  for (int trial = 0; trial < 500; ++trial) {
    SceneInput input;
    for (int i = 0; i < 5; ++i) {
      const Point low{world::uniform(random, -3, 3), world::uniform(random, -3, 3)};
      const double bottom = world::uniform(random, 0, 1.5);
      input.pieces.push_back(world::box(low,
                                        low + Vec{world::uniform(random, 0.1, 1.5), world::uniform(random, 0.1, 1.5)},
                                        bottom, bottom + world::uniform(random, 0.2, 2)));
    }
    const Scene scene(input);
    const Point3 p{-5, world::uniform(random, -4, 4), world::uniform(random, 0.3, 2.2)};
    const Point3 q{5, world::uniform(random, -4, 4), world::uniform(random, 0.3, 2.2)};
    const auto look = [&](Point3 from, Point3 to) {
      const Eye eye = eyeAt(from, geometry::bearingOf(geometry::flat(to) - geometry::flat(from)));
      return bodySight(scene.at(0), eye, {geometry::flat(to), 1e-5, to.z - 1e-5, to.z + 1e-5}).seen;
    };
    EXPECT_EQ(look(p, q), look(q, p)) << "trial " << trial;
    seen += look(p, q);
  }
  EXPECT_GT(seen, 50);
  EXPECT_LT(seen, 450);
}

}  // namespace
}  // namespace wend::sight
