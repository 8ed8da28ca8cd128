/// What a change of iris or zoom needs around it to pass unseen, by how fast it is.
///
/// Source    common practice, no source: the iris hides at up to a quarter of a stop a second in any moving frame, to a
///           half under a pan or travel, to one under a doorway, a crossing body or a light cue, faster only under full
///           cover. A zoom is feathered for a second at each end and not turned round within four.
/// Stops     knowing what the eye looks at.
#pragma once

#include <cstddef>
#include <vector>

#include "core/pulls/fewest_moves.h"

namespace wend::pulls {

/// From least to most.
enum class Cover { movingFrame, panOrTravel, doorwayOrCue, full };

/// Requires  a finite rate, of either sign, in stops a second
Cover coverForIris(double stopsPerSecond);

inline constexpr double kZoomFeather = 1.0;   ///< seconds at each end
inline constexpr double kZoomReversal = 4.0;  ///< seconds between the end of a zoom and the start of one back

/// Seconds a zoom by this ratio takes when its middle runs at `perSecond`, the change of the logarithm to base e of the
/// focal length a second, and each end is feathered evenly for kZoomFeather. A zoom too small for that rate takes the
/// two feathers.
///
/// Requires  ratio > 0, perSecond > 0
double featheredSeconds(double ratio, double perSecond);

/// Which moves turn round sooner than kZoomReversal after the one before ended: their places in the list.
/// Requires  moves in order
std::vector<std::size_t> reversals(const std::vector<Move>& moves);

}  // namespace wend::pulls
