#include "core/optics/pan_limit.h"

#include <cmath>

#include "core/base/check.h"

namespace wend::optics {

double panLimit(HalfTangents half, double crossing) {
  WEND_CHECK(crossing > 0);
  return fieldOfView(half).horizontal / crossing;
}

double panLimitAtCentre(HalfTangents half, double crossing) {
  WEND_CHECK(crossing > 0);
  return geometry::degrees(2 * half.h) / crossing;
}

double imageSpeed(geometry::Point before, geometry::Point after, HalfTangents half, double seconds) {
  WEND_CHECK(seconds > 0 && half.h > 0);
  // One measure for both ways: the frame's width.
  const double across = (after.x - before.x) / 2, up = (after.y - before.y) / 2 * (half.v / half.h);
  return std::hypot(across, up) / seconds;
}

}  // namespace wend::optics
