#include "core/motion/way.h"

#include <gtest/gtest.h>

namespace wend::motion {
namespace {

using Shape = TrackLeg::Shape;

std::vector<TrackMark> arcOf(double sweep, double toRadius) {
  TrackMark from{0, 0, {0, 2}, 0, {Shape::arc, {}, {0, 0}, sweep, false}};
  return {from, {1, 1, {toRadius, 0}, 0, {}}};
}

std::string firstCode(const std::vector<TrackMark>& marks) {
  const auto ways = waysBetween(marks);
  return ways ? "" : ways.problems().front().code;
}

TEST(Arc, GoesRoundTheWayItsSweepSays) {
  const auto quarter = waysBetween(arcOf(90, 2)), round = waysBetween(arcOf(-270, 2)),
             more = waysBetween(arcOf(450, 2));
  EXPECT_NEAR(quarter->front().length(), std::numbers::pi, 1e-12);
  EXPECT_NEAR(round->front().length(), 3 * std::numbers::pi, 1e-12);
  EXPECT_NEAR(more->front().length(), 5 * std::numbers::pi, 1e-12);
  EXPECT_GT(quarter->front().heading(0).x, 0.99) << "clockwise from the north goes east";
  EXPECT_LT(round->front().heading(0).x, -0.99);
}

TEST(Arc, ToleratesFiveMillimetresAndHalfADegreeAndNoMore) {
  EXPECT_EQ(firstCode(arcOf(90, 2.0049)), "");
  EXPECT_EQ(firstCode(arcOf(90, 2.0051)), "arc-uneven-radius");
  EXPECT_EQ(firstCode(arcOf(90.49, 2)), "");
  EXPECT_EQ(firstCode(arcOf(90.51, 2)), "arc-wrong-sweep");
  EXPECT_EQ(firstCode(arcOf(89.49, 2)), "arc-wrong-sweep");
  EXPECT_EQ(firstCode(arcOf(90, 0)), "arc-without-radius");
}

TEST(Arc, GoesRoundAHundredTimesAtMost) {
  EXPECT_EQ(firstCode(arcOf(90 + 360.0 * 99, 2)), "");
  EXPECT_EQ(firstCode(arcOf(90 + 360.0 * 100, 2)), "arc-too-many-turns");
  EXPECT_EQ(firstCode(arcOf(90 - 360e9, 2)), "arc-too-many-turns");
}

TEST(Arc, EndsExactlyOnItsMarksWithRadiusAndAngleLinear) {
  const auto ways = waysBetween(arcOf(90.4, 2.004));
  const geometry::Curve& way = ways->front();
  EXPECT_LT(distance(way.place(0), {0, 2}), 1e-12);
  EXPECT_LT(distance(way.place(way.length()), {2.004, 0}), 1e-12);
  const geometry::Vec third = way.place(way.length() / 3) - Point{0, 0};
  EXPECT_NEAR(length(third), 2 + 0.004 / 3, 1e-12);
  EXPECT_NEAR(geometry::bearingOf(third), 30, 1e-9);
}

TEST(Ways, ArcProblemsAreAllFoundWithTheirPlace) {
  auto marks = arcOf(90, 3);
  marks[1].leg = {Shape::arc, {}, {0, 0}, 10, false};
  marks.push_back({2, 2, {0, -3}, 0, {}});
  const auto ways = waysBetween(marks);
  ASSERT_FALSE(ways.ok());
  ASSERT_EQ(ways.problems().size(), 2u);
  EXPECT_EQ(ways.problems()[0].where, "/0/leg/centre");
  EXPECT_EQ(ways.problems()[1].where, "/1/leg/sweep");
}

TEST(Ways, HoldsAndOtherShapesLendASmoothLegNoPoint) {
  const TrackLeg smooth{Shape::smooth, {}, {}, 0, false};
  const TrackMark a{0, 0, {0, 0}, 0, smooth}, b{1, 1, {2, 1}, 0, smooth}, c{2, 2, {3, 4}, 0, smooth};
  const auto alone = waysBetween({a, b}), chained = waysBetween({a, b, c});
  const TrackMark hold{1.5, 1.5, {2, 1}, 0, smooth}, straight{1, 1, {2, 1}, 0, {}};
  const auto held = waysBetween({a, b, hold, c}), mixed = waysBetween({a, straight, c});
  const auto middle = [](const auto& ways) { return (*ways)[0].place((*ways)[0].length() / 2); };
  EXPECT_LT(distance(middle(alone), {1, 0.5}), 1e-9) << "two points alone give a straight line";
  EXPECT_EQ(middle(held), middle(alone));
  EXPECT_EQ(middle(mixed), middle(alone));
  EXPECT_GT(distance(middle(chained), middle(alone)), 0.05);
}

TEST(Ways, RepeatedViasAreOnePlace) {
  const TrackMark to{1, 1, {4, 0}, 0, {}};
  const TrackMark once{0, 0, {0, 0}, 0, {Shape::smooth, {{2, 1}}, {}, 0, false}};
  const TrackMark often{0, 0, {0, 0}, 0, {Shape::smooth, {{0, 0}, {2, 1}, {2, 1}, {2, 1.00005}, {4, 0}}, {}, 0, false}};
  const auto a = waysBetween({once, to}), b = waysBetween({often, to});
  EXPECT_EQ(a->front().length(), b->front().length());
}

TEST(Ways, AClosedLoopThroughViasTravels) {
  const TrackMark from{0, 0, {0, 0}, 0, {Shape::straight, {{3, 0}, {3, 4}}, {}, 0, false}};
  const auto ways = waysBetween({from, {9, 9, {0, 0}, 0, {}}});
  EXPECT_DOUBLE_EQ(ways->front().length(), 12);
}

}  // namespace
}  // namespace wend::motion
