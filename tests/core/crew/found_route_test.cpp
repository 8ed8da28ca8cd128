#include "core/crew/found_route.h"

#include <gtest/gtest.h>

#include "tests/core/crew/ground_text.h"

namespace wend::crew {
namespace {

const Route kRoute{{0, 0, 1, 2, 2, 2, 1}, {false, true, true, false, false, true}, 3, 2, 9, 0};
const geometry::Grid kGrid{{0, 0}, 1, 4, 1};
const StepClock kClock{10, 1, 6};

TEST(StandsOf, AreTheStretchesWithoutWalking) {
  EXPECT_EQ(standsOf(kRoute), (std::vector<Steps>{{0, 1}, {3, 5}, {6, 6}}));
}

TEST(DrawnRoute, GoesStraightFromInstantToInstant) {
  const DrawnRoute drawn = drawnRoute(kRoute, kGrid, kClock);
  EXPECT_EQ(drawn.stands, (std::vector<Span>{{10, 11}, {13, 15}, {16, 16}}));
  EXPECT_NEAR(drawn.at(11.5).x, 1.0, 1e-12);
  EXPECT_NEAR(drawn.at(16).x, 1.5, 1e-12);
  EXPECT_NEAR(drawn.at(10).x, 0.5, 1e-12);
}

TEST(CornersOf, JoinStraightStretches) {
  const auto corners = cornersOf(kRoute, {1, 3}, kGrid, kClock);
  ASSERT_EQ(corners.size(), 2u);
  EXPECT_EQ(corners[0].at, (Point{0.5, 0.5}));
  EXPECT_EQ(corners[1].at, (Point{2.5, 0.5}));
  EXPECT_EQ(corners[1].time, 13);
  EXPECT_EQ(cornersOf(kRoute, {4, 6}, kGrid, kClock).size(), 3u) << "it turns back";
}

TEST(FoundRoute, HoldsAndTellsItsSlips) {
  // The way is two metres; the start is seen from 6 s on, the end until 3 s.
  const auto ground = text::written({{3, {"A.o"}}, {3, {"..Z"}}, {4, {"o.."}}});
  RouteTask task = ground.task();
  task.ends = {2};
  const Route route = cheapestRoute(task)->route.value();
  const RouteReport report = reportOf(route, ground.ground, task.speed, 0.02);
  EXPECT_TRUE(report.holds());
  ASSERT_EQ(report.walks.size(), 1u);
  EXPECT_NEAR(report.walks[0].metres, 2, 1e-9);
  EXPECT_NEAR(report.walks[0].peakSpeed, 1, 1e-9);
  // Half a metre and half a second past the start's cell; a metre and a half into the end's.
  EXPECT_NEAR(report.walks[0].latestLeave.value(), 5.5, 0.03);
  EXPECT_NEAR(report.walks[0].earliestArrive.value(), 3.5, 0.03);
}

}  // namespace
}  // namespace wend::crew
