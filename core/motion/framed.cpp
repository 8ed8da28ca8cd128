#include "core/motion/framed.h"

#include <algorithm>

#include "core/geometry/tolerance.h"

namespace wend::motion {

// With z the depth from the pupil, the target lies z (A, B) right and up of the axis and z + p ahead of the sensor, so
// (1 + A^2 + B^2) z^2 + 2 p z + p^2 = R^2. The tilt turns (ahead, up) until its height is the target's; the bearing
// then turns what is left on the floor.
Framed framed(geometry::Point3 sensor, geometry::Point3 target, FramePlace place, const View& view) {
  const geometry::Vec3 to = target - sensor;
  const double p = view.pupilAhead, a = place.x * view.tanHalfWidth, b = place.y * view.tanHalfHeight;
  const double distance = length(to), q = a * a + b * b;
  if (!(distance > std::abs(p))) return {Framed::Outcome::tooNear, {}};
  const double depth = (-p + std::sqrt((1 + q) * distance * distance - q * p * p)) / (1 + q);
  const double right = a * depth, ahead = depth + p, up = b * depth;
  const double reach = std::hypot(ahead, up);
  // A hair of slack, so that rounding does not refuse the straight upward look.
  if (std::abs(to.z) > reach * (1 + 1e-12)) return {Framed::Outcome::outOfReach, {}};
  const double tilt = std::asin(std::clamp(to.z / reach, -1.0, 1.0)) - std::atan2(up, ahead);
  if (std::hypot(to.x, to.y) < geometry::kHold) return {Framed::Outcome::straightOver, {0, geometry::degrees(tilt)}};
  const double floorAhead = ahead * std::cos(tilt) - up * std::sin(tilt);
  const double bearing = std::atan2(to.x, to.y) - std::atan2(right, floorAhead);
  return {Framed::Outcome::found, {geometry::degrees(bearing), geometry::degrees(tilt)}};
}

}  // namespace wend::motion
