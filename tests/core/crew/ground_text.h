/// Small grounds written as text: one picture for each step, rows from the north.
///   .  free        #  taken      o  seen      A  free, a start      Z  free, an end
#pragma once

#include <string>
#include <vector>

#include "core/crew/route_search.h"

namespace wend::crew::text {

struct Written {
  GroundTime ground;
  std::vector<std::size_t> starts, ends;

  RouteTask task(double perWalk = 3) const {
    RouteTask task;
    task.ground = &ground;
    task.speed = 1;
    task.perWalk = perWalk;
    task.starts = starts;
    task.ends = ends;
    return task;
  }
};

using Picture = std::vector<std::string>;

/// Cells of a metre and steps of `cells` seconds, so that somebody at 1 m/s walks `cells` cells in one.
/// `pictures` are each shown for the number of steps that goes with them.
inline Written written(const std::vector<std::pair<std::size_t, Picture>>& pictures, double cells = 1) {
  std::size_t steps = 0;
  for (const auto& [count, picture] : pictures) steps += count;
  const Picture& first = pictures.front().second;
  const geometry::Grid grid{{0, 0}, 1, static_cast<int>(first.front().size()), static_cast<int>(first.size())};
  Written made{GroundTime(grid, {0, cells, steps}, 0.1), {}, {}};
  std::size_t step = 0;
  for (const auto& [count, picture] : pictures) {
    for (std::size_t cell = 0; cell < grid.cells(); ++cell) {
      const auto wide = static_cast<std::size_t>(grid.nx);
      const char c = picture[picture.size() - 1 - cell / wide][cell % wide];
      const Steps range{step, step + count};
      if (c == '#') made.ground.take(cell, range);
      if (c == 'o')
        made.ground.barSeen(cell, {made.ground.clock().at(step) + 0.01, made.ground.clock().at(step + count) - 0.01});
      if (c == 'A' && step == 0) made.starts.push_back(cell);
      if (c == 'Z' && step == 0) made.ends.push_back(cell);
    }
    step += count;
  }
  return made;
}

}  // namespace wend::crew::text
