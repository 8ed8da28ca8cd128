#include "core/answers/drawn_ground.h"

#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

/// A wall across the way of somebody who walks behind the camera, who could not be seen there.
plan::Plan walking() {
  plan::Plan plan = smallPlan();
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("w1");
  wall.points = {{0, -6}, {0, -4}};
  plan.set.walls.add(wall);
  plan::Crew runner = standing("runner", {-3, -5});
  runner.marks.push_back(markAt("r2", {3, -5}, 9));
  plan.crew.add(runner);
  return plan;
}

TEST(DrawnGround, IsTakenInAWallAndFreeBesideIt) {
  const TakePtr take = takeOf(walking());
  TakeQuarters quarters(*take);
  DrawnGround ground(quarters, 0, 1.8);
  EXPECT_EQ(ground.walking({0, -5}, 4), crew::Ground::taken);
  EXPECT_EQ(ground.walking({0, -3}, 4), crew::Ground::free);
  EXPECT_EQ(ground.walking({-1, -5}, 4), crew::Ground::free);
}

TEST(DrawnGround, IsTakenByTheRigAndByOthersButNotByOneself) {
  plan::Plan plan = walking();
  plan.crew.add(standing("spark", {2, -5}));
  const TakePtr take = takeOf(plan);
  TakeQuarters quarters(*take);
  DrawnGround ground(quarters, 0, 1.8);
  EXPECT_EQ(ground.walking({2, -5}, 4), crew::Ground::taken) << "somebody stands there";
  EXPECT_EQ(ground.walking({-3, -5}, 0), crew::Ground::free) << "it is the runner's own place";
  EXPECT_EQ(ground.walking({0.1, -0.1}, 4), crew::Ground::taken) << "the camera";
}

TEST(DrawnGround, IsSeenInFrontOfTheLensWhoeverStandsOrWalks) {
  const TakePtr take = takeOf(walking());
  TakeQuarters quarters(*take);
  DrawnGround ground(quarters, 0, 1.8);
  EXPECT_EQ(ground.standing({0, 5}, 4), crew::Ground::seen);
  EXPECT_EQ(ground.walking({0, 5}, 4), crew::Ground::seen);
  EXPECT_EQ(ground.standing({0, -5}, 4), crew::Ground::free) << "who stands is not asked what stands there";
}

}  // namespace
}  // namespace wend::answers
