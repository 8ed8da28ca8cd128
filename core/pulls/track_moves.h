/// The moves of a track, read off its knots. Seconds; values in the unit of the axis.
#pragma once

#include "core/pulls/fewest_moves.h"

namespace wend::pulls {

/// Maximal stretches between two holds, in order; a level stretch shorter than `shortestHold` is no hold unless it is
/// cut short by an end of the track. Eases are left at 0.
std::vector<Move> movesOf(const std::vector<Knot>& knots, double shortestHold);

}  // namespace wend::pulls
