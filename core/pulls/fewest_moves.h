/// The fewest moves of one axis inside its tube: stand still as long as one value serves, then go straight to the next
/// place that serves longest.
///
/// What is counted is ramps, straight stretches at one rate other than 0: a move of one straight pull costs one, each
/// bend in it one more. Counting moves before bends would prize a barrel that never stops creeping, for it never starts
/// again; counting ramps, a creep that follows the subject wins only where it saves pulls. Between equal counts the
/// axis stands where its choice is widest, in the middle of it, since the middle forgives most.
///
/// Frame     that of the tube. Knots stand at samples of the tube; between knots the value runs straight.
/// Stops     holding for a hand on the wheel: a straight pull has no ease. Read `peakRate` as what a hand must at least
/// do.
#pragma once

#include <cstddef>
#include <vector>

#include "core/pulls/stands.h"
#include "core/pulls/tube.h"

namespace wend::pulls {

struct Knot {
  double t = 0, value = 0;
  bool operator==(const Knot&) const = default;
};

/// A maximal stretch between two holds.
struct Move {
  double from = 0, until = 0;
  double valueBefore = 0, valueAfter = 0;
  double peakRate = 0;
  std::size_t ramps = 1;  ///< straight stretches in it; bends are one less
};

enum class Unmet {
  noValue,  ///< no value would have done: the tube itself was empty
  tooFast,  ///< the tube moves faster than the axis may
};

/// A span in which the track lies outside the tube.
struct UnmetSpan {
  geometry::Span span;
  Unmet reason = Unmet::tooFast;
  double worst = 0;  ///< how far outside at most
};

struct Track {
  std::vector<Knot> knots;  ///< first and last at the tube's first and last instant
  std::vector<Move> moves;
  std::vector<UnmetSpan> unmet;

  /// Held before the first knot and after the last.
  double valueAt(double t) const;
  std::size_t ramps() const;
};

/// Requires  what passable requires; 0 < easyRate <= rate, shortestHold >= 0
/// Ensures   (1) outside `unmet` the track is inside the tube, at samples and between them, to 1e-9, or to
///               1e-6 where only the full rate would do
///           (2) |slope| <= rate everywhere, also in gaps and in `unmet`
///           (3) consecutive moves are at least shortestHold apart
///           (4) no move where one value serves the whole tube
///           (5) same tube and rules, same bits
/// Error     a greedy choice: from what has been reached, each ramp is the one after which the axis can stand, or go on
///           straight, until latest, tried from a choice of departures that thins out backwards in time. Against an
///           exhaustive search with values on a grid, 2 of 2554 small random tubes took one ramp more than the least,
///           none more; no proof stands behind it. In `unmet` the way is the one `passable` takes, which splits the
///           miss evenly: not always the least in all.
/// Cost      samples x a logarithm, for tubes whose holds and moves are short against the whole
Track fewestMoves(const Tube& tube, const MoveRules& rules);

}  // namespace wend::pulls
