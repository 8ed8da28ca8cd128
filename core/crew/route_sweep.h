/// The search under `route_search.h`: from instant to instant, all cells of one at once, states over an upper bound
/// left out and the bound raised until there is a route.
///
/// Frame     costs in whole millimetres; cells as the grid counts them.
/// Tests     tests/property/route_search_test.cpp
#pragma once

#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <vector>

#include "core/base/cancel.h"
#include "core/crew/cell_times.h"
#include "core/crew/move_set.h"
#include "core/geometry/bit_grid.h"

namespace wend::crew {

class CheapestStates;

/// Lengths as the graph counts them.
std::int64_t millimetres(double metres);

struct SweepInput {
  geometry::Grid grid;
  const CellTimes* stand = nullptr;  ///< may be stood on
  const CellTimes* move = nullptr;   ///< may be moved in
  const CellTimes* clear = nullptr;  ///< where No, a step costs `seenPrice` more; none: no step does
  const CellTimes* low = nullptr;    ///< the same for standing; none: `clear`
  const MoveSet* moves = nullptr;
  std::vector<std::size_t> starts, ends;  ///< no ends: anywhere
  std::int64_t perWalk = 3000, seenPrice = 0;
  std::vector<std::int64_t> standPrice;  ///< by cell; none: nothing
  bool tellsCheapest = false;            ///< the outcome has the states of all cheapest paths
  /// Of an outcome for the same task with ground as free or freer: paths no dearer than its own are looked for.
  std::shared_ptr<const CheapestStates> only;
};

/// One state of the graph.
struct RouteState {
  bool walking = false;
  std::size_t cell = 0, instant = 0;
  bool operator==(const RouteState&) const = default;
};

struct SweepOutcome {
  std::optional<std::int64_t> cost;                ///< of the path, when there is one
  std::shared_ptr<const CheapestStates> cheapest;  ///< when asked for, with a path through unseen ground
  std::vector<RouteState> path;                    ///< from the start to the end, one state for each end of an edge
  /// Without a path and without `only`: the last instant of any state that can be reached, and its cells in order.
  std::size_t furthest = 0;
  std::vector<std::size_t> furthestCells;
};

/// Requires  what is pointed to agrees with the grid in cells and with each other in steps.
/// Ensures   the path is a cheapest one, and the same for the same input.
/// Fails     when cancelled, polled at every instant: nothing.
std::optional<SweepOutcome> sweep(const SweepInput& input, const base::Cancel& cancel);

}  // namespace wend::crew
