/// The rests and bends of a track: the search behind fewestMoves, and what smooths its result.
///
/// Frame     sample numbers of one tube; values in its working coordinate.
#pragma once

#include <cstddef>
#include <vector>

#include "core/pulls/tube.h"

namespace wend::pulls {

struct MoveRules {
  double rate = 120;           ///< the most |change| a second, in gaps too
  double easyRate = 60;        ///< a move is not made slower than this for its own sake
  double shortestHold = 0.25;  ///< seconds; a shorter rest is a bend. Rests at the take's two ends may be cut short
};

/// The axis is at `value` from sample `from` to sample `until`; a bend when they are the same sample. From one stand to
/// the next it goes straight.
struct Stand {
  std::size_t from = 0, until = 0;
  double value = 0;
};

/// Stands from the first sample to the last with few ramps between them. From what the ramps so far reach, the next
/// ramp is the one after which the axis can stand, or go on straight, until latest; departures tried are the latest and
/// others thinning out backwards by doubled steps, each from the two ends and the middle of the values left.
///
/// Ensures   (1) every straight line between stands lies in way.reachable to kTubeRounding / 2, at no more than the
/// rate
///           (2) a stand that is no bend lasts shortestHold, unless it is the first or last
///           (3) a single stand where one value serves throughout
std::vector<Stand> standsThrough(const Passable& way, const MoveRules& rules);

/// The same stands with gentler ramps and rests in the middle of their choice: a ramp between two rests that could
/// change places anywhere over a span fills the open part of it, or takes the middle of it at the easy rate; any other
/// ramp is drawn out towards the easy rate as far as the tube lets it.
///
/// Ensures   what standsThrough ensures, inside way.wanted; as many stands as before
std::vector<Stand> eased(std::vector<Stand> stands, const Passable& way, const MoveRules& rules);

}  // namespace wend::pulls
