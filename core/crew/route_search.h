/// The cheapest route through ground that is free only at times: where one person stands and when they walk, so as
/// never to be seen or in the way and to keep what they need.
///
/// The graph. A state is (cell, instant, standing or walking); instants 0 .. n part the n steps of the ground's clock.
///   stand     (c, k, standing) -> (c, k + 1, standing) costs nothing; c may be stood on, or crouched on where the
///             ground says so, during step k, and is not outside `standWithin`.
///   set off   (c, k, standing) -> (c, k, walking) costs `perWalk`.
///   walk      (c, k, walking) -> (c + d, k + 1, walking) costs |d| metres; d is a brisk move of the set, and every
///             cell that the straight way passes may be moved in during step k and is not outside `walkWithin`.
///   arrive    (c, k, walking) -> (c, k, standing), and by a move d that is not brisk, |d| metres long, under the same
///             terms (c, k, walking) -> (c + d, k + 1, standing).
/// A route leads from a standing start at instant 0 to a standing end at instant n, the one not outside `standWithin`
/// during the first step, the other during the last. Nobody creeps: every step of a walk
/// but its last is at least half as fast as allowed. Moves are those within `speed` times a step: what that gives away
/// against any direction and pace is in `move_set.h`.
///
/// Units     lengths count in whole millimetres, so a step's length is rounded by half of one at most, and the optimum
///           is one of these rounded costs; `metres` is not rounded.
/// Method    dynamic programming from instant to instant, which is exact because every edge but the two that change
///           between standing and walking leads one instant on. Feasibility is worked out for 64 cells at once, cell by
///           cell along the tree of moves, so that a blocked cell cuts off all moves through it; costs follow only
///           where something is feasible, eight cells at once. A state whose cost and bound from below on what is still
///           to pay
///           (`route_bound.h`) exceed an upper bound is left out, and the upper bound is raised until there is a route:
///           one within the bound is the optimum, for no state of it can have been left out. Whether there is any is
///           asked without prices (`route_reach.h`) once the first bound has failed; margins are looked for among the
///           states of the cheapest routes (`cheapest_states.h`).
///           Rejected: label setting by cost with the instants of each cell as bits, which would settle a cell for all
///           its instants at once. Since nobody may creep, almost every state has a cost of its own, the sets held an
///           instant each, and it was hardly faster than a heap. Rejected as well: states of a cell and a clear window
///           instead of an instant; somebody on their way cannot wait, so walking needs the instant after all.
/// Source    R. Bellman, Dynamic Programming, 1957, from memory.
/// Cost      live words of 64 cells times instants times the move tree; memory 512 bytes for each of those words.
#pragma once

#include <optional>
#include <vector>

#include "core/base/cancel.h"
#include "core/crew/ground_time.h"
#include "core/crew/move_set.h"

namespace wend::crew {

struct RouteTask {
  const GroundTime* ground = nullptr;
  double speed = 1.1;                   ///< m/s at most
  double perWalk = 3;                   ///< metres that one walk more is worth
  std::vector<std::size_t> starts;      ///< cells
  std::vector<std::size_t> ends;        ///< none: anywhere
  std::vector<const CellTimes*> needs;  ///< all of them Yes wherever the person is
  /// Yes where the person may stand, and where they may walk. None: anywhere.
  const CellTimes *standWithin = nullptr, *walkWithin = nullptr;
  /// Metres it costs to end a walk at a cell, beside shelters say. None: nothing.
  std::vector<double> standPrice;
};

/// Where somebody is at every instant, and in which steps they walk.
struct Route {
  std::vector<std::uint32_t> cells;  ///< one an instant
  std::vector<bool> walking;         ///< one a step
  double metres = 0;
  int walks = 0;
  double cost = 0;  ///< the optimum: metres, `perWalk` for each walk, and the prices of stands
  /// Whole steps by which everything seen could be seen sooner and stay seen later with a route of this cost still
  /// there: this one. The most of all routes of this cost, up to `RouteLimits::margin`.
  std::size_t margin = 0;
};

struct RouteLimits {
  double margin = 10;  ///< seconds up to which a larger margin is looked for; 0 for none
};

/// The last that could be reached where no route is.
struct DeadEnd {
  std::size_t instant = 0;         ///< nobody gets past it
  std::vector<std::size_t> cells;  ///< where one can be at it, in order
};

struct RouteAnswer {
  std::optional<Route> route;
  DeadEnd deadEnd;  ///< when there is none
};

/// Requires  a ground, at least one start; sizes that agree; speed times a step of at least one cell; `standWithin` Yes
///           somewhere in the last step, and at every end given.
/// Ensures   (1) the route is one of the graph and no route of it costs less; (2) no route of that cost has a larger
///           margin; (3) without an answer there is no route, and the dead end is the last instant of any state that
///           can be reached; (4) the same task gives the same route.
/// Fails     when cancelled: nothing.
std::optional<RouteAnswer> cheapestRoute(const RouteTask& task, const RouteLimits& limits = {},
                                         const base::Cancel& cancel = {});

/// Whether there is a route, and where it ends when not.
struct RouteOutlook {
  bool exists = false;
  DeadEnd deadEnd;  ///< when there is none
};

/// As `cheapestRoute` would answer, without asking what the route costs: many times quicker.
/// Requires  the same.
/// Fails     when cancelled: nothing.
std::optional<RouteOutlook> outlookOf(const RouteTask& task, const base::Cancel& cancel = {});

/// The route on which one is seen least, for ground where none stays unseen.
struct ExposedRoute {
  Route route;
  std::vector<std::size_t> seen;  ///< the steps in which one is seen, in order
  double seconds = 0;
};
struct ExposureAnswer {
  std::optional<ExposedRoute> least;  ///< none: what is taken and the needs leave no route, seen or not
  DeadEnd deadEnd;                    ///< when there is none
};

/// Needs and what is taken hold; being seen is allowed but counted before all else.
///
/// Ensures   no route of the graph is seen in fewer steps, and of those none costs less.
/// Fails     when cancelled: nothing.
/// Cost      as above, times the least number of seen steps plus one.
std::optional<ExposureAnswer> leastExposedRoute(const RouteTask& task, const base::Cancel& cancel = {});

/// The moves a task's speed allows in one step.
MoveSet movesOf(const RouteTask& task);

/// The cells of a step of a route: the one stood in, or all passed, in order.
std::vector<std::size_t> cellsOf(const Route& route, std::size_t step, const geometry::Grid& grid);

/// The steps in which a route is somewhere not clear: stands in a cell that is not low, or walks through one that is
/// not clear.
std::vector<std::size_t> seenSteps(const Route& route, const GroundTime& ground);

}  // namespace wend::crew
