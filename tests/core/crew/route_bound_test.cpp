#include "core/crew/route_bound.h"

#include <gtest/gtest.h>

#include <limits>
#include <random>

#include "tests/core/crew/route_reference.h"

namespace wend::crew {
namespace {

/// The least cost from every state to the end, instant by instant backwards over the plain graph.
std::vector<double> toGo(const reference::Graph& graph, std::size_t steps, std::size_t cells) {
  std::vector<double> best(graph.states(), std::numeric_limits<double>::infinity());
  for (std::size_t instant = steps + 1; instant-- > 0;) {
    for (std::size_t cell = 0; cell < cells; ++cell)
      for (const bool walking : {false, true}) {
        const std::size_t index = (instant * cells + cell) * 2 + walking;
        if (graph.isEnd(graph.state(index))) best[index] = 0;
      }
    // Standing and walking change into each other at one instant: twice round is enough.
    for (int round = 0; round < 2; ++round)
      for (std::size_t k = instant * cells * 2; k < (instant + 1) * cells * 2; ++k)
        graph.edges(graph.state(k), [&](const reference::State& to, std::int64_t price) {
          best[k] = std::min(best[k], best[graph.index(to)] + static_cast<double>(price));
        });
  }
  return best;
}

TEST(RouteBound, IsNeverMoreThanWhatIsStillToPay) {
  const std::uint64_t seed = 61;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  double tight = 0, all = 0;
  for (int i = 0; i < 60; ++i) {
    const geometry::Grid plain{{0, 0}, 0.1, 5 + int(random() % 25), 3 + int(random() % 9)};
    const std::size_t steps = 8 + random() % 20, cells = plain.cells();
    GroundTime ground(plain, {0, (1.5 + double(random() % 4)) * 0.1, steps}, 0.01);
    for (std::size_t k = 0; k < cells; ++k) {
      const std::size_t from = random() % steps;
      ground.take(random() % cells, {from, from + random() % steps});
    }
    RouteTask task;
    task.ground = &ground;
    task.speed = 1;
    task.starts = {0};
    if (i % 2) task.ends = {random() % cells, random() % cells};
    const MoveSet moves = movesOf(task);
    const BorderedGrid grid(plain, moves.reach());
    const StepMaps stand(ground.stand(), grid), move(ground.move(), grid);
    RouteBound::Input input{stand, move, moves, steps, {}, 3000, plain.cell};
    for (const std::size_t cell : task.ends) input.ends.push_back(grid.bitOf(cell));
    const RouteBound bound(grid, input);
    const std::vector<double> exact = toGo(reference::Graph(task), steps, cells);
    for (std::size_t instant = 0; instant <= steps; ++instant) {
      for (std::size_t cell = 0; cell < cells; ++cell) {
        const std::size_t bit = grid.bitOf(cell), block = bit % 64 / RouteBound::kBlock;
        const std::size_t index = (instant * cells + cell) * 2;
        const double standing = bound.standing(instant, bit / 64)[block],
                     walking = bound.walking(instant, bit / 64)[block];
        ASSERT_LE(standing, exact[index]) << i;
        ASSERT_LE(walking, exact[index + 1]) << i;
        if (exact[index] == 0 || exact[index] > 1e9) continue;
        tight += standing / exact[index];
        ++all;
      }
    }
  }
  std::printf("the bound is %.2f of what is to pay where something is\n", tight / all);
  EXPECT_GT(tight / all, 0.4);
}

}  // namespace
}  // namespace wend::crew
