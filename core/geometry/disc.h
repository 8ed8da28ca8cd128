/// A disc of the floor plan as a place outside of it sees it.
///
/// Frame     plan metres and radians.
#pragma once

#include <cmath>
#include <optional>

#include "core/geometry/convex.h"

namespace wend::geometry {

/// From the way to a disc's middle, `metres` long, to either of its tangents: asin(radius / metres).
///
/// Requires  metres >= 0, radius >= 0
/// Ensures   from 0 to pi/2; nothing from inside the disc and from its edge
inline std::optional<double> tangentAngle(double metres, double radius) {
  if (metres <= radius) return std::nullopt;
  return std::asin(radius / metres);
}

/// The ring of so many corners on a circle, counter-clockwise: what lies in it lies in the disc.
/// Requires  sides >= 3
inline Convex ringWithin(Point centre, double radius, int sides) {
  Convex corners;
  for (int i = sides; i-- > 0;) corners.push_back(centre + direction(i * 360.0 / sides) * radius);
  return corners;
}

}  // namespace wend::geometry
