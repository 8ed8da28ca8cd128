#include "core/light/luminaire.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/point.h"

namespace wend::light {

double tiltFactor(const std::vector<TiltFactor>& factors, double fromStraightDown) {
  if (factors.empty()) return 1;
  double angle = std::abs(std::remainder(fromStraightDown, 360.0));
  if (factors.back().angle <= 90 && angle > 90) angle = 180 - angle;
  if (angle <= factors.front().angle) return factors.front().factor;
  if (angle >= factors.back().angle) return factors.back().factor;
  const auto above = std::find_if(factors.begin(), factors.end(), [angle](const auto& f) { return f.angle > angle; });
  const auto below = above - 1;
  return geometry::lerp(below->factor, above->factor, (angle - below->angle) / (above->angle - below->angle));
}

Distribution distributionOf(const std::shared_ptr<const Luminaire>& luminaire, double tilt, double scale) {
  const double whole = scale * tiltFactor(luminaire->tilt, tilt + 90);
  // A lamp is asked clockwise about its axis, the table counts the other way.
  return [luminaire, whole](double offAxis, double around) {
    return whole * luminaire->photometry.candelaAt(offAxis, -around);
  };
}

}  // namespace wend::light
