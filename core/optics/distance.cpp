#include "core/optics/distance.h"

#include <algorithm>

#include "core/base/check.h"

namespace wend::optics {

SubjectDistances distancesOf(geometry::Point3 subject, const geometry::Pose& sensor) {
  const double slant = geometry::distance(subject, sensor.at);
  const double ahead = sensor.view(subject).ahead;
  const double floor = geometry::distance(geometry::flat(subject), geometry::flat(sensor.at));
  return {slant, ahead > 0 ? std::min(ahead, slant) : slant, floor};
}

double blendedDistance(double a, double b, double share) {
  WEND_CHECK(a > 0 && b > 0);
  if (share == 0 || a == b) return a;
  if (share == 1) return b;
  return 1 / geometry::lerp(1 / a, 1 / b, share);
}

SubjectDistances blended(const SubjectDistances& a, const SubjectDistances& b, double share) {
  return {blendedDistance(a.slant, b.slant, share), blendedDistance(a.flat, b.flat, share),
          blendedDistance(a.floor, b.floor, share)};
}

}  // namespace wend::optics
