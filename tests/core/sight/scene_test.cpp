#include "core/sight/scene.h"

#include <gtest/gtest.h>

#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

/// A wall along x from 0 to 10, 0.2 thick, with one opening from 4 to 5.
SceneInput doorway(LeafMotion moves, std::vector<geometry::KeySpan> keys = {}, std::vector<double> shares = {}) {
  SceneInput input;
  input.walls.push_back(world::wall({{0, 0}, {10, 0}}, 0.2, 3, 1));
  OpeningCut cut;
  cut.along = {4, 5};
  cut.sill = 0.1;
  cut.head = 2.1;
  cut.fill = Fill::solid;
  cut.moves = moves;
  cut.keys = std::move(keys);
  cut.shares = std::move(shares);
  cut.tag = 5;
  input.openings.push_back(cut);
  return input;
}

Leaf leafOf(const SceneInput& input, double t) {
  const Scene scene(input);
  return scene.at(t).leaves().at(0);
}

void expectAt(Point p, double x, double y) {
  EXPECT_NEAR(p.x, x, 1e-12);
  EXPECT_NEAR(p.y, y, 1e-12);
}

TEST(Scene, AWallIsCutByItsOpeningAndStaysSolidBelowTheSillAndAboveTheHead) {
  const Scene scene(doorway({}));
  ASSERT_EQ(scene.prisms().size(), 4u);
  int jambs = 0;
  for (const Prism& prism : scene.prisms()) {
    EXPECT_EQ(prism.source, (Source{Owner::wall, 1}));
    const double area = geometry::signedArea(scene.corners(prism));
    if (prism.jamb) {
      ++jambs;
      EXPECT_TRUE(std::abs(area - 0.8) < 1e-12 || std::abs(area - 1.0) < 1e-12) << area;
      EXPECT_EQ(prism.top, 3);
    } else {
      EXPECT_NEAR(area, 0.2, 1e-12);
      EXPECT_TRUE((prism.bottom == 0 && prism.top == 0.1) || (prism.bottom == 2.1 && prism.top == 3));
    }
  }
  EXPECT_EQ(jambs, 2);
}

TEST(Leaf, HangsOnTheFaceItOpensTowardsAndTurnsAboutItsHinge) {
  const std::vector<geometry::KeySpan> opened{{0, 0, false}};
  struct Case {
    End hinge;
    Side towards;
    Point pivot, shut, open;
  };
  const std::vector<Case> cases{{End::start, Side::left, {4, 0.1}, {5, 0.1}, {4, 1.1}},
                                {End::start, Side::right, {4, -0.1}, {5, -0.1}, {4, -1.1}},
                                {End::end, Side::left, {5, 0.1}, {4, 0.1}, {5, 1.1}},
                                {End::end, Side::right, {5, -0.1}, {4, -0.1}, {5, -1.1}}};
  for (const Case& c : cases) {
    const LeafMotion moves{LeafKind::swing, c.hinge, c.towards, 90};
    const Leaf shut = leafOf(doorway(moves), 0);
    expectAt(shut.panel.a, c.pivot.x, c.pivot.y);
    expectAt(shut.panel.b, c.shut.x, c.shut.y);
    EXPECT_TRUE(shut.hides);
    const Leaf open = leafOf(doorway(moves, opened, {1}), 0);
    expectAt(open.panel.a, c.pivot.x, c.pivot.y);
    expectAt(open.panel.b, c.open.x, c.open.y);
    EXPECT_TRUE(open.hides) << "an open leaf hides where it stands";
  }
}

TEST(Leaf, ASlideRunsPastItsHingeAndALiftGoesUp) {
  const std::vector<geometry::KeySpan> key{{0, 0, false}};
  const Leaf slid = leafOf(doorway({LeafKind::slide, End::start, Side::left, 90}, key, {0.75}), 0);
  expectAt(slid.panel.a, 3.25, 0.1);
  expectAt(slid.panel.b, 4.25, 0.1);
  const Leaf lifted = leafOf(doorway({LeafKind::lift, End::start, Side::left, 90}, key, {0.5}), 0);
  EXPECT_DOUBLE_EQ(lifted.bottom, 1.1);
  EXPECT_DOUBLE_EQ(lifted.top, 3.1);
}

TEST(Leaf, HidesNothingWhileItsShareChangesAndACutActsAtItsInstant) {
  const SceneInput input = doorway({}, {{0, 0, false}, {10, 2, false}, {20, 0, false}, {30, 2, false}}, {0, 1, 0, 0});
  EXPECT_TRUE(leafOf(input, 9.99).hides);
  EXPECT_FALSE(leafOf(input, 10).hides);
  EXPECT_FALSE(leafOf(input, 11.99).hides);
  EXPECT_TRUE(leafOf(input, 12).hides);
  expectAt(leafOf(input, 19.99).panel.b, 4, 1.1);
  expectAt(leafOf(input, 20).panel.b, 5, 0.1);
  EXPECT_TRUE(leafOf(input, 31).hides) << "a key that changes nothing moves nothing";
  const Scene scene(input);
  EXPECT_EQ(scene.changes(), (std::vector<double>{0, 10, 12, 20, 30, 32}));
}

