#include "core/crew/route_search.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/crew/ground_text.h"

namespace wend::crew {
namespace {

using text::written;

Route routeOf(const RouteTask& task) {
  return cheapestRoute(task)->route.value();
}

TEST(CheapestRoute, WhoNeedNotMoveStands) {
  const auto ground = written({{5, {"A.."}}});
  const Route route = routeOf(ground.task());
  EXPECT_EQ(route.cost, 0);
  EXPECT_EQ(route.walks, 0);
  EXPECT_EQ(route.cells, std::vector<std::uint32_t>(6, 0));
}

TEST(CheapestRoute, PaysForMetresAndForTheWalk) {
  const auto ground = written({{6, {"A..Z"}}});
  const Route route = routeOf(ground.task());
  EXPECT_DOUBLE_EQ(route.cost, 3 + 3);
  EXPECT_DOUBLE_EQ(route.metres, 3);
  EXPECT_EQ(route.walks, 1);
}

TEST(CheapestRoute, HasNoMoreTimeThanTheTakeLasts) {
  EXPECT_TRUE(cheapestRoute(written({{3, {"A..Z"}}}).task())->route);
  const auto answer = cheapestRoute(written({{2, {"A..Z"}}}).task());
  EXPECT_FALSE(answer->route);
  EXPECT_EQ(answer->deadEnd.instant, 2u);
  EXPECT_EQ(answer->deadEnd.cells, (std::vector<std::size_t>{0, 1, 2}));
}

TEST(CheapestRoute, LeavesBeforeItsPlaceIsSeenAndStopsOnceItIsOutOfSight) {
  const auto ground = written({{3, {"A..."}}, {4, {"oo.."}}, {4, {"...."}}});
  const Route route = routeOf(ground.task());
  EXPECT_DOUBLE_EQ(route.cost, 3 + 2);
  EXPECT_EQ(route.cells[3], 2u) << "gone by the end of the third step";
  EXPECT_EQ(route.cells.back(), 2u);
}

TEST(CheapestRoute, CrouchesWhereTheLensLooksOverAndWalksUprightOnly) {
  // All of it is seen in the middle steps; the second cell is a shelter to
  // crouch in.
  auto ground = written({{2, {"A..."}}, {3, {"oooo"}}, {3, {"...."}}});
  EXPECT_FALSE(cheapestRoute(ground.task())->route);
  CellTimes low(4, 8, false);
  low.set(1, {0, 8}, true);
  ground.ground.setLow(low);
  const Route route = routeOf(ground.task());
  EXPECT_EQ(route.walks, 1);
  for (std::size_t step = 2; step < 5; ++step) {
    EXPECT_EQ(route.cells[step], 1u);
    EXPECT_FALSE(route.walking[step]) << "nobody walks while seen, low or not";
  }
  EXPECT_TRUE(seenSteps(route, ground.ground).empty());
  // One cell further on it is of no use: two steps do not lead there and back
  // out of sight.
  CellTimes away(4, 8, false);
  away.set(3, {0, 8}, true);
  ground.ground.setLow(away);
  EXPECT_FALSE(cheapestRoute(ground.task())->route);
}

TEST(CheapestRoute, GoesRoundWhatIsTaken) {
  const auto ground = written({{20, {".....", ".###.", "A###Z"}}}, 1);
  EXPECT_DOUBLE_EQ(routeOf(ground.task()).metres, 8) << "moves of one cell do not lead across corners";
}

TEST(CheapestRoute, StraightAcrossBeatsEightDirections) {
  // Five columns and two rows away with moves of up to six cells: one straight move of sqrt(29) metres.
  const auto ground = written({{2, {".....Z", "......", "A....."}}}, 6);
  EXPECT_NEAR(routeOf(ground.task()).metres, std::sqrt(29), 1e-9);
  EXPECT_NEAR(routeOf(ground.task()).cost, 3 + std::sqrt(29), 5e-4);
}

TEST(CheapestRoute, NobodyCutsACorner) {
  // The straight way from corner to corner passes the taken cell in the middle.
  const auto ground = written({{6, {"..Z", ".#.", "A.."}}}, 3);
  EXPECT_GT(routeOf(ground.task()).metres, 2 * std::sqrt(2) + 0.1);
}

TEST(CheapestRoute, NobodyWalksWhileTheirWayIsSeen) {
  // The middle is seen in every step but the fourth.
  const auto ground = written({{3, {"AoZ"}}, {1, {"..."}}, {3, {".o."}}}, 2);
  const Route route = routeOf(ground.task());
  EXPECT_EQ(route.cells, (std::vector<std::uint32_t>{0, 0, 0, 0, 2, 2, 2, 2}));
}

TEST(CheapestRoute, NobodyCreepsToSaveAStop) {
  // Until the sixth step the end is seen. Creeping one cell of four at a time would do without a stop.
  const auto ground = written({{6, {"Aoooooo.........Z"}}, {6, {"A...............Z"}}}, 4);
  const Route route = routeOf(ground.task(0.01));
  for (std::size_t step = 0; step < route.walking.size(); ++step) {
    const bool goesOn = step + 1 < route.walking.size() && route.walking[step] && route.walking[step + 1];
    EXPECT_TRUE(!goesOn || std::abs(int(route.cells[step + 1]) - int(route.cells[step])) >= 2) << step;
  }
  EXPECT_EQ(route.walks, 1);
}

TEST(CheapestRoute, TwoShortWalksArePreferredToALongOneOnlyWhileWalksAreCheap) {
  // The way to the shelter on the right is open early; it is seen late. Between, the left one is seen.
  const auto ground = written({{2, {"A......."}}, {2, {"oooooo.."}}, {8, {"........"}}, {2, {"......oo"}}}, 3);
  EXPECT_EQ(routeOf(ground.task(3)).walks, 2);
}

TEST(CheapestRoute, KeepsItsNeeds) {
  auto ground = written({{10, {"A........Z"}}});
  const auto only = onlyAt({4}, {4, 5}, ground.ground.grid(), ground.ground.clock());
  RouteTask task = ground.task();
  task.needs = {&only};
  const Route route = routeOf(task);
  EXPECT_EQ(route.cells[4], 4u);
  EXPECT_EQ(route.cells[5], 4u);
  EXPECT_EQ(route.walks, 2);
  EXPECT_DOUBLE_EQ(route.cost, 9 + 6);
}

TEST(CheapestRoute, PrefersAShelterWhereStandingElsewhereCosts) {
  const auto ground = written({{3, {"A...."}}, {4, {"oo..."}}});
  RouteTask task = ground.task();
  EXPECT_EQ(routeOf(task).cells.back(), 2u);
  task.standPrice = {2, 2, 2, 0, 2};
  EXPECT_EQ(routeOf(task).cells.back(), 3u);
  EXPECT_DOUBLE_EQ(routeOf(task).cost, 3 + 3);
}

TEST(CheapestRoute, OfEqualCostTakesTheOneWithTheMostMargin) {
  // Both ends are two metres away; the way to the left one is seen soon after.
  const auto ground = written({{10, {"Z.A.Z"}}, {2, {"...o."}}, {10, {"....."}}});
  const auto left = routeOf(ground.task());
  EXPECT_EQ(left.cells.back(), 0u);
  EXPECT_EQ(left.margin, 10u) << "the most that is looked for: ten seconds";
  RouteTask right = ground.task();
  right.ends = {4};
  EXPECT_EQ(routeOf(right).margin, 8u) << "past in the first two steps, seen from the tenth on";
}

TEST(CheapestRoute, ItsMarginIsHowMuchSoonerAndLonger) {
  // Between the fourth and the ninth step the middle is free; passing takes two.
  const auto ground = written({{4, {"A.o.Z"}}, {6, {"....."}}, {4, {"..o.."}}});
  EXPECT_EQ(routeOf(ground.task()).margin, 2u);
}

TEST(CheapestRoute, NoStartMeansNoState) {
  const auto ground = written({{3, {"A."}}, {2, {"oo"}}});
  const auto answer = cheapestRoute(ground.task());
  EXPECT_FALSE(answer->route);
  EXPECT_EQ(answer->deadEnd.instant, 3u);
  EXPECT_EQ(answer->deadEnd.cells.size(), 2u);
}

TEST(LeastExposedRoute, CountsSeenStepsBeforeMetres) {
  // Straight on one is seen for three steps, the long way round for one.
  const auto ground =
      written({{30, {"..........", ".########.", "A.ooo....Z"}}, {1, {"oooooooooo", "oooooooooo", "oooooooooo"}}});
  const auto answer = leastExposedRoute(ground.task());
  ASSERT_TRUE(answer->least);
  EXPECT_EQ(answer->least->seen, std::vector<std::size_t>{30});
  EXPECT_DOUBLE_EQ(answer->least->seconds, 1);
  EXPECT_DOUBLE_EQ(answer->least->route.metres, 13);
  EXPECT_DOUBLE_EQ(answer->least->route.cost, 13 + 3);
}

TEST(LeastExposedRoute, NeverEntersWhatIsTaken) {
  const auto ground = written({{9, {"A.#.Z"}}});
  const auto answer = leastExposedRoute(ground.task());
  EXPECT_FALSE(answer->least);
  EXPECT_EQ(answer->deadEnd.instant, 9u);
  EXPECT_EQ(answer->deadEnd.cells, (std::vector<std::size_t>{0, 1}));
}

}  // namespace
}  // namespace wend::crew
