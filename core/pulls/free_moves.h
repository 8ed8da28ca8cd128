/// Moves of a planned track that the tube leaves free in time, and the track with one of them laid elsewhere.
///
/// Frame     that of the tube.
#pragma once

#include <optional>

#include "core/pulls/fewest_moves.h"

namespace wend::pulls {

/// Where a move may lie, whole: until the end of the span some value would do from where the rest before the move
/// begins, and from its start another one until the rest after it ends.
struct FreeMove {
  std::size_t move = 0;  ///< its place in the track's moves
  geometry::Span span;
};

/// The moves of one straight pull between two rests for which there is such a span, in order.
///
/// Requires  a track planned in that tube by those rules
/// Error     spans begin and end at samples, or shortestHold beside another move
/// Cost      linear in the samples of the rests
std::vector<FreeMove> freeMoves(const Track& track, const Tube& tube, const MoveRules& rules);

/// The track with that move over another span, its ends eased anew. The rests keep their values where these would do,
/// else they stand in the middle of their choice, and the moves beside end or start there at the times they had.
///
/// Requires  `to` inside the move's span in freeMoves, longer than 0
/// Ensures   (1) as many moves and ramps, shortestHold apart; (2) at no instant outside the tube where the track was
///               inside, to kTubeRounding; (3) no faster than rules.rate; (4) outside of the rests beside the move, and
///               of the moves beside those, the same track
/// Fails     with nothing where one of these does not hold
std::optional<Track> laid(const Track& track, std::size_t move, geometry::Span to, const Tube& tube,
                          const MoveRules& rules);

}  // namespace wend::pulls
