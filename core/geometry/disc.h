/// A disc of the floor plan as a place outside of it sees it.
///
/// Frame     plan metres and radians.
#pragma once

#include <cmath>
#include <optional>

namespace wend::geometry {

/// From the way to a disc's middle, `metres` long, to either of its tangents: asin(radius / metres).
///
/// Requires  metres >= 0, radius >= 0
/// Ensures   from 0 to pi/2; nothing from inside the disc and from its edge
inline std::optional<double> tangentAngle(double metres, double radius) {
  if (metres <= radius) return std::nullopt;
  return std::asin(radius / metres);
}

}  // namespace wend::geometry
