#include "core/plan/arc_leg.h"

#include <gtest/gtest.h>

#include <random>

#include "core/plan/leg_place.h"

namespace wend::plan {
namespace {

Leg arc(Point centre, double sweep) {
  Leg leg;
  leg.shape = LegShape::arc;
  leg.centre = centre;
  leg.sweep = sweep;
  return leg;
}

TEST(SweepBetween, CountsClockwisePositiveAsACompassDoes) {
  EXPECT_NEAR(sweepBetween({0, 1}, {1, 0}, {0, 0}, 80), 90, 1e-12);
  EXPECT_NEAR(sweepBetween({1, 0}, {0, 1}, {0, 0}, -80), -90, 1e-12);
}

TEST(SweepBetween, TakesTheTurnNearestToTheOneBefore) {
  EXPECT_NEAR(sweepBetween({0, 1}, {1, 0}, {0, 0}, -300), -270, 1e-12);
  EXPECT_NEAR(sweepBetween({0, 1}, {1, 0}, {0, 0}, 400), 450, 1e-12);
}

TEST(NearestCentre, IsEquallyFarFromBothEndsAndLeavesATrueOneAlone) {
  const Point from{1, 2}, to{5, 3};
  const Point centre = nearestCentre(from, to, {9, -4});
  EXPECT_NEAR(geometry::distance(centre, from), geometry::distance(centre, to), 1e-12);
  const Point again = nearestCentre(from, to, centre);
  EXPECT_NEAR(geometry::distance(again, centre), 0, 1e-12);
}

TEST(NearestCentre, IsNearerThanAnyOtherOnTheSameLine) {
  const Point from{1, 2}, to{5, 3}, near{9, -4};
  const Point best = nearestCentre(from, to, near);
  const geometry::Vec along = geometry::unit(geometry::left(to - from));
  for (const double step : {-0.1, 0.1})
    EXPECT_GT(geometry::distance(best + along * step, near), geometry::distance(best, near));
}

TEST(CentreOfSweep, LeadsFromOneEndToTheOtherForEverySweep) {
  const Point from{1, 2}, to{4, 6};
  for (double sweep = -355; sweep <= 715; sweep += 10) {
    const Point centre = centreOfSweep(from, to, sweep);
    EXPECT_FALSE(arcProblem(arc(centre, sweep), from, to, "")) << sweep;
    EXPECT_NEAR(sweepBetween(from, to, centre, sweep), sweep, 1e-9);
  }
}

TEST(ArcProblem, ComesFromUnequalRadiiAndNamesTheNearestCentre) {
  const auto problem = arcProblem(arc({1.1, 1}, 90), {0, 0}, {2, 0}, "/camera/marks/3/leg");
  ASSERT_TRUE(problem);
  EXPECT_EQ(problem->code, "arc-radii");
  EXPECT_EQ(problem->where, "/camera/marks/3/leg/centre");
  EXPECT_NE(problem->remedy.find("both ends is 1, 1."), std::string::npos) << problem->remedy;
}

TEST(ArcProblem, ForgivesFiveMillimetresAndHalfADegree) {
  EXPECT_FALSE(arcProblem(arc({0, 0}, 90.4), {0, 1}, {1.004, 0}, ""));
  EXPECT_EQ(arcProblem(arc({0, 0}, 90), {0, 1}, {1.006, 0}, "")->code, "arc-radii");
  EXPECT_EQ(arcProblem(arc({0, 0}, 90.6), {0, 1}, {1, 0}, "")->code, "arc-sweep");
}

TEST(ArcProblem, SaysAWholeTurnWhereBothEndsAreOnePlace) {
  const auto problem = arcProblem(arc({0, 0}, 90), {0, 1}, {0, 1}, "");
  ASSERT_TRUE(problem);
  EXPECT_NE(problem->expected.find("whole turn"), std::string::npos);
  EXPECT_FALSE(arcProblem(arc({0, 0}, -720), {0, 1}, {0, 1}, ""));
}

TEST(ArcProblem, RefusesACentreOnAMarkAndLeavesOtherShapesAlone) {
  EXPECT_EQ(arcProblem(arc({0, 1}, 90), {0, 1}, {1, 0}, "")->code, "arc-radius");
  EXPECT_FALSE(arcProblem(Leg{}, {0, 1}, {1, 0}, ""));
}

TEST(Refit, KeepsTheCentreWhileAnEndRunsAlongItsCircle) {
  Leg leg = arc({4.5, 3.7}, 90);
  refit(leg, {4.5, 1.4}, {4.5 - 2.3 * std::sqrt(0.5), 3.7 - 2.3 * std::sqrt(0.5)});
  EXPECT_EQ(leg.centre, (Point{4.5, 3.7}));
  EXPECT_NEAR(leg.sweep, 45, 0.01);
}

TEST(Refit, MakesAnyArcTrueAgain) {
  const unsigned seed = 5;
  std::mt19937_64 random(seed);
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * (static_cast<double>(random() >> 11) * 0x1.0p-53);
  };
  for (int i = 0; i < 1000; ++i) {
    const Point from{uniform(-9, 9), uniform(-9, 9)}, to{uniform(-9, 9), uniform(-9, 9)};
    Leg leg = arc({uniform(-9, 9), uniform(-9, 9)}, uniform(-700, 700));
    const double before = leg.sweep;
    refit(leg, from, to);
    const auto problem = arcProblem(leg, from, to, "");
    ASSERT_FALSE(problem) << "seed " << seed << " case " << i << ": " << base::toText(*problem);
    ASSERT_LE(std::abs(leg.sweep - before), 180.01);
    const Leg fitted = leg;
    refit(leg, from, to);
    ASSERT_EQ(leg, fitted) << "seed " << seed << " case " << i;
  }
}

TEST(PointOnLeg, DividesALineByLengthRoundItsCorners) {
  Leg leg;
  leg.via = {{3, 0}};
  EXPECT_EQ(pointOnLeg(leg, {0, 0}, {3, 1}, 0.5), (Point{2, 0}));
  EXPECT_EQ(pointOnLeg(leg, {0, 0}, {3, 1}, 1), (Point{3, 1}));
}

TEST(PointOnLeg, GoesRoundAnArc) {
  const Point half = pointOnLeg(arc({0, 0}, -360), {0, -2}, {0, -2}, 0.25);
  EXPECT_NEAR(half.x, 2, 1e-12);
  EXPECT_NEAR(half.y, 0, 1e-12);
}

TEST(ShareOnLeg, FindsBackWhatPointOnLegGives) {
  Leg line;
  line.via = {{3, 0}, {3, 4}};
  for (double share = 0.05; share < 1; share += 0.1) {
    EXPECT_NEAR(shareOnLeg(line, {0, 0}, {7, 4}, pointOnLeg(line, {0, 0}, {7, 4}, share)), share, 1e-12);
    const Leg turn = arc({0, 0}, 270);
    EXPECT_NEAR(shareOnLeg(turn, {0, 2}, {-2, 0}, pointOnLeg(turn, {0, 2}, {-2, 0}, share)), share, 1e-12);
  }
}

TEST(HalvesOfLeg, ShareTheViaPointsByWhereTheyLie) {
  Leg leg;
  leg.via = {{1, 0}, {2, 0}, {3, 0}};
  leg.pace = Pace::eased;
  const LegHalves halves = halvesOfLeg(leg, {0, 0}, {4, 0}, {2.5, 0.1}, 0.6);
  EXPECT_EQ(halves.first.via, (std::vector<Point>{{1, 0}, {2, 0}}));
  EXPECT_EQ(halves.second.via, (std::vector<Point>{{3, 0}}));
  EXPECT_EQ(halves.second.pace, Pace::eased);
}

TEST(HalvesOfLeg, AreTwoTrueArcsWhoseSweepsAddUp) {
  const Leg leg = arc({0, 0}, -540);
  const Point at = pointOnLeg(leg, {0, 2}, {0, -2}, 0.4);
  const LegHalves halves = halvesOfLeg(leg, {0, 2}, {0, -2}, at, 0.4);
  EXPECT_NEAR(halves.first.sweep, -216, 0.01);
  EXPECT_NEAR(halves.first.sweep + halves.second.sweep, -540, 0.02);
  EXPECT_FALSE(arcProblem(halves.first, {0, 2}, at, ""));
  EXPECT_FALSE(arcProblem(halves.second, at, {0, -2}, ""));
}

TEST(JoinedLeg, AddsSweepsAboutOneCentreAndKeepsViaPoints) {
  EXPECT_EQ(joinedLeg(arc({1, 1}, 90), arc({1, 1}, 45)).sweep, 135);
  Leg first, second;
  first.via = {{1, 0}};
  second.via = {{2, 0}};
  EXPECT_EQ(joinedLeg(first, second).via, (std::vector<Point>{{1, 0}, {2, 0}}));
  EXPECT_EQ(joinedLeg(first, arc({0, 0}, 90)).shape, LegShape::straight);
  EXPECT_TRUE(joinedLeg(first, arc({0, 0}, 90)).via.empty());
}

}  // namespace
}  // namespace wend::plan
