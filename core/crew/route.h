/// A drawn route held against what bars the way: where it breaks, and how late each walk may start or how early end.
///
/// Frame     plan metres, seconds from the take's start. A route stands, walks, stands, ...: it walks between one stand
///           and the next, and nobody is there before the first or after the last.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "core/geometry/spans.h"

namespace wend::crew {

using geometry::Point;
using geometry::Span;

/// The state of the ground for one body at an instant.
enum class Ground {
  free,
  seen,   ///< the lens sees the body there, or will or did within the take's bars
  taken,  ///< something stands there
};
using GroundAt = std::function<Ground(Point, double t)>;

struct DrawnRoute {
  std::function<Point(double t)> at;  ///< asked within the stands and between them only
  std::vector<Span> stands;           ///< in order of time; a mark passed without standing is no stand
  /// The highest speed in a span between two stands; none: that of the looks, which cut its corners.
  std::function<double(Span)> peak = {};
};

struct RouteRules {
  double speed = 1.1;   ///< m/s at most
  double step = 0.1;    ///< seconds between two looks
  double latest = 300;  ///< how far a walk is shifted at most, in seconds
};

/// The way from one stand to the next.
struct Walk {
  Span span;
  double metres = 0;
  double meanSpeed = 0, peakSpeed = 0;
  /// The walk as drawn may start as late, or end as early, as this, and at any time between, every stand before and
  /// after it included. Nothing when the walk itself breaks, for shifting must then cure it, not keep it.
  std::optional<double> latestLeave, earliestArrive;
  double slack() const {
    return latestLeave && earliestArrive ? *latestLeave - span.from + span.until - *earliestArrive : 0;
  }
};

/// A span in which the route cannot be.
struct Break {
  enum class Why { seen, taken, fast };
  Why why = Why::seen;
  Span span;
  Point at;  ///< where it begins
};

struct RouteReport {
  std::vector<Walk> walks;
  std::vector<Break> breaks;  ///< in order of time
  bool holds() const { return breaks.empty(); }
};

/// Ensures   (1) no break: at every look the ground under the route is free and no walk is faster than allowed, by
///           kPaceTold (pace.h); (2) a
///           walk started at its latest, or anywhere up to it, meets free ground at every look, the longer wait
///           included, and ends before the next one starts; likewise for the earliest; (3) shifting one walk leaves the
///           others as drawn.
/// Error     what lasts shorter than `step` may be missed, so the ground's own bars should reach further than that;
///           latest and earliest are good to a hundredth of a second.
/// Cost      a look for every step of the route, and for every walk its own looks times its slack over the step.
///
/// `still` is the ground for one who stands, where crouching makes it another; none: `ground`.
RouteReport reportOf(const DrawnRoute& route, const RouteRules& rules, const GroundAt& ground,
                     const GroundAt& still = {});
/// Its walks alone, for whoever does not ask where it breaks.
std::vector<Walk> walksOf(const DrawnRoute& route, const RouteRules& rules, const GroundAt& ground,
                          const GroundAt& still = {});

}  // namespace wend::crew
