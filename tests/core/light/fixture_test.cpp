#include "core/light/fixture.h"

#include <gtest/gtest.h>

#include <cmath>

namespace wend::light {
namespace {

const Blocked kOpen = [](Point3, Point3) { return false; };

Fixture bulb(Point3 at, double candela) {
  return {{at, 0, -90}, [candela](double, double) { return candela; }, {}, {}};
}

TEST(Response, OfADomeSeesRoundTheSideAndAFlatOneDoesNot) {
  EXPECT_EQ(response(Receptor::dome, 0), 1);
  EXPECT_NEAR(response(Receptor::dome, 90), 0.5, 1e-12);
  EXPECT_NEAR(response(Receptor::dome, 180), 0, 1e-12);
  EXPECT_EQ(response(Receptor::flat, 0), 1);
  EXPECT_NEAR(response(Receptor::flat, 60), 0.5, 1e-12);
  EXPECT_EQ(response(Receptor::flat, 120), 0);
}

TEST(CandelaTowards, MeasuresAnglesFromTheLampsAxis) {
  Fixture lamp{{{0, 0, 3}, 0, -90}, [](double offAxis, double around) { return offAxis * 1000 + around; }, {}, {}};
  EXPECT_LE(candelaTowards(lamp, {0, 0, 0}), 180.001);
  EXPECT_NEAR(candelaTowards(lamp, {0, 3, 0}), 45000, 1e-6) << "a lamp that hangs straight down has its top to bearing";
  EXPECT_NEAR(candelaTowards(lamp, {3, 0, 0}), 45090, 1e-6);
  EXPECT_NEAR(candelaTowards(lamp, {0, 0, 6}), 180000, 180 + 1e-6);
  lamp.pose = {{0, 0, 1}, 90, 0};
  EXPECT_LE(candelaTowards(lamp, {5, 0, 1}), 180.001);
  EXPECT_NEAR(candelaTowards(lamp, {5, -5, 1}), 45090, 1e-6);
  EXPECT_NEAR(candelaTowards(lamp, {5, 0, 6}), 45000, 1e-6);
}

TEST(LuxAtFace, FallsWithTheSquareOfTheDistance) {
  const Face face{{0, 0, 0}, {0, 0, 1}};
  const double near = luxAtFace(bulb({0, 0, 2}, 900), face, 0, Receptor::flat, kOpen);
  EXPECT_DOUBLE_EQ(near, 225);
  EXPECT_DOUBLE_EQ(luxAtFace(bulb({0, 0, 4}, 900), face, 0, Receptor::flat, kOpen), near / 4);
}

TEST(LuxAtFace, OfALampBehindTheHeadIsNothing) {
  const Face face{{0, 0, 1.6}, {0, 1, 0}};
  EXPECT_NEAR(luxAtFace(bulb({0, -2, 1.6}, 900), face, 0, Receptor::dome, kOpen), 0, 1e-9);
  EXPECT_NEAR(luxAtFace(bulb({0, 2, 1.6}, 900), face, 0, Receptor::dome, kOpen), 225, 1e-9);
  EXPECT_NEAR(luxAtFace(bulb({2, 0, 1.6}, 900), face, 0, Receptor::dome, kOpen), 112.5, 1e-9);
}

TEST(LuxAtFace, IsCutByASolid) {
  const Face face{{0, 0, 0}, {0, 0, 1}};
  const Blocked floor = [](Point3 lamp, Point3) { return lamp.z > 3; };
  EXPECT_EQ(luxAtFace(bulb({0, 0, 4}, 900), face, 0, Receptor::flat, floor), 0);
  EXPECT_GT(luxAtFace(bulb({0, 0, 2}, 900), face, 0, Receptor::flat, floor), 0);
}

TEST(LuxAtFace, StaysFiniteAtTheLampItself) {
  EXPECT_TRUE(std::isfinite(luxAtFace(bulb({0, 0, 0}, 900), {{0, 0, 0}, {0, 0, 1}}, 0, Receptor::dome, kOpen)));
}

TEST(LevelAt, BlendsBetweenItsKeys) {
  Fixture lamp = bulb({0, 0, 2}, 900);
  EXPECT_EQ(levelAt(lamp, 5), 1);
  lamp.level = {{{0, 0, false}, 0}, {{34, 2, false}, 1}, {{80, 2, true}, 0.5}};
  EXPECT_EQ(levelAt(lamp, 33), 0);
  EXPECT_EQ(levelAt(lamp, 35), 0.5);
  EXPECT_EQ(levelAt(lamp, 40), 1);
  EXPECT_DOUBLE_EQ(levelAt(lamp, 80.5), 1 - 0.5 * 0.15625);
  const Face face{{0, 0, 0}, {0, 0, 1}};
  EXPECT_DOUBLE_EQ(luxAtFace(lamp, face, 35, Receptor::flat, kOpen), 112.5);
  EXPECT_EQ(luxAtFace(lamp, face, 33, Receptor::flat, kOpen), 0);
}

}  // namespace
}  // namespace wend::light
