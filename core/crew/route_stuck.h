/// Why somebody has no route, in numbers: when and where it ends, how little they need be seen, and what would free it.
///
/// Frame     seconds from the take's start, plan metres. Amounts of time are whole steps of the ground's clock.
#pragma once

#include <optional>
#include <vector>

#include "core/crew/route_search.h"

namespace wend::crew {

/// A stretch of the least exposed route on which it is seen.
struct Exposure {
  Span span;
  Point at;  ///< where it begins
  /// Were what bars the route's cells then to begin so many seconds later, or to end so many earlier, this stretch
  /// would be clear. Nothing where a bar reaches to the take's end on that side.
  std::optional<double> laterBy, earlierBy;
};

/// What is worth trying.
struct FreeingLimits {
  double speed = 2;  ///< times the task's
  double early = 2;  ///< the seconds by which bars begin before sight does
  double late = 1;   ///< and end after it
};

struct Stuck {
  double until = 0;          ///< nobody unseen gets past this
  std::vector<Point> where;  ///< where one can be then
  /// None: even seen there is no route, and the rest of what is here tells of that: what is taken, and the needs.
  std::optional<ExposedRoute> least;
  std::vector<Exposure> exposures;

  // Each of these alone, the rest as it is, gives a route.
  std::vector<std::size_t> needs;  ///< dropping the need of that place in the task
  std::optional<double> speed;     ///< m/s
  std::optional<double> early;     ///< seconds of the early allowance given up
  std::optional<double> late;      ///< and of the late one
  bool anyEnd = false;             ///< ending anywhere
  bool anyStand = false;           ///< being outside `standWithin` and `walkWithin`
};

/// Requires  a task without a route.
/// Ensures   (1) everything said to free has been tried and has a route; (2) `early` and `late` are the fewest steps
///           that do; (3) `speed` is within 1 % of one that does not, and no more is promised, for a faster walker's
///           slowest brisk pace is faster too; (4) bars moved as an exposure says leave its stretch clear.
/// Error     where sights nearer together than the allowances were joined into one bar, giving up some of them may free
///           more than is said: bars shrink at their own two ends.
/// Fails     when cancelled: nothing.
/// Cost      some thirty searches.
std::optional<Stuck> whyStuck(const RouteTask& task, const FreeingLimits& limits = {}, const base::Cancel& cancel = {});

}  // namespace wend::crew
