#include "core/crew/routes_together.h"

#include <gtest/gtest.h>

#include <random>

#include "core/crew/found_route.h"

namespace wend::crew {
namespace {

/// A hall without sight in it, for people of a radius.
GroundTime hall(double wide, double deep, double length, double speed, double radius) {
  const geometry::Grid grid = geometry::gridOver({{0, 0}, {wide, deep}}, 0.2);
  return GroundTime(grid, clockFor({0, length}, speed, grid.cell, 3), radius);
}

std::size_t cellAt(const GroundTime& ground, Point p) {
  return *ground.grid().cellAt(p);
}

RouteTask taskOf(const GroundTime& ground, double speed, Point from, Point to) {
  RouteTask task;
  task.ground = &ground;
  task.speed = speed;
  task.starts = {cellAt(ground, from)};
  task.ends = {cellAt(ground, to)};
  return task;
}

double nearest(const RouteTask& a, const Route& routeA, const RouteTask& b, const Route& routeB, double until) {
  const DrawnRoute one = drawnRoute(routeA, a.ground->grid(), a.ground->clock());
  const DrawnRoute two = drawnRoute(routeB, b.ground->grid(), b.ground->clock());
  double least = 1e9;
  for (double t = 0; t <= until; t += 0.01) least = std::min(least, geometry::distance(one.at(t), two.at(t)));
  return least;
}

TEST(RoutesTogether, TwoWhoChangePlacesPassEachOther) {
  const GroundTime first = hall(8, 3, 30, 1.1, 0.28), second = hall(8, 3, 30, 0.8, 0.3);
  const std::vector<RouteTask> tasks{taskOf(first, 1.1, {1, 1.5}, {7, 1.5}), taskOf(second, 0.8, {7, 1.5}, {1, 1.5})};
  const auto routes = routesTogether(tasks, {});
  ASSERT_TRUE(routes->people[0].route && routes->people[1].route);
  EXPECT_GE(nearest(tasks[0], *routes->people[0].route, tasks[1], *routes->people[1].route, 30), 0.58);
  for (std::size_t i = 0; i < 2; ++i)
    EXPECT_TRUE(reportOf(*routes->people[i].route, routes->grounds[i], tasks[i].speed).holds()) << i;
}

TEST(RoutesTogether, InALaneTooNarrowToPassTheSecondFindsNone) {
  const GroundTime first = hall(8, 0.8, 30, 1, 0.28), second = first;
  const std::vector<RouteTask> tasks{taskOf(first, 1, {1, 0.3}, {7, 0.3}), taskOf(second, 1, {7, 0.3}, {1, 0.3})};
  const auto routes = routesTogether(tasks, {});
  EXPECT_TRUE(routes->people[0].route);
  EXPECT_FALSE(routes->people[1].route);
}

TEST(RoutesTogether, TheFirstMakesRoomForWhoCannot) {
  // The second may not be planned before the first has gone; planned again, nobody is worse off than at first.
  const GroundTime ground = hall(8, 3, 40, 1, 0.28);
  const std::vector<RouteTask> tasks{taskOf(ground, 1, {1, 1.5}, {7, 1.5}), taskOf(ground, 1, {3, 1.5}, {7, 2.5})};
  const auto routes = routesTogether(tasks, {});
  ASSERT_TRUE(routes->people[0].route && routes->people[1].route);
  EXPECT_LE(routes->people[0].route->cost, cheapestRoute(tasks[0])->route->cost + 1e-9);
  EXPECT_GE(routes->rounds, 2);
}

TEST(RoutesTogether, AShelterHoldsAsManyAsItHolds) {
  const GroundTime ground = hall(6, 6, 30, 1, 0.28);
  const Point shelter{3, 3};
  const auto two = [&](int holds) {
    const std::vector<RouteTask> tasks{taskOf(ground, 1, {1, 1}, shelter), taskOf(ground, 1, {5, 5}, shelter)};
    const std::vector<SharedShelter> shelters{{shelter, 0.6, holds}};
    return routesTogether(tasks, shelters).value();
  };
  EXPECT_TRUE(two(2).people[1].route);
  EXPECT_FALSE(two(1).people[1].route);
}

TEST(RoutesTogether, WhoPacesInAShelterTakesUpAPlaceInIt) {
  const GroundTime ground = hall(6, 6, 30, 1, 0.28);
  const Point shelter{3, 3};
  // Both have to be in the shelter from 10 s to 20 s; nobody says that they have to stand there.
  std::vector<std::size_t> inside;
  for (std::size_t cell = 0; cell < ground.grid().cells(); ++cell)
    if (geometry::distance(ground.grid().centre(cell), shelter) <= 1.2) inside.push_back(cell);
  const CellTimes stays = onlyAt(inside, ground.clock().meeting({10, 20}), ground.grid(), ground.clock());
  std::vector<RouteTask> tasks{taskOf(ground, 1, {1, 1}, {1, 1}), taskOf(ground, 1, {5, 5}, {5, 5})};
  for (auto& task : tasks) task.needs = {&stays};
  const auto foundFor = [&](int holds) {
    const std::vector<SharedShelter> shelters{{shelter, 1.2, holds}};
    return routesTogether(tasks, shelters)->people[1].route.has_value();
  };
  EXPECT_TRUE(foundFor(2));
  EXPECT_FALSE(foundFor(1)) << "to and fro inside is inside";
}

TEST(RoutesTogether, WhatIsRememberedIsWhatWouldBeFound) {
  const GroundTime ground = hall(6, 6, 30, 1, 0.28);
  const std::vector<RouteTask> tasks{taskOf(ground, 1, {1, 1}, {5, 5}), taskOf(ground, 1, {5, 5}, {1, 1}),
                                     taskOf(ground, 1, {1, 5}, {5, 1})};
  RouteMemory memory;
  const NamedTasks named{{0, 1, 2}, &memory};
  const base::Cancel first, second;
  const auto plain = routesTogether(tasks, {}), found = routesTogether(tasks, {}, {}, first, named),
             remembered = routesTogether(tasks, {}, {}, second, named);
  EXPECT_LT(second.polls(), first.polls() / 10);
  for (const auto* routes : {&found, &remembered}) {
    EXPECT_EQ((*routes)->rounds, plain->rounds);
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      EXPECT_EQ((*routes)->people[i].route->cells, plain->people[i].route->cells) << i;
      EXPECT_EQ((*routes)->people[i].route->margin, plain->people[i].route->margin) << i;
      EXPECT_EQ((*routes)->grounds[i].stand(), plain->grounds[i].stand()) << i;
      EXPECT_EQ((*routes)->grounds[i].move(), plain->grounds[i].move()) << i;
    }
  }
}

TEST(RoutesTogether, AnotherTaskIsAnotherQuestion) {
  const GroundTime ground = hall(6, 6, 30, 1, 0.28);
  RouteMemory memory;
  const std::vector<RouteTask> here{taskOf(ground, 1, {1, 1}, {5, 5})}, there{taskOf(ground, 1, {1, 1}, {5, 1})};
  const auto one = routesTogether(here, {}, {}, {}, {{0}, &memory});
  const auto two = routesTogether(there, {}, {}, {}, {{1}, &memory});
  EXPECT_NE(one->people[0].route->cells.back(), two->people[0].route->cells.back());
}

TEST(RoutesTogether, CancelledAtAnyPollPublishesNothing) {
  const GroundTime ground = hall(4, 3, 12, 1, 0.28);
  const std::vector<RouteTask> tasks{taskOf(ground, 1, {1, 1}, {3, 2}), taskOf(ground, 1, {3, 1}, {1, 2})};
  const base::Cancel never;
  ASSERT_TRUE(routesTogether(tasks, {}, {}, never));
  for (std::int64_t k = 1; k <= never.polls(); k += 7)
    ASSERT_FALSE(routesTogether(tasks, {}, {}, base::Cancel::atPoll(k))) << k;
}

}  // namespace
}  // namespace wend::crew
