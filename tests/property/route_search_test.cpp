/// Found routes against a plain Dijkstra and, on the smallest tasks, against every route there is.
#include <gtest/gtest.h>

#include <cstdio>
#include <random>

#include "tests/core/crew/route_reference.h"

namespace wend::crew {
namespace {

using Random = std::mt19937_64;

double uniform(Random& random, double low, double high) {
  return low + (high - low) * (static_cast<double>(random() >> 11) / 9007199254740992.0);
}
std::size_t below(Random& random, std::size_t count) {
  return static_cast<std::size_t>(uniform(random, 0, static_cast<double>(count)));
}

struct Size {
  int nx, ny;
  std::size_t steps;
  double radius;
  int bars;
};

/// Ground with random bars in time, taken cells and needs.
struct World {
  GroundTime ground;
  CellTimes need;
  RouteTask task;
  CellTimes stands{}, walks{};
};

void addBars(Random& random, World& world, int bars) {
  const std::size_t cells = world.ground.grid().cells(), steps = world.ground.clock().steps;
  for (int i = 0; i < bars; ++i) {
    const std::size_t from = below(random, steps), cell = below(random, cells);
    const Steps range{from, from + 1 + below(random, steps)};
    const double kind = uniform(random, 0, 1);
    if (kind < 0.6)
      world.ground.barSeen(cell,
                           {world.ground.clock().at(range.from) + 0.01, world.ground.clock().at(range.until) - 0.01});
    else if (kind < 0.8)
      world.ground.take(cell, range);
    else if (kind < 0.9)
      world.need.set(cell, range, false);
    else
      world.ground.take(cell, {0, steps});
  }
}

/// Cells in which one may crouch while the lens looks over them.
void addLow(Random& random, World& world) {
  const std::size_t cells = world.ground.grid().cells(), steps = world.ground.clock().steps;
  CellTimes low(cells, steps, false);
  for (std::size_t i = 0; i < cells / 3 + 1; ++i) {
    const std::size_t from = below(random, steps);
    low.set(below(random, cells), {from, from + 1 + below(random, steps)}, true);
  }
  world.ground.setLow(std::move(low));
}

/// Cells in which nobody may stand, and some of them in which nobody may walk.
void addStands(Random& random, World& world) {
  const std::size_t cells = world.ground.grid().cells(), steps = world.ground.clock().steps;
  world.stands = CellTimes(cells, steps, true);
  for (std::size_t i = 0; i < cells / 2 + 1; ++i) world.stands.set(below(random, cells), {0, steps}, false);
  world.stands.set(below(random, cells), {0, steps}, true);
  for (const std::size_t end : world.task.ends) world.stands.set(end, {0, steps}, true);
  world.walks = world.stands;
  for (std::size_t i = 0; i < cells / 2 + 1; ++i) world.walks.set(below(random, cells), {0, steps}, true);
  world.task.standWithin = &world.stands;
  world.task.walkWithin = &world.walks;
}

std::unique_ptr<World> randomWorld(Random& random, Size size) {
  const geometry::Grid grid{{0, 0}, 0.1, size.nx, size.ny};
  const StepClock clock{0, size.radius * 0.1 / 1.1, size.steps};
  auto world = std::make_unique<World>(
      World{GroundTime(grid, clock, 0.01), CellTimes(grid.cells(), size.steps, true), RouteTask{}});
  addBars(random, *world, size.bars);
  RouteTask& task = world->task;
  task.ground = &world->ground;
  task.perWalk = std::array{3.0, 0.3, 0.05}[below(random, 3)];
  task.starts = {below(random, grid.cells())};
  if (uniform(random, 0, 1) < 0.3) task.starts.push_back(below(random, grid.cells()));
  if (uniform(random, 0, 1) < 0.7) task.ends = {below(random, grid.cells())};
  if (uniform(random, 0, 1) < 0.5) task.needs = {&world->need};
  if (uniform(random, 0, 1) < 0.3)
    for (std::size_t i = 0; i < grid.cells(); ++i) task.standPrice.push_back(uniform(random, 0, 1) < 0.5 ? 0 : 0.25);
  // Chance of its own, so that worlds with and without are otherwise the same.
  Random aside(task.starts[0] + 1009 * size.steps + 1000003 * grid.cells());
  if (uniform(aside, 0, 1) < 0.4) addLow(aside, *world);
  if (uniform(aside, 0, 1) < 0.2) addStands(aside, *world);
  return world;
}

std::optional<double> metresOf(std::optional<std::int64_t> cost) {
  return cost ? std::optional(static_cast<double>(*cost) / 1000) : std::nullopt;
}

std::optional<double> costOf(const RouteAnswer& answer) {
  return answer.route ? std::optional(answer.route->cost) : std::nullopt;
}

/// What the route costs by the graph's edges, in millimetres, or nothing when it is none of the graph's routes.
std::optional<std::int64_t> priceOf(const RouteTask& task, const Route& route, std::int64_t seenPrice = 0) {
  const reference::Graph graph(task, seenPrice);
  const int wide = task.ground->grid().nx;
  // The dearest part is told apart by trying every state that shows the same cells.
  std::map<reference::State, std::int64_t> front, next;
  const auto relax = [](auto& states, const reference::State& s, std::int64_t cost) {
    const auto [it, isNew] = states.insert({s, cost});
    if (!isNew) it->second = std::min(it->second, cost);
  };
  for (const auto& s : graph.starts())
    if (graph.cellOf(s.x, s.y) == route.cells[0]) front[s] = 0;
  for (std::size_t k = 0; k <= route.walking.size(); ++k) {
    for (int pass = 0; pass < 2; ++pass) {
      const auto states = front;
      for (const auto& [s, cost] : states)
        graph.edges(s, [&, base = cost](const reference::State& to, std::int64_t price) {
          if (to.instant == k) relax(front, to, base + price);
        });
    }
    if (k == route.walking.size()) break;
    next.clear();
    for (const auto& [s, cost] : front) {
      graph.edges(s, [&, base = cost, walks = s.walking](const reference::State& to, std::int64_t price) {
        const auto cell = static_cast<std::size_t>(to.y * wide + to.x);
        if (to.instant == k + 1 && cell == route.cells[k + 1] && walks == route.walking[k])
          relax(next, to, base + price);
      });
    }
    front = next;
  }
  std::optional<std::int64_t> best;
  for (const auto& [s, cost] : front)
    if (graph.isEnd(s) && (!best || cost < *best)) best = cost;
  return best;
}

TEST(RouteSearchProperty, AgreesWithEveryRouteOfSmallTasks) {
  const std::uint64_t seed = 4101;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  Random random(seed);
  std::size_t routes = 0, found = 0;
  for (int i = 0; i < 1500; ++i) {
    const auto world =
        randomWorld(random, {3, 2 + int(below(random, 2)), 3 + below(random, 2), 1 + uniform(random, 0, 1.3), 7});
    const reference::Exhaustive every{reference::Graph(world->task)};
    ASSERT_EQ(costOf(*cheapestRoute(world->task)), metresOf(every.cost())) << "task " << i;
    routes += every.routes();
    found += every.cost().has_value();
  }
  EXPECT_GT(routes, 10000u);
  EXPECT_GT(found, 80u);
  EXPECT_LT(found, 1450u);
}

TEST(RouteSearchProperty, AgreesWithHeapDijkstra) {
  const std::uint64_t seed = 4102;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  Random random(seed);
  int found = 0;
  for (int i = 0; i < 3000; ++i) {
    const int nx = 2 + int(below(random, 9)), ny = 1 + int(below(random, 8));
    const std::size_t steps = below(random, 12) == 0 ? 60 + below(random, 90) : 1 + below(random, 25);
    const auto world = randomWorld(random, {nx, ny, steps, 1 + uniform(random, 0, 3), int(below(random, 90))});
    const auto expected = reference::dijkstra(reference::Graph(world->task));
    const auto answer = cheapestRoute(world->task, {.margin = i % 3 == 0 ? 2.0 : 0.0});
    ASSERT_EQ(costOf(*answer), metresOf(expected.cost)) << "task " << i;
    const auto outlook = outlookOf(world->task);
    ASSERT_EQ(outlook->exists, expected.cost.has_value()) << "task " << i;
    found += expected.cost.has_value();
    if (expected.cost) {
      ASSERT_EQ(priceOf(world->task, *answer->route), expected.cost) << "task " << i;
    } else {
      ASSERT_EQ(answer->deadEnd.instant, expected.furthest) << "task " << i;
      ASSERT_EQ(outlook->deadEnd.instant, expected.furthest) << "task " << i;
      ASSERT_EQ(outlook->deadEnd.cells, answer->deadEnd.cells) << "task " << i;
      ASSERT_EQ(answer->deadEnd.cells,
                std::vector<std::size_t>(expected.furthestCells.begin(), expected.furthestCells.end()));
    }
  }
  EXPECT_GT(found, 1000);
  EXPECT_LT(found, 2700);
}

/// Grounds wide enough for blocks of cells and long ways to bound what is still to pay.
TEST(RouteSearchProperty, AgreesWithHeapDijkstraOnWideGround) {
  const std::uint64_t seed = 4107;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  Random random(seed);
  int found = 0, far = 0;
  for (int i = 0; i < 60; ++i) {
    const int nx = 30 + int(below(random, 60)), ny = 8 + int(below(random, 20));
    const auto world = randomWorld(random, {nx, ny, 30 + below(random, 60), 2 + uniform(random, 0, 3), 0});
    addBars(random, *world, nx * ny * int(1 + below(random, 3)));
    const auto expected = reference::dijkstra(reference::Graph(world->task));
    const auto answer = cheapestRoute(world->task, {.margin = 0});
    ASSERT_EQ(costOf(*answer), metresOf(expected.cost)) << "task " << i;
    found += expected.cost.has_value();
    far += answer->route && answer->route->metres > 3;
    ASSERT_TRUE(!expected.cost || priceOf(world->task, *answer->route) == expected.cost) << "task " << i;
  }
  std::printf("%d routes, %d of them far\n", found, far);
  EXPECT_GT(found, 10);
  EXPECT_GT(far, 5);
}

TEST(RouteSearchProperty, IsSeenAsLittleAsHeapDijkstraSays) {
  const std::uint64_t seed = 4103;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  Random random(seed);
  const std::int64_t price = 1'000'000;
  int exposed = 0;
  for (int i = 0; i < 2000; ++i) {
    const int nx = 2 + int(below(random, 7)), ny = 1 + int(below(random, 6));
    const auto world =
        randomWorld(random, {nx, ny, 2 + below(random, 20), 1 + uniform(random, 0, 2), int(below(random, 90))});
    const auto expected = reference::dijkstra(reference::Graph(world->task, price));
    const auto answer = leastExposedRoute(world->task);
    ASSERT_EQ(answer->least.has_value(), expected.cost.has_value());
    if (!expected.cost) continue;
    ASSERT_EQ(static_cast<std::int64_t>(answer->least->seen.size()), *expected.cost / price) << "task " << i;
    ASSERT_NEAR(answer->least->route.cost, double(*expected.cost % price) / 1000, 1e-9);
    ASSERT_EQ(priceOf(world->task, answer->least->route, price), expected.cost);
    exposed += !answer->least->seen.empty();
  }
  EXPECT_GT(exposed, 200);
}

/// The margin found, held against looking at every margin with Dijkstra.
TEST(RouteSearchProperty, HasTheLargestMarginOfItsCost) {
  const std::uint64_t seed = 4104;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  Random random(seed);
  int wide = 0;
  for (int i = 0; i < 500; ++i) {
    const auto world = randomWorld(random, {6, 5, 10 + below(random, 20), 2.5, int(below(random, 30))});
    const double most = 3 * world->ground.clock().step;
    const auto answer = cheapestRoute(world->task, {.margin = most});
    if (!answer->route) continue;
    std::size_t expected = 0;
    for (std::size_t m = 1; m <= 3; ++m) {
      GroundTime stricter = world->ground;
      stricter.moveBars(long(m), long(m));
      RouteTask task = world->task;
      task.ground = &stricter;
      if (metresOf(reference::dijkstra(reference::Graph(task)).cost) != answer->route->cost) break;
      ASSERT_TRUE(answer->route->margin < m || priceOf(task, *answer->route)) << "task " << i;
      expected = m;
    }
    ASSERT_EQ(answer->route->margin, expected) << "task " << i;
    // It is the very route that a search from the start finds with bars so much longer.
    GroundTime longer = world->ground;
    longer.moveBars(long(expected), long(expected));
    RouteTask again = world->task;
    again.ground = &longer;
    ASSERT_EQ(answer->route->cells, cheapestRoute(again, {.margin = 0})->route->cells) << "task " << i;
    wide += expected > 0;
  }
  EXPECT_GT(wide, 50);
}

TEST(RouteSearchProperty, CancelledAtAnyPollPublishesNothing) {
  Random random(4105);
  const auto world = randomWorld(random, {20, 15, 60, 3, 400});
  world->task.ends.clear();
  const base::Cancel never;
  ASSERT_TRUE(cheapestRoute(world->task, {}, never));
  ASSERT_GT(never.polls(), 1);
  for (std::int64_t k = 1; k <= never.polls(); ++k)
    ASSERT_FALSE(cheapestRoute(world->task, {}, base::Cancel::atPoll(k))) << k;
  ASSERT_TRUE(cheapestRoute(world->task, {}, base::Cancel::atPoll(never.polls() + 1)));
  const base::Cancel seen;
  ASSERT_TRUE(leastExposedRoute(world->task, seen));
  for (std::int64_t k = 1; k <= seen.polls(); ++k)
    ASSERT_FALSE(leastExposedRoute(world->task, base::Cancel::atPoll(k))) << k;
}

TEST(RouteSearchProperty, GivesTheSameRouteAgain) {
  Random random(4106);
  for (int i = 0; i < 50; ++i) {
    const auto world = randomWorld(random, {12, 10, 40, 3, 100});
    const auto first = cheapestRoute(world->task), second = cheapestRoute(world->task);
    ASSERT_EQ(costOf(*first), costOf(*second));
    if (!first->route) continue;
    ASSERT_EQ(first->route->cells, second->route->cells);
    ASSERT_EQ(first->route->walking, second->route->walking);
  }
}

}  // namespace
}  // namespace wend::crew
