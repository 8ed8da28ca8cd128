/// The fewest moves of one axis inside its tube.
///
/// What is counted is ramps, straight stretches at one rate other than 0: a move of one straight pull costs one, each
/// further stretch in it one more. Counting moves before bends would prize a barrel that never stops creeping, for it
/// never starts again; counting ramps, a creep that follows the subject wins only where it saves pulls. Level stretches
/// cost nothing; one shorter than shortestHold is no hold, and what lies on both sides of it is one move. The count
/// comes first and is proven by a lower bound (`leastRamps`). What comes after it is not: ramps are drawn out towards
/// their easy time and rests put in the middle of their choice, since the middle forgives most. Travel is not
/// minimised.
///
/// Frame     that of the tube. Knots stand at samples, and between two where that saves a ramp; between knots the
///           value runs straight.
/// Stops     holding for a hand on the wheel: knots are straight, and how softly the ends may be taken is said beside
///           them. Read `peakRate` as what a hand must at least do.
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
  /// Seconds over which it may speed up and slow down, half of them outside the move: ease.h. At no higher rate.
  double easeIn = 0, easeOut = 0;
};

enum class Unmet {
  noValue,  ///< no value would have done: the tube itself was empty
  tooFast,  ///< the tube moves faster than the axis may
};

/// A span in which the track lies outside the tube.
struct UnmetSpan {
  geometry::Span span;
  Unmet reason = Unmet::tooFast;
  double worst = 0;   ///< how far outside at most
  double missed = 0;  ///< how far outside, over time: the integral of least_miss.h over the span
};

struct Track {
  std::vector<Knot> knots;  ///< first and last at the tube's first and last instant
  std::vector<Move> moves;
  std::vector<UnmetSpan> unmet;
  /// Ramps that no track through the part of the tube that can be followed does without.
  std::size_t leastRamps = 0;

  /// Held before the first knot and after the last.
  double valueAt(double t) const;
  std::size_t ramps() const;
};

/// The spans, from sample to sample, in which a track lies outside a tube: for one set by hand too.
/// Ensures   outside them inside the tube at every sample, to 1e-6
std::vector<UnmetSpan> outside(const Track& track, const Tube& tube);

/// Requires  what passable requires; 0 < easyRate <= rate, shortestHold >= 0, easySeconds >= 0
/// Ensures   (1) outside `unmet` the track is inside the tube, at samples and between them, to 1e-9, or to
///               1e-6 where only the full rate would do
///           (2) |slope| <= rate everywhere, also in gaps and in `unmet`
///           (3) consecutive moves are at least shortestHold apart
///           (4) no move where one value serves the whole tube
///           (5) same tube and rules, same bits
///           (6) ramps() >= leastRamps, and no track inside the tube has fewer than leastRamps: where the two are
///               equal, the count is the least there is
///           (7) no track at the rate has a lesser integral outside the tube (least_miss.h), to rounding
/// Error     where ramps() and leastRamps differ, by one or two here and there, a turn between two samples was not
///           found: none of 2554 small random tubes, 11 of 9000 of 600 samples (tests/core/pulls/least_ramps_test.cpp
///           looks at the first 1500, none of which is among them). Tracks compared stay inside what `passable` calls
///           reachable, with straight edges between its samples
/// Cost      linear, save for easing, which is linear for tubes whose holds and moves are short against the whole
Track fewestMoves(const Tube& tube, const MoveRules& rules);

/// The same where `tube` is what a ring has of what is `asked`: rests stand as near to the middle of that as the ring
/// goes. A need that an end of the ring meets exactly is met there and not beside it.
/// Requires  both over the same time
Track fewestMoves(const Tube& tube, const MoveRules& rules, const Tube& asked);

}  // namespace wend::pulls
