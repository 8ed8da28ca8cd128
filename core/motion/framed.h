/// Which way a camera must look to have a target at a given place of its frame.
#pragma once

#include "core/geometry/point.h"

namespace wend::motion {

/// Where the lens looks. Bearing in degrees clockwise from north, unwrapped where so said; tilt in degrees, up
/// positive.
struct Orientation {
  double bearing = 0, tilt = 0;
  bool operator==(const Orientation&) const = default;
};

/// The view a target is placed in.
struct View {
  double tanHalfWidth = 1, tanHalfHeight = 1;  ///< tangents of half the fields of view, > 0
  double pupilAhead = 0;                       ///< metres from the sensor to the entrance pupil, along the axis
};

/// A place in the frame in half-frames from its middle: x right, y up, the edges at -1 and 1.
struct FramePlace {
  double x = 0, y = 0;
};

struct Framed {
  enum class Outcome {
    found,
    straightOver,  ///< the target stands over or under the sensor within geometry::kHold: any bearing will do
    tooNear,       ///< the target is no further from the sensor than the entrance pupil
    outOfReach     ///< no tilt brings the target to that place: it is too steeply above or below
  };
  Outcome outcome = Outcome::found;
  Orientation way;  ///< bearing in (-360, 360], 0 when straightOver; nothing to read when tooNear or outOfReach
};

/// Ensures   seen from `sensor` by a camera of this orientation without roll, whose pupil lies view.pupilAhead along
///           its axis, the target is ahead at (place.x tanHalfWidth, place.y tanHalfHeight) times its depth.
/// Error     rounding only: the equation is solved in closed form.
/// Cost      a few square roots and arc tangents.
Framed framed(geometry::Point3 sensor, geometry::Point3 target, FramePlace place, const View& view);

}  // namespace wend::motion
