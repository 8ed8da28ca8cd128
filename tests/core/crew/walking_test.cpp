#include "core/crew/walking.h"

#include <gtest/gtest.h>

#include <cmath>

namespace wend::crew {
namespace {

const GroundEdge kThreshold{"D1", {{0, 2}, {0, 3.1}}, false, 0.04};
const GroundEdge kRoad{"road", {{18, -10}, {28, -10}, {28, 20}, {18, 20}}, true, 0.12};

std::function<Point(double)> straight(Point from, Point to, double seconds) {
  return [=](double t) { return geometry::lerp(from, to, t / seconds); };
}

TEST(CarryOf, TellsFrontSideAndRearByTheTurnFromTheLens) {
  EXPECT_EQ(carryOf(0.04, 0, 0), Carry::still);
  EXPECT_EQ(carryOf(0.8, 10, -10), Carry::front);
  EXPECT_EQ(carryOf(0.8, 90, 0), Carry::side);
  EXPECT_EQ(carryOf(0.8, 120, 0), Carry::side);
  EXPECT_EQ(carryOf(0.8, 121, 0), Carry::rear);
  EXPECT_EQ(carryOf(0.8, -121, 0), Carry::rear);
  EXPECT_EQ(carryOf(0.8, 180, -360), Carry::rear) << "unwrapped bearings";
  EXPECT_EQ(carryOf(0.8, 2, -358), Carry::front);
}

TEST(StepsOver, AThresholdIsMetAtItsInstant) {
  const auto steps = stepsOver(straight({-1, 2.5}, {2, 2.5}, 6), 0, 6, 1.0 / 24, {kRoad, kThreshold});
  ASSERT_EQ(steps.size(), 1u);
  EXPECT_EQ(steps[0].edge, 1u);
  EXPECT_NEAR(steps[0].time, 2, 1e-6);
  EXPECT_NEAR(steps[0].at.x, 0, 1e-6);
  EXPECT_NEAR(steps[0].at.y, 2.5, 1e-9);
}

TEST(StepsOver, PastTheEndOfAThresholdIsNone) {
  EXPECT_TRUE(stepsOver(straight({-1, 3.2}, {2, 3.2}, 6), 0, 6, 0.1, {kThreshold}).empty());
}

TEST(StepsOver, AKerbIsMetOnTheWayOnAndOff) {
  const auto steps = stepsOver(straight({16, 0}, {30, 0}, 14), 0, 14, 0.1, {kRoad});
  ASSERT_EQ(steps.size(), 2u);
  EXPECT_NEAR(steps[0].time, 2, 1e-6);
  EXPECT_NEAR(steps[1].time, 12, 1e-6);
}

TEST(StepsOver, ACornerIsCrossedOnce) {
  const GroundEdge diamond{"d", {{0, -1}, {1, 0}, {0, 1}, {-1, 0}}, true, 0.1};
  EXPECT_EQ(stepsOver(straight({-3, 0}, {3, 0}, 6), 0, 6, 0.25, {diamond}).size(), 2u);
  EXPECT_EQ(stepsOver(straight({0, -3}, {0, 3}, 6), 0, 6, 0.25, {diamond}).size(), 2u);
  EXPECT_EQ(stepsOver(straight({-3, 1}, {3, 1}, 6), 0, 6, 0.25, {diamond}).size() % 2, 0u);
  EXPECT_EQ(stepsOver(straight({-3, -1}, {3, -1}, 6), 0, 6, 0.25, {diamond}).size() % 2, 0u);
}

TEST(StepsOver, AlongAnEdgeIsNoCrossing) {
  EXPECT_TRUE(stepsOver(straight({0, 1}, {0, 5}, 4), 0, 4, 0.1, {kThreshold}).empty());
}

TEST(StepsOver, NeighbouringStretchesNeverCountOneTwice) {
  const auto way = straight({-1, 2.5}, {1, 2.5}, 2);
  // The way stands on the edge exactly at the seam of the two stretches, and of two looks.
  EXPECT_EQ(stepsOver(way, 0, 1, 0.25, {kThreshold}).size() + stepsOver(way, 1, 2, 0.25, {kThreshold}).size(), 1u);
  const auto back = straight({1, 2.5}, {-1, 2.5}, 2);
  EXPECT_EQ(stepsOver(back, 0, 1, 0.25, {kThreshold}).size() + stepsOver(back, 1, 2, 0.25, {kThreshold}).size(), 1u);
}

TEST(StepsOver, ACurvedWayIsMetOnTheCurve) {
  // A quarter circle of radius 2 about the origin, one radian a second, over the line x = 1: at 60 degrees.
  const GroundEdge line{"line", {{1, -5}, {1, 5}}, false, 0.02};
  const auto arc = [](double t) { return Point{2 * std::cos(t), 2 * std::sin(t)}; };
  const auto steps = stepsOver(arc, 0, 1.5, 0.1, {line});
  ASSERT_EQ(steps.size(), 1u);
  EXPECT_NEAR(steps[0].time, std::acos(0.5), 1e-6);
}

TEST(StepsOver, StandingCrossesNothing) {
  EXPECT_TRUE(stepsOver([](double) { return Point{18, 0}; }, 0, 10, 0.1, {kRoad}).empty());
  EXPECT_TRUE(stepsOver(straight({16, 0}, {30, 0}, 14), 3, 3, 0.1, {kRoad}).empty());
}

}  // namespace
}  // namespace wend::crew