/// Over the leaf the wall goes on: what looks over the one is stopped by the other.
TEST(Leaf, ThatFillsItsGapHidesWithTheWallAboveAndBelow) {
  SceneInput input;
  input.walls.push_back(world::wall({{-4, 3}, {4, 3}}, 0.2, 3));
  OpeningCut door;
  door.wall = 0;
  door.along = {3.5, 4.5};
  door.head = 2.05;
  door.fill = Fill::solid;
  door.moves = LeafMotion{};
  door.keys = {{0, 0, false}, {5, 1, false}};
  door.shares = {0, 1};
  input.openings.push_back(door);
  const Scene scene(input);
  const SceneAt shut = scene.at(0);
  ASSERT_EQ(shut.passing().size(), 1u);
  EXPECT_EQ(shut.passing()[0].bottom, 0);
  EXPECT_EQ(shut.passing()[0].top, 3);
  EXPECT_EQ(shut.leaves()[0].top, 2.05) << "the leaf itself is no taller";
  const SceneAt open = scene.at(7);
  ASSERT_EQ(open.passing().size(), 1u);
  EXPECT_EQ(open.passing()[0].top, 2.05) << "beside its gap it stands alone";
}

TEST(Leaf, WithoutMotionHidesAtShareNoughtAndACurtainBelowOne) {
  SceneInput input = doorway({}, {{0, 0, false}, {1, 0, false}, {2, 0, false}}, {0, 0.5, 1});
  input.openings[0].moves.reset();
  expectAt(leafOf(input, 0).panel.a, 4, 0);
  EXPECT_TRUE(leafOf(input, 0).hides);
  EXPECT_FALSE(leafOf(input, 1).hides);
  input.openings[0].fill = Fill::curtain;
  EXPECT_TRUE(leafOf(input, 1).hides);
  EXPECT_FALSE(leafOf(input, 2).hides);
  input.openings[0].fill = Fill::glass;
  EXPECT_FALSE(leafOf(input, 0).hides);
  EXPECT_TRUE(leafOf(input, 0).inWay);
}

TEST(Scene, AMirrorOutlineShowsOutwardsADiscShowsNothing) {
  SceneInput input;
  input.pieces.push_back(world::box({0, 0}, {1, 1}, 0, 2, 4, Surface::mirror));
  PieceIn disc = world::disc({5, 5}, 1, 0, 2);
  disc.surface = Surface::mirror;
  input.pieces.push_back(disc);
  const Scene scene(input);
  ASSERT_EQ(scene.mirrors().size(), 4u);
  for (const Mirror& mirror : scene.mirrors()) {
    EXPECT_EQ(mirror.tag, 4);
    EXPECT_LT(geometry::cross(mirror.face.b - mirror.face.a, Point{0.5, 0.5} - mirror.face.a), 0) << "inside behind it";
  }
  EXPECT_EQ(scene.prisms().size(), 2u) << "both hide";
}

/// A box from (0, 0) to (2, 1) that stands until 10 and drives 8 m east, a quarter turned, until 14.
SceneInput van(Surface surface = Surface::solid) {
  PieceIn piece = world::box({0, 0}, {2, 1}, 0, 2, 3, surface);
  piece.pivot = {1, 0.5};
  piece.keys = {{0, 0, false}, {10, 4, false}};
  piece.shifts = {{}, {{8, 0}, 90}};
  SceneInput input;
  input.pieces.push_back(piece);
  return input;
}

TEST(MovingPiece, HidesWhereItStandsAndNothingOnItsWay) {
  const Scene scene(van());
  EXPECT_TRUE(scene.prisms().empty());
  EXPECT_EQ(scene.changes(), (std::vector<double>{0, 10, 14}));
  const auto hides = [&](double t, Point p) {
    return !openBetween(scene.at(t), geometry::at(p - Vec{0, 5}, 1), geometry::at(p + Vec{0, 5}, 1));
  };
  EXPECT_TRUE(hides(9.99, {0.2, 0.5}));
  EXPECT_FALSE(hides(9.99, {9, 0.5}));
  EXPECT_FALSE(hides(10, {0.2, 0.5}));
  EXPECT_FALSE(hides(12, {5, 0.5}));
  EXPECT_TRUE(hides(14, {9, 0.5}));
  EXPECT_FALSE(hides(14, {8.4, 0.5})) << "turned a quarter it is one metre wide";
  EXPECT_FALSE(hides(14, {0.2, 0.5}));
}

