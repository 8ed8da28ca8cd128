/// Marks and the ways over the floor between them. Plan metres.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/geometry/curve.h"

namespace wend::motion {

using geometry::Point;

/// How one goes from a mark to the next.
struct TrackLeg {
  enum class Shape { straight, smooth, arc };
  Shape shape = Shape::straight;
  std::vector<Point> via;  ///< straight and smooth: places passed on the way
  Point centre;            ///< arc
  double sweep = 0;        ///< arc: degrees, clockwise positive
  bool eased = false;      ///< gathers and loses speed; else constant speed
};

/// A place reached at `at` and left at `until`, with what is `height` metres above the datum there (a lens, eyes).
struct TrackMark {
  double at = 0, until = 0;  ///< seconds
  Point pos;
  double height = 0;
  TrackLeg leg;  ///< to the next mark; the last one's is not read
};

/// An arc's ends may differ by this much in their distance from the centre, metres, and its sweep from the turn
/// between them, degrees.
inline constexpr double kArcRadiusTolerance = 0.005;
inline constexpr double kArcSweepTolerance = 0.5;

/// An arc goes round at most this often.
inline constexpr double kMostTurns = 100;

/// The way of each leg: one curve per pair of neighbouring marks, from the first's `pos` to the second's.
///
/// Ensures   1. a leg shorter than geometry::kHold is a hold: its curve is the first mark's place, length 0;
///           2. neighbouring smooth legs are parts of one centripetal Catmull-Rom curve through their marks and `via`s,
///              so direction is continuous from leg to leg, also across a mark that is stood on; holds and legs of
///              another shape lend it no point and end it;
///           3. an arc goes exactly from mark to mark: radius and angle linearly between the two, the turn being
///              the one nearest to `sweep`.
/// Fails     "not-finite", "arc-without-radius", "arc-uneven-radius" (beyond kArcRadiusTolerance), "arc-wrong-sweep"
///           (beyond kArcSweepTolerance), "arc-too-many-turns" (beyond kMostTurns); every one found, `where` a pointer
///           into the list ("/3/leg/sweep").
base::Result<std::vector<geometry::Curve>> waysBetween(const std::vector<TrackMark>& marks);

}  // namespace wend::motion
