// Two rooms of which one has a well in its floor, or a stage: how high the floor lies, and what hides down through it.
#include "core/answers/floors.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/answers/clear_ground.h"
#include "core/answers/whole_take.h"
#include "tests/core/answers/two_rooms.h"

namespace wend::answers {
namespace {

using geometry::Point;

std::vector<Point> square(Point low, Point high) {
  return {low, {high.x, low.y}, high, {low.x, high.y}};
}

plan::Plan withFloor(plan::Plan plan, const std::string& id, Point low, Point high, double floor) {
  plan::Area area;
  area.id = base::Id<plan::Area>(id);
  area.shape = plan::Outline{square(low, high)};
  area.floor = floor;
  plan.set.areas.add(area);
  return plan;
}

/// Against the east wall.
plan::Plan withWell() {
  return withFloor(twoRooms(), "well", {8, 1}, {8.9, 2}, -0.9);
}

sight::PieceIn box(Point low, Point high, double bottom) {
  sight::PieceIn piece;
  piece.shape = sight::OutlineShape{square(low, high)};
  piece.bottom = bottom;
  piece.top = bottom + 1;
  return piece;
}

TEST(Floors, LieWhereTheLastAreaSaysElseTheRoomElseTheDatum) {
  plan::Plan plan = withWell();
  EXPECT_EQ(floorAt(plan, {8.5, 1.5}), -0.9);
  EXPECT_EQ(floorAt(plan, {8.5, 2.5}), 0);
  plan::Room east = plan.set.rooms[1];
  east.floor = 0.2;
  plan.set.rooms.replace(1, east);
  EXPECT_EQ(floorAt(plan, {8.5, 2.5}), 0.2);
  EXPECT_EQ(floorAt(plan, {20, 20}), 0);
  plan = withFloor(plan, "lid", {8, 1}, {8.4, 2}, 0.1);
  EXPECT_EQ(floorAt(plan, {8.2, 1.5}), 0.1);
  EXPECT_EQ(floorAt(plan, {8.6, 1.5}), -0.9);
}

TEST(Floors, CarryWallsThatHaveFloorOnOneSide) {
  const plan::Plan plan = withWell();
  const auto wall = [](double bottom) { return sight::WallBand{{{9, 0}, {9, 4}}, 0.1, bottom, 2.7, 0, std::nullopt}; };
  EXPECT_LT(footOf(plan, wall(0)).value(), -0.9) << "outside of the east wall lies the datum";
  EXPECT_FALSE(footOf(plan, wall(0.5))) << "half a metre over every floor";
  EXPECT_FALSE(footOf(plan, sight::WallBand{{{8.1, 1.5}, {8.8, 1.5}}, 0.1, 0, 2.7, 0, std::nullopt}))
      << "across the well, with depth on both sides";
  EXPECT_FALSE(footOf(twoRooms(), wall(0))) << "no floor lies lower";
}

TEST(Floors, CarryPiecesWithFloorUnderAllOfThem) {
  const plan::Plan plan = withWell();
  EXPECT_TRUE(footOf(plan, box({6, 1}, {7, 2}, 0)));
  EXPECT_FALSE(footOf(plan, box({6, 1}, {7, 2}, 0.5))) << "a lamp";
  EXPECT_FALSE(footOf(plan, box({7.5, 1.2}, {8.2, 1.8}, 0))) << "over the edge of the well";
  EXPECT_FALSE(footOf(plan, box({6, 1}, {7, 2}, -0.9))) << "as low as the lowest floor";
  sight::PieceIn wheeled = box({6, 1}, {7, 2}, 0);
  wheeled.keys = {{0, 0, false}, {3, 1, false}};
  wheeled.shifts = {{}, {{0.5, 0}, 0}};
  EXPECT_TRUE(footOf(plan, wheeled));
  wheeled.shifts[1].offset.x = 1.5;
  EXPECT_FALSE(footOf(plan, wheeled));
}

std::size_t clearCells(const plan::Plan& plan, geometry::Span span) {
  const auto clear = clearGroundOf(*takeOf(plan), {1.8}, span);
  EXPECT_TRUE(clear.ok());
  return static_cast<std::size_t>(std::count(clear->cells.begin(), clear->cells.end(), 1));
}

// The camera looks through the door into the eastern room for a while. Its walls stand on the floor all round.
TEST(Floors, LeaveGroundClearThatNoWellTouches) {
  for (const geometry::Span span : {geometry::Span{0, 5}, geometry::Span{9, 19}}) {
    const std::size_t flat = clearCells(twoRooms(), span);
    EXPECT_GT(flat, 1000u);
    const std::size_t most = flat / 100, beside = clearCells(withWell(), span);
    EXPECT_LE(beside, flat + most);
    EXPECT_GE(beside + most, flat);
  }
}

// The lens at 1.75 m looks over a screen of 1.77 m: a metre and more behind it, line of sight is over the head of
// whoever is 1.8 m tall on the floor, and under it on a stage of a step.
TEST(Floors, NeverCallClearWhoIsSeenOnAStageOfAStep) {
  for (const double stage : {0.05, 0.1, 0.14, 0.3}) {
    plan::Plan plan = withFloor(twoRooms(), "stage", {0.1, 0.1}, {1, 3.9}, stage);
    plan.camera.marks[0].height = 1.75;
    plan::Piece screen;
    screen.id = base::Id<plan::Piece>("screen");
    screen.shape = plan::Line{{{1.6, 0.1}, {1.6, 3.9}}};
    screen.top = 1.77;
    plan.set.pieces.add(screen);
    const TakePtr take = takeOf(plan);
    const auto clear = clearGroundOf(*take, {1.8}, {0, 5});
    ASSERT_TRUE(clear.ok());
    int seen = 0;
    for (double x = 0.4; x < 0.9; x += 0.1)
      for (double y = 0.5; y < 3.6; y += 0.25) {
        const auto sight = sightOfSpot(*take, {x, y}, 1.8, 0.28);
        const bool exposed = std::ranges::any_of(sight.seen, [](const auto& of) { return of.span.from < 5; });
        seen += exposed;
        EXPECT_FALSE(exposed && clear->cells[*clear->grid.cellAt({x, y})]) << stage << " at " << x << ", " << y;
      }
    EXPECT_GT(seen, 10) << stage;
  }
}

}  // namespace
}  // namespace wend::answers