TEST(MovingPiece, IsInTheWayWhereItIs) {
  const Scene scene(van());
  ASSERT_EQ(scene.at(5).parked().size(), 1u);
  EXPECT_TRUE(scene.at(5).moving().empty());
  const SceneAt half = scene.at(12);
  EXPECT_TRUE(half.parked().empty());
  ASSERT_EQ(half.moving().size(), 1u);
  // Half way: 4 m on and turned 45 degrees clockwise about its middle.
  const Vec corner = geometry::turned(Vec{-1, -0.5}, -geometry::radians(45));
  expectAt(half.moving()[0].points[0], 5 + corner.x, 0.5 + corner.y);
  EXPECT_EQ(half.moving()[0].tag, 3);
}

TEST(MovingPiece, OfGlassIsInTheWayAndHidesNobody) {
  const Scene scene(van(Surface::glass));
  EXPECT_EQ(scene.at(5).parked().size(), 1u);
  EXPECT_EQ(scene.at(5).size(), 0u);
  EXPECT_TRUE(scene.changes().empty());
}

TEST(MovingPiece, AMirrorShowsWhereItStandsAndOnItsWay) {
  SceneInput input;
  input.pieces.push_back(world::mirrorLine({0, 5}, {2, 5}, 0, 2, Side::right, 1));
  PieceIn wheeled = world::mirrorLine({4, 5}, {6, 5}, 0, 2, Side::right, 2);
  wheeled.keys = {{0, 0, false}, {3, 1, false}};
  wheeled.shifts = {{}, {{2, 0}, 0}};
  input.pieces.push_back(wheeled);
  const Scene scene(input);
  EXPECT_EQ(scene.at(0).mirrors().size(), 2u);
  EXPECT_TRUE(scene.mirrorsMove());
  ASSERT_EQ(scene.at(3.5).mirrors().size(), 2u);
  EXPECT_TRUE(scene.at(3.5).mirrors()[1].moving);
  EXPECT_NEAR(std::max(scene.at(3.5).mirrors()[1].face.a.x, scene.at(3.5).mirrors()[1].face.b.x), 7, 1e-12);
  ASSERT_EQ(scene.at(4).mirrors().size(), 2u);
  EXPECT_NEAR(std::max(scene.at(4).mirrors()[1].face.a.x, scene.at(4).mirrors()[1].face.b.x), 8, 1e-12);
}

TEST(MovingPiece, DriftsNoFurtherThanIsSaid) {
  SceneInput input;
  PieceIn wheeled = world::mirrorLine({4, 5}, {6, 5}, 0, 2, Side::right, 2);
  wheeled.pivot = {4.5, 5.5};
  wheeled.keys = {{0, 0, false}, {3, 1, true}};
  wheeled.shifts = {{}, {{0.5, -0.2}, 40}};
  input.pieces.push_back(wheeled);
  const Scene scene(input);
  const auto faceAt = [&](double t) { return scene.at(t).mirrors()[0].face; };
  const Drift all = scene.driftOf(2, 3, 4);
  EXPECT_DOUBLE_EQ(all.degrees, 40);
  EXPECT_NEAR(all.metres, std::hypot(0.5, 0.2) + 2 * std::sin(geometry::radians(20)) * std::hypot(1.5, 0.5), 1e-12)
      << "as it is offset, and as its further end turns";
  for (int i = 0; i <= 20; ++i) {
    const double t = 3 + i / 20.0;
    const Drift drift = scene.driftOf(2, 3.25, t);
    const Segment from = faceAt(3.25), there = faceAt(t);
    EXPECT_LE(std::max(geometry::distance(from.a, there.a), geometry::distance(from.b, there.b)), drift.metres + 1e-12);
    EXPECT_NEAR(geometry::dot(geometry::unit(from.b - from.a), geometry::unit(there.b - there.a)),
                std::cos(geometry::radians(drift.degrees)), 1e-12);
  }
  EXPECT_EQ(scene.driftOf(7, 3, 4).metres, 0) << "of no such piece";
}

TEST(Guest, HidesLikeAThingOfTheSet) {
  const Scene scene{SceneInput{}};
  SceneAt now = scene.at(0);
  EXPECT_TRUE(openBetween(now, {0, 0, 1}, {10, 0, 1}));
  Prism guest;
  guest.form = Prism::Form::disc;
  guest.centre = {5, 0};
  guest.radius = 0.25;
  guest.top = 1.7;
  now.add(guest);
  EXPECT_FALSE(openBetween(now, {0, 0, 1}, {10, 0, 1}));
  EXPECT_TRUE(openBetween(now, {0, 0, 1.8}, {10, 0, 1.8}));
}

}  // namespace
}  // namespace wend::sight
