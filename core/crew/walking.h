/// How people walk: paces, backwards with a camera, and the steps underfoot.
///
/// Frame     metres a second; bearings in degrees clockwise from plan north, wrapped or not.
/// Source    common practice, no source, where a number has none beside it. What is possible on the day the people
///           in charge of it decide.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/geometry/point.h"

namespace wend::crew {

using geometry::Point;

/// Slower than this nobody walks.
inline constexpr double kStill = 0.05;
/// Travel more than this off the lens' bearing is backwards; more than half of it, sideways.
inline constexpr double kBackwards = 120;

/// Which way a camera is carried, by its travel against the lens.
enum class Carry { still, front, side, rear };
Carry carryOf(double speed, double travel, double lensBearing);

/// An edge of the ground that is stepped over: a threshold across an opening, the outline of an area with a kerb.
struct GroundEdge {
  std::string id;
  std::vector<Point> points;
  bool closed = false;
  double height = 0;
};

struct Step {
  double time = 0;
  std::size_t edge = 0;  ///< its place in the list
  Point at;
};

/// Where a way crosses edges of the ground from `from` until `until`, in order of time.
///
/// Requires  step > 0, `at` continuous.
/// Ensures   (1) a way that passes exactly through a corner of an edge crosses it once, and one that touches it and
///           turns back there an even number of times; (2) a way along an edge does not cross it; (3) a way that starts
///           or ends on an edge is never counted twice by two stretches that share that instant.
/// Error     the way is looked at every `step` seconds and taken as straight between: out and back within one step is
///           missed. A crossing's time is within a microsecond of the way's own.
std::vector<Step> stepsOver(const std::function<Point(double)>& at, double from, double until, double step,
                            const std::vector<GroundEdge>& edges);

}  // namespace wend::crew
