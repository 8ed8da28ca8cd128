/// Moves of a planned track that the tube leaves free in time, and the track with one of them laid elsewhere.
///
/// Frame     that of the tube.
#pragma once

#include <algorithm>
#include <limits>
#include <optional>

#include "core/pulls/fewest_moves.h"

namespace wend::pulls {

/// Where a move may lie. Until `starts` ends some value would do from where the rest before the move begins, and from
/// where `ends` begins another one until the rest after it ends. A move that starts and ends in `span` may stand at
/// either value meanwhile; one that reaches beyond it has to run along the tube. Spans may be empty (from >= until).
struct FreeMove {
  std::size_t move = 0;  ///< its place in the track's moves
  geometry::Span starts, ends;
  geometry::Span span() const { return {std::max(starts.from, ends.from), std::min(starts.until, ends.until)}; }
};

/// The moves of one straight pull between two rests, in order.
///
/// Requires  a track planned in that tube by those rules
/// Error     spans begin and end at samples, or shortestHold beside another move
/// Cost      linear in the samples of the rests
std::vector<FreeMove> freeMoves(const Track& track, const Tube& tube, const MoveRules& rules);

/// The track with that move over another span, its ends eased anew. The rests keep their values where these would do,
/// else they stand in the middle of their choice, and the moves beside end or start there at the times they had. Where
/// the tube slopes so that no two rests would do throughout `to`, the ramp runs along it: of the pairs of values whose
/// straight line stays inside, the middle one, or the one next to it that is no faster than `atMost`; the moves beside
/// get no faster then.
///
/// Requires  `to` starts and ends in the move's spans in freeMoves, longer than 0; atMost > 0
/// Ensures   (1) as many moves and ramps, shortestHold apart; (2) at no instant outside the tube where the track was
///               inside, to kTubeRounding; (3) no faster than rules.rate, that move than atMost; (4) outside of the rests
///               beside the move, and of the moves beside those, the same track
/// Fails     with nothing where one of these does not hold
std::optional<Track> laid(const Track& track, std::size_t move, geometry::Span to, const Tube& tube,
                          const MoveRules& rules, double atMost = std::numeric_limits<double>::infinity());

/// The rate of the ramp that runs along the tube over `to` as `laid` would have it; nothing where there is none that is
/// no faster than atMost.
std::optional<double> rateAlong(const Track& track, std::size_t move, geometry::Span to, const Tube& tube,
                                double atMost);

}  // namespace wend::pulls
