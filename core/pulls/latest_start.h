/// How late a hand may start a move and still stay inside the tube. Seconds; values in the unit of the tube.
#pragma once

#include <cstddef>
#include <optional>

#include "core/pulls/fewest_moves.h"

namespace wend::pulls {

/// The latest instant up to which the axis may stay where the move starts, and still follow the tube at no more than
/// `rate` from there to where the move ends, in time for the next one (or the end).
///
/// Requires  a tube and a track through it; move < track.moves.size(); rate > 0
/// Ensures   (1) a way exists that stands at valueBefore until then, obeys tube and rate, and is at valueAfter when the
///               next move starts, each to kLateRounding
///           (2) no such way stands longer
///           (3) not before the move's own start; nothing where even that start leaves the tube, as it does in `unmet`
/// Cost      linear in the samples from the move's start to the next one's
std::optional<double> latestStart(const Tube& tube, const Track& track, std::size_t move, double rate);

/// Planned tracks touch their tubes; this much outside, in the unit of the tube, is not late.
inline constexpr double kLateRounding = 1e-5;

}  // namespace wend::pulls
