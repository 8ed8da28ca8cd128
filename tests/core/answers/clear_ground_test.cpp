// The ground that is clear, on floors of different heights.
#include "core/answers/clear_ground.h"

#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

/// A wall of 2.2 m four metres in front of the lens, and a room behind it whose floor lies at `floor`.
bool clearBehindTheWall(double floor) {
  plan::Plan plan = smallPlan();
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("w");
  wall.points = {{-6, 4}, {6, 4}};
  wall.thickness = 0.1;
  wall.top = 2.2;
  plan.set.walls.add(wall);
  plan::Room back;
  back.id = base::Id<plan::Room>("back");
  back.outline = {{-3, 4.5}, {3, 4.5}, {3, 8}, {-3, 8}};
  back.floor = floor;
  back.ceiling = floor + 3;
  plan.set.rooms.add(back);
  const auto clear = clearGroundOf(*takeOf(plan), {1.8}, {0, 10});
  EXPECT_TRUE(clear.ok());
  return clear->cells[*clear->grid.cellAt({0, 6})] != 0;
}

// Over the wall's top, 0.7 m above the lens at 4 m, the line of sight is 2.55 m high at 6 m.
TEST(ClearGround, CountsWhoStandsOnARaisedFloor) {
  EXPECT_TRUE(clearBehindTheWall(0));
  EXPECT_TRUE(clearBehindTheWall(0.1));
  EXPECT_FALSE(clearBehindTheWall(1)) << "a head at 2.8 m shows over the wall";
}

}  // namespace
}  // namespace wend::answers
