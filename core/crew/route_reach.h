/// Where one can be at all, instant by instant: the route graph without its prices, which tells whether there is a
/// route at a fraction of what the cheapest one takes.
///
/// Tests     tests/property/route_search_test.cpp
#pragma once

#include <optional>
#include <vector>

#include "core/base/cancel.h"
#include "core/crew/route_sweep.h"

namespace wend::crew {

struct Reach {
  bool end = false;                ///< one of the ends is reached
  std::size_t furthest = 0;        ///< the last instant of any state that can be reached
  std::vector<std::size_t> cells;  ///< its cells, in order
};

/// Requires  as `sweep` does; maps of that input, whose prices, `clear` and `low` are not looked at.
/// Ensures   what a sweep without bound and limit would say. Whoever stands may set off and whoever walks may stop, so
///           that at every instant those who stand and those who walk can be in the same cells.
/// Fails     when cancelled, polled at every instant: nothing.
std::optional<Reach> reachOf(const SweepInput& input, const base::Cancel& cancel);

}  // namespace wend::crew
