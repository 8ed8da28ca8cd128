/// The planned iris where its moves hide: pans, doorways, leaves, people who cross, cues of light.
///
/// Source    core/pulls/cover.h and core/pulls/slot.h: common practice, no source.
#pragma once

#include "core/answers/take.h"

namespace wend::answers {

/// A move is looked for no further than this from where it was planned, seconds. Our choice: it keeps a take cheap to
/// resolve, and a cue beside what it belongs to.
inline constexpr double kCoverReach = 8;

/// A planned iris with every move that something of would show where it is laid where all of it hides: under cover, or
/// because it is slow enough for any frame. First where the tube leaves it free in time, its values kept; then along
/// the tube where that slopes, furthest under what is allowed.
///
/// Requires  a track planned in that tube by those rules; the take's own iris may be another
/// Ensures   (1) as many moves and ramps as before, inside the tube wherever it was, no faster than the rules let it
///               (pulls::laid); (2) no face in frame within kCoverReach gets further off than by the track as planned,
///               or than the threshold "exposure" lets pass; (3) a move for which no place is found where it
///               wholly hides stays
/// Error     along the tube ramps are tried that start and end a quarter of a second apart (pulls/ramp_spans.h)
/// Cost      a sample a frame around each move of one ramp, more around each that shows
pulls::Track underCover(const Take& take, pulls::Track planned, const pulls::Tube& tube, const pulls::MoveRules& rules);

/// The take's own planned iris so. Nothing where that is no other, or where it is set by hand.
std::optional<pulls::Track> irisUnderCover(const Take& take);

}  // namespace wend::answers
