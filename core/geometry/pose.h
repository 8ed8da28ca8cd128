/// Where a pinhole looks from and whither: the frame every image is drawn in. Roll is always 0.
#pragma once

#include "core/geometry/point.h"

namespace wend::geometry {

/// A point seen from a pose: metres to the right of the axis, above it, and ahead along it.
struct InView {
  double right = 0, up = 0, ahead = 0;
};

struct Pose {
  Point3 at;
  double bearing = 0;  ///< degrees clockwise from north, may be unwrapped
  double tilt = 0;     ///< degrees, up positive
  bool operator==(const Pose&) const = default;

  Vec3 forward() const {
    const double c = std::cos(radians(tilt));
    return {std::sin(radians(bearing)) * c, std::cos(radians(bearing)) * c, std::sin(radians(tilt))};
  }
  Vec3 rightward() const { return {std::cos(radians(bearing)), -std::sin(radians(bearing)), 0}; }
  Vec3 upward() const {
    const double s = std::sin(radians(tilt));
    return {-std::sin(radians(bearing)) * s, -std::cos(radians(bearing)) * s, std::cos(radians(tilt))};
  }
  InView view(Point3 p) const {
    const Vec3 d = p - at;
    return {dot(d, rightward()), dot(d, upward()), dot(d, forward())};
  }
  /// The same pose moved `metres` along its axis: sensor to entrance pupil.
  Pose advanced(double metres) const { return {at + forward() * metres, bearing, tilt}; }
};

}  // namespace wend::geometry
