/// Routes for several people who must not meet.
///
/// Frame     everyone has their own ground with their own clock, without the others of the list in it.
#pragma once

#include <span>

#include "core/crew/route_search.h"

namespace wend::crew {

/// Who stands within `radius` of `pos` is in the shelter; it holds so many.
struct SharedShelter {
  Point pos;
  double radius = 0.5;
  int holds = 1;
};

struct CrewRoutes {
  std::vector<RouteAnswer> people;  ///< in the order of the tasks
  std::vector<GroundTime> grounds;  ///< for each, the ground with all the others in it
  int rounds = 0;                   ///< how often everyone was planned
};

/// Everyone in order of the list, past those before them; then everyone again past all the others, for as long as that
/// makes a route cheaper, or wider in its margin at the same cost, or finds one at all.
///
/// Requires  as `cheapestRoute` does of every task.
/// Ensures   (1) two people are never nearer than their radii, but for (2); (2) somebody who stands in a shelter that
///           holds one more is in nobody's way, and nobody stands in one that is full; (3) no route is dearer than the
///           one first found; (4) nobody can do better alone, the others as they are; (5) same input, same routes.
/// Stops holding as the best for all together: that may need two to change at once.
/// Fails     when cancelled: nothing.
std::optional<CrewRoutes> routesTogether(std::span<const RouteTask> tasks, std::span<const SharedShelter> shelters,
                                         const RouteLimits& limits = {}, const base::Cancel& cancel = {});

}  // namespace wend::crew
