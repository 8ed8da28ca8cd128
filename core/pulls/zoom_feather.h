/// How a zoom begins, ends and turns round so that nobody minds: feathers, and the time between two.
///
/// Source    common practice, no source: a zoom is feathered for a second at each end and not turned round within four.
/// Stops     knowing what the eye looks at; what hides a zoom altogether is in cover.h.
#pragma once

#include <cstddef>
#include <vector>

#include "core/pulls/fewest_moves.h"

namespace wend::pulls {

inline constexpr double kZoomFeather = 1.0;   ///< seconds at each end
inline constexpr double kZoomReversal = 4.0;  ///< seconds between the end of a zoom and the start of one back

/// Which moves turn round sooner than `apart` seconds after the one before ended: their places in the list.
/// Requires  moves in order
std::vector<std::size_t> reversals(const std::vector<Move>& moves, double apart = kZoomReversal);

}  // namespace wend::pulls
