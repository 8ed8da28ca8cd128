#include "core/sheets/dept_sheets.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace wend::sheets {

namespace {

plan::Wall wall(const char* id, std::vector<geometry::Point> points) {
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>(id);
  wall.points = std::move(points);
  wall.thickness = 0.2;
  return wall;
}

/// A room of 9 by 8 m inside, walls 0.2 m thick around it, its south-west inside corner at the origin.
plan::Plan room() {
  plan::Plan plan;
  plan.set.walls.add(wall("west", {{-0.1, -0.2}, {-0.1, 8.2}}));
  plan.set.walls.add(wall("south", {{-0.2, -0.1}, {9.2, -0.1}}));
  plan.set.walls.add(wall("east", {{9.1, -0.2}, {9.1, 8.2}}));
  plan.set.walls.add(wall("north", {{-0.2, 8.1}, {9.2, 8.1}}));
  return plan;
}

TEST(TapeMeasure, IsFromTheInsideFacesAndCheckedByTheCorner) {
  const TapeMeasure tape = tapeMeasure(room(), {2.75, 3});
  ASSERT_TRUE(tape.first && tape.second && tape.check);
  EXPECT_EQ(tape.first->wall, "west");
  EXPECT_NEAR(tape.first->metres, 2.75, 1e-12);
  EXPECT_EQ(tape.second->wall, "south");
  EXPECT_NEAR(tape.second->metres, 3, 1e-12);
  EXPECT_NEAR(*tape.check, std::hypot(2.75, 3), 1e-12);  // the two stand square: Pythagoras
}

TEST(TapeMeasure, TakesNoWallParallelToTheFirst) {
  // In the middle of the width the two side walls are nearest, and of no use together.
  plan::Plan narrow = room();
  const TapeMeasure tape = tapeMeasure(narrow, {0.5, 4});
  ASSERT_TRUE(tape.first && tape.second);
  EXPECT_EQ(tape.first->wall, "west");
  EXPECT_TRUE(tape.second->wall == "south" || tape.second->wall == "north");
}

TEST(TapeMeasure, GoesThroughNoOtherWallAndNoPiece) {
  plan::Plan plan = room();
  plan::Piece bench;
  bench.id = base::Id<plan::Piece>("bench");
  bench.shape = plan::Outline{{{1, 2}, {2, 2}, {2, 4}, {1, 4}}};
  plan.set.pieces.add(bench);
  const TapeMeasure tape = tapeMeasure(plan, {2.75, 3});
  ASSERT_TRUE(tape.first && tape.second);
  EXPECT_EQ(tape.first->wall, "south");
  EXPECT_NE(tape.second->wall, "west");
  plan::Plan divided = room();
  divided.set.walls.add(wall("screen", {{2, 1}, {2, 5}}));
  const TapeMeasure near = tapeMeasure(divided, {2.75, 3});
  ASSERT_TRUE(near.first);
  EXPECT_EQ(near.first->wall, "screen");
  EXPECT_NEAR(near.first->metres, 0.65, 1e-12);
}

TEST(TapeMeasure, OfASkewCornerFollowsTheCosineRule) {
  // Two walls that meet in the origin at 60 degrees, without thickness.
  plan::Plan plan;
  const double s = std::sqrt(3) / 2;
  plan::Wall a = wall("a", {{0, 0}, {10, 0}}), b = wall("b", {{0, 0}, {5, 10 * s}});
  a.thickness = b.thickness = 0;
  plan.set.walls.add(a);
  plan.set.walls.add(b);
  const geometry::Point mark{4, 1};
  const TapeMeasure tape = tapeMeasure(plan, mark);
  ASSERT_TRUE(tape.check);
  EXPECT_NEAR(*tape.check, std::hypot(4, 1), 1e-9);
}

TEST(TapeMeasure, IsUnknownWithoutWallsOrBesideTheirEnds) {
  EXPECT_FALSE(tapeMeasure({}, {1, 1}).first);
  plan::Plan plan;
  plan.set.walls.add(wall("short", {{0, 0}, {1, 0}}));
  EXPECT_FALSE(tapeMeasure(plan, {3, 1}).first);
  const TapeMeasure one = tapeMeasure(plan, {0.5, 1});
  EXPECT_TRUE(one.first);
  EXPECT_FALSE(one.second);
  EXPECT_FALSE(one.check);
}

snags::Instant looking(double bearing, double tilt, double halfTangent) {
  snags::Instant instant;
  instant.camera.pupil = {{0, 0, 1.5}, bearing, tilt};
  snags::LensAt lens;
  lens.half.h = 2 * halfTangent;
  lens.half.v = halfTangent;
  instant.lens = lens;
  return instant;
}

TEST(TopOfFrame, RisesByTheHalfTangentPerMetreAhead) {
  const auto level = looking(0, 0, 0.25);
  EXPECT_NEAR(*topOfFrameOver(level, {0, 4}), 2.5, 1e-12);
  EXPECT_NEAR(*topOfFrameOver(level, {1, 4}), 2.5, 1e-12) << "aside changes nothing";
  EXPECT_NEAR(*topOfFrameOver(looking(90, 0, 0.25), {4, 1}), 2.5, 1e-12);
}

TEST(TopOfFrame, FollowsTheTilt) {
  const double half = std::atan(0.25) * 180 / std::numbers::pi;
  EXPECT_NEAR(*topOfFrameOver(looking(0, -half, 0.25), {0, 4}), 1.5, 1e-12) << "the edge is level";
  EXPECT_GT(*topOfFrameOver(looking(0, 10, 0.25), {0, 4}), 2.5);
}

TEST(TopOfFrame, IsUnknownBehindTheLensOrWithoutOne) {
  EXPECT_FALSE(topOfFrameOver(looking(0, 0, 0.25), {0, -4}));
  EXPECT_FALSE(topOfFrameOver(looking(0, 85, 0.25), {0, 4})) << "the edge leans back";
  EXPECT_FALSE(topOfFrameOver(snags::Instant{}, {0, 4}));
}

}  // namespace

}  // namespace wend::sheets
