// The sun as a lamp of whole plans: where it stands, what it reaches, its glare and its shadows.
#include <cmath>

#include "core/answers/whole_take.h"
#include "tests/core/answers/held_pole.h"
#include "tests/core/answers/sunlit.h"

namespace wend::answers {
namespace {

// Bearing and elevation of the worked example in NREL/TP-560-34302 (tests/published/sun_test.cpp): Golden, Colorado, 17
// October 2003, 12:30:30 at UTC-7; azimuth 194.34, zenith 50.11 with the air.
TEST(SunOfAPlan, StandsWherePublishedByPlaceDayAndClock) {
  plan::Plan plan = smallPlan();
  EXPECT_FALSE(sunOf(plan, 0));
  plan.site = plan::Site{39.742476, -105.1786, {2003, 10, 17}, -7, 0, {}};
  EXPECT_FALSE(sunOf(plan, 0)) << "no time of day";
  plan.clock.timeOfDay = 12 * 3600 + 30 * 60;
  EXPECT_NEAR(sunOf(plan, 30)->bearing, 194.34, 0.02);
  EXPECT_NEAR(sunOf(plan, 30)->elevation, 90 - 50.11, 0.02);
  plan.site->north = 200;
  EXPECT_NEAR(sunOf(plan, 30)->bearing, 354.34, 0.02) << "told by the plan's own north";
}

TEST(SunOfAPlan, HasNoWayTowardsItAtNight) {
  plan::Plan plan = sunlit(30);
  EXPECT_TRUE(towardsSun(plan, 0));
  plan.clock.timeOfDay = 0;
  EXPECT_LT(sunOf(plan, 0)->elevation, 0);
  EXPECT_FALSE(towardsSun(plan, 0));
}

plan::Wall wallAcross(double metres, double bearing, double top) {
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("w1");
  const geometry::Point middle = geometry::Point{0, 0} + geometry::direction(bearing) * metres;
  const geometry::Vec aside = geometry::direction(bearing + 90) * 20;
  wall.points = {middle - aside, middle + aside};
  wall.top = top;
  return wall;
}

bool reaches(const plan::Plan& plan, geometry::Point3 point) {
  const auto take = takeOf(plan);
  return sunReaches(*take, take->scene().at(0), *towardsSun(plan, 0), point);
}

TEST(TheSun, ReachesOverAWallThatIsLowEnough) {
  plan::Plan plan = sunlit(45);
  EXPECT_TRUE(reaches(plan, {0, 0, 1}));
  plan.set.walls.add(wallAcross(5, sunBearing(plan), 5.9));
  EXPECT_TRUE(reaches(plan, {0, 0, 1}));
  plan.set.walls.replace(0, wallAcross(5, sunBearing(plan), 6.2));
  EXPECT_FALSE(reaches(plan, {0, 0, 1}));
}

TEST(TheSun, ComesIntoARoomFromTheSideOnlyUnlessItIsOpenAbove) {
  plan::Plan plan = sunlit(45);
  plan::Room room;
  room.id = base::Id<plan::Room>("r1");
  room.outline = {{-4, -4}, {4, -4}, {4, 4}, {-4, 4}};
  plan.set.rooms.add(room);
  EXPECT_FALSE(reaches(plan, {0, 0, 1}));
  const geometry::Vec side = geometry::direction(sunBearing(plan));
  EXPECT_TRUE(reaches(plan, geometry::at(geometry::Point{0, 0} + side * 3.5, 1)))
      << "out through where a window may be";
  room.openAbove = true;
  plan.set.rooms.replace(0, room);
  EXPECT_TRUE(reaches(plan, {0, 0, 1}));
}

plan::Plan lookingAt(plan::Plan plan, double bearing, double tilt) {
  plan.camera.aims[0].on = plan::OnBearing{bearing, tilt};
  return plan;
}

std::vector<snags::SunInLens> glareOf(const plan::Plan& plan) {
  const auto take = takeOf(plan);
  return sunInLens(*take, samplesOf(*take));
}

TEST(SunInLens, IsInTheFrameBesideItOrFarFromIt) {
  const plan::Plan plan = sunlit(30);
  const double bearing = sunBearing(plan);
  const auto inside = glareOf(lookingAt(plan, bearing, 30));
  ASSERT_EQ(inside.size(), 1u);
  EXPECT_LT(inside[0].offFrame, 0);
  EXPECT_NEAR(inside[0].elevation, 30, 0.1);
  EXPECT_NEAR(inside[0].span.until, 10, 0.11);
  // The frame's upper edge stands 11.3 degrees over its axis: 35 mm behind 14 mm.
  const auto beside = glareOf(lookingAt(plan, bearing, 30 - 11.31 - 5));
  ASSERT_EQ(beside.size(), 1u);
  EXPECT_NEAR(beside[0].offFrame, 5, 0.1);
  EXPECT_TRUE(glareOf(lookingAt(plan, bearing, 30 - 11.31 - 10.2)).empty());
  EXPECT_TRUE(glareOf(lookingAt(plan, bearing + 180, -30)).empty()) << "behind the lens";
}

TEST(SunInLens, IsHiddenByTheSet) {
  plan::Plan plan = lookingAt(sunlit(30), 0, 30);
  plan.camera.aims[0].on = plan::OnBearing{sunBearing(plan), 30};
  plan.set.walls.add(wallAcross(2, sunBearing(plan), 4));
  EXPECT_TRUE(glareOf(plan).empty());
}

std::vector<snags::SunShadow> sunShadowsOf(const plan::Plan& plan, const std::vector<snags::BoomLine>& boom = {}) {
  const auto take = takeOf(plan);
  return sunShadows(*take, samplesOf(*take), boom);
}

/// NORA's eyes stand 0.935 x 1.75 m up; somebody of 1.8 m who stands a metre sunwards shades them while the sun is
/// lower than atan(0.16 / 0.72), 12.7 degrees.
TEST(SunShadows, FallOnTheFaceOfWhomSomebodyStandsBefore) {
  const auto shaded = [](double elevation) {
    plan::Plan plan = sunlit(elevation);
    const geometry::Vec sunwards = geometry::direction(sunBearing(plan));
    plan.crew.add(standing("grip", geometry::Point{0, 3} + sunwards));
    int faces = 0;
    for (const auto& shadow : sunShadowsOf(plan)) faces += shadow.face && shadow.by == "grip" && shadow.on == "nora";
    return faces;
  };
  EXPECT_EQ(shaded(8), 1);
  EXPECT_EQ(shaded(16), 0);
}

TEST(SunShadows, OfTheCameraFallOnAWallInFrameWhenTheSunStandsBehindIt) {
  plan::Plan plan = sunlit(10);
  const double away = sunBearing(plan) + 180;
  plan = lookingAt(plan, away, 0);
  plan::Wall wall = wallAcross(4, away, 3);
  plan.set.walls.add(wall);
  const auto onWall = [](const std::vector<snags::SunShadow>& all) {
    int count = 0;
    for (const auto& shadow : all) count += shadow.by == "camera" && shadow.on == "w1" && !shadow.face;
    return count;
  };
  EXPECT_EQ(onWall(sunShadowsOf(plan)), 1) << "0.7 m lower, four metres on: within the frame's 0.8";
  plan.camera.aims[0].on = plan::OnBearing{away, 20};
  EXPECT_EQ(onWall(sunShadowsOf(plan)), 0) << "the lens looks over it";
}

TEST(SunShadows, OfABoomFallOnTheWallBehind) {
  plan::Plan plan = sunlit(10);
  const double away = sunBearing(plan) + 180;
  plan = lookingAt(plan, away, 0);
  plan.set.walls.add(wallAcross(4, away, 3));
  const auto take = takeOf(plan);
  const auto samples = samplesOf(*take);
  const snags::BoomLine line = heldStill(samples, {{-1, 0, 1.5}, {1, 0, 2}});
  int boom = 0;
  for (const auto& shadow : sunShadows(*take, samples, {line})) boom += shadow.by == "pole" && shadow.on == "w1";
  EXPECT_EQ(boom, 1);
}

TEST(SunShadows, AreNoneAtNightOrUnderACeiling) {
  plan::Plan plan = sunlit(8);
  plan.crew.add(standing("grip", geometry::Point{0, 3} + geometry::direction(sunBearing(plan))));
  EXPECT_FALSE(sunShadowsOf(plan).empty());
  plan::Plan roofed = plan;
  plan::Room hall;
  hall.id = base::Id<plan::Room>("hall");
  hall.outline = {{-90, -90}, {90, -90}, {90, 90}, {-90, 90}};
  roofed.set.rooms.add(hall);
  EXPECT_TRUE(sunShadowsOf(roofed).empty());
  plan.clock.timeOfDay = 0;
  EXPECT_TRUE(sunShadowsOf(plan).empty());
}

}  // namespace
}  // namespace wend::answers
