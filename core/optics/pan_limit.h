/// How fast the camera may turn before still things in the picture break up.
///
/// Source    the seven seconds are a rule of the trade, repeated without a standard behind it: about 7 s for a still
///           thing to cross the frame at 24 frames a second and a half-open shutter (homemade-editing.com, "Motion
///           picture"; some textbooks print 3 to 5 s). No ITU or SMPTE document sets a limit.
/// Stops     meaning anything when the eye follows a subject that keeps its place in the frame: then a pan may be
/// faster.
#pragma once

#include "core/geometry/point.h"
#include "core/optics/frame.h"

namespace wend::optics {

inline constexpr double kFrameCrossing = 7;  ///< seconds

/// Degrees a second at which a still thing takes `crossing` seconds from one side of the frame to the other: the
/// horizontal field of view over `crossing`, the mean over the crossing.
double panLimit(HalfTangents half, double crossing = kFrameCrossing);

/// The same held at the middle of the frame, where the image of a plane sensor moves slowest for a given turn: faster
/// than panLimit, by 13 % at 69 degrees of view.
double panLimitAtCentre(HalfTangents half, double crossing = kFrameCrossing);

/// Frame widths a second at which the image of a point moves, from its places (half-frames) `seconds` apart.
double imageSpeed(geometry::Point before, geometry::Point after, HalfTangents half, double seconds);

}  // namespace wend::optics
