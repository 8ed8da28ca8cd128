/// The rests and bends of a track, and what makes its ramps gentler.
///
/// Frame     sample numbers of one tube; values in its working coordinate.
/// Tests     tests/core/pulls/fewest_moves_test.cpp
#pragma once

#include <cstddef>
#include <vector>

#include "core/pulls/tube.h"

namespace wend::pulls {

/// A hand that is not pressed takes at least so long over a move, seconds. Common practice, no source.
inline constexpr double kEasySeconds = 1;

struct MoveRules {
  double rate = 120;           ///< the most |change| a second, in gaps too
  double easyRate = 60;        ///< a move is not made slower than this for its own sake
  double shortestHold = 0.25;  ///< seconds; a shorter rest is a bend. Rests at the take's two ends may be cut short
  double easySeconds = 0;      ///< a ramp takes at least so long where the tube lets it

  /// Seconds that a ramp over that change takes when nothing presses.
  double easyTime(double change) const;
};

/// The axis is at `value` from sample `from` to sample `until`; a bend when they are the same sample. From one stand to
/// the next it goes straight.
struct Stand {
  std::size_t from = 0, until = 0;
  double value = 0;
};

/// The same stands with gentler ramps and rests in the middle of their choice: a ramp between two rests that could
/// change places anywhere over a span fills the open part of it, or takes its easy time in the middle of it; any other
/// ramp is drawn out towards its easy time as far as the tube lets it.
///
/// `asked`, where it is not null, is what the rests would stand in the middle of, where that is more than the way has:
/// at the end of a ring they stand as near to it as the ring lets them. Over the same time, its samples its own.
///
/// Ensures   every straight line between stands lies in way.wanted to kTubeRounding / 2, at no more than the rate; as
///           many stands as before
std::vector<Stand> eased(std::vector<Stand> stands, const Passable& way, const MoveRules& rules, const Tube* asked);

}  // namespace wend::pulls
