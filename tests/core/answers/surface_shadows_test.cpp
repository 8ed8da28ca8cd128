// Shadows by lamps on walls and ground in frame, held against lines drawn by hand.
#include "core/answers/whole_take.h"
#include "tests/core/answers/held_pole.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

/// A wall across the frame five metres off, a lamp behind the camera to its right, as high as a head, that lights it.
plan::Plan wallBehind(double lampHeight = 1.7) {
  plan::Plan plan = litBySideLamp();
  plan.performers.remove(0);
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("w1");
  wall.points = {{-8, 5}, {8, 5}};
  plan.set.walls.add(wall);
  plan::Fixture lamp = plan.fixtures[0];
  lamp.pos = {2, -1};
  lamp.bearing = -18;
  lamp.height = lampHeight;
  plan.fixtures.replace(0, lamp);
  return plan;
}

std::vector<snags::SurfaceShadow> shadowsOf(const plan::Plan& plan, const std::vector<snags::BoomLine>& boom = {}) {
  const auto take = takeOf(plan);
  return surfaceShadows(*take, samplesOf(*take), boom);
}

TEST(SurfaceShadows, OfSomebodyFallOnTheWallWhereTheLineFromTheLampMeetsIt) {
  plan::Plan plan = wallBehind();
  EXPECT_TRUE(shadowsOf(plan).empty()) << "the camera's falls out of frame to the left";
  plan.crew.add(standing("grip", {1.5, 1}));
  const auto shadows = shadowsOf(plan);
  ASSERT_EQ(shadows.size(), 1u);
  EXPECT_EQ(shadows[0].lamp, "f1");
  EXPECT_EQ(shadows[0].by, "grip");
  EXPECT_EQ(shadows[0].on, "w1");
  EXPECT_NEAR(shadows[0].share, 1, 1e-9) << "there is no other light";
  // From (2, -1) by (1.5, 1) on to the wall's near face at y = 4.95 (0.1 m thick): half as far aside as ahead by 4.
  const double y = shadows[0].pos.y;
  EXPECT_GT(y, 4.8);
  EXPECT_LT(y, 5);
  EXPECT_NEAR(shadows[0].pos.x, 2 - 0.25 * (y + 1), 1e-9);
  EXPECT_NEAR(shadows[0].span.from, 0, 1e-9);
  EXPECT_NEAR(shadows[0].span.until, 10, 0.21);
}

TEST(SurfaceShadows, AreNoneOutOfFrameBehindAWallOrInOtherLight) {
  plan::Plan aside = wallBehind();
  aside.crew.add(standing("grip", {3, 1}));
  EXPECT_TRUE(shadowsOf(aside).empty()) << "falls five metres to the right";
  plan::Plan walled = wallBehind();
  walled.crew.add(standing("grip", {1.5, 1}));
  plan::Wall flag;
  flag.id = base::Id<plan::Wall>("w2");
  flag.points = {{1.4, 0}, {2.1, 0}};
  walled.set.walls.add(flag);
  EXPECT_TRUE(shadowsOf(walled).empty()) << "the lamp does not get there";
  plan::Plan out = wallBehind();
  out.crew.add(standing("grip", {1.5, 1}));
  plan::Fixture lamp = out.fixtures[0];
  lamp.level = {{{{"", 0}, 0, plan::Pace::even}, 0, "", "", {}}};
  out.fixtures.replace(0, lamp);
  EXPECT_TRUE(shadowsOf(out).empty()) << "the lamp is out";
}

TEST(SurfaceShadows, OfAPoleFallOnTheWallUnlessTheLampHangsTooHigh) {
  const auto ofPole = [](double lampHeight) {
    const auto take = takeOf(wallBehind(lampHeight));
    const auto samples = samplesOf(*take);
    const snags::BoomLine line = heldStill(samples, {{2, 2.5, 1.5}, {0, 2.5, 2.2}});
    int count = 0;
    for (const auto& shadow : surfaceShadows(*take, samples, {line})) count += shadow.by == "pole" && shadow.on == "w1";
    return count;
  };
  EXPECT_EQ(ofPole(1.7), 1);
  EXPECT_EQ(ofPole(6), 0) << "thrown on the ground below the frame";
}

}  // namespace
}  // namespace wend::answers
