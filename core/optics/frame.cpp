#include "core/optics/frame.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"
#include "core/geometry/point.h"

namespace wend::optics {

using geometry::degrees;
using geometry::radians;

FrameSize deliveredFrame(FrameSize gate, double squeeze, std::optional<double> aspect) {
  WEND_CHECK(gate.width > 0 && gate.height > 0 && squeeze > 0);
  const FrameSize whole{gate.width * squeeze, gate.height};
  if (!aspect) return whole;
  WEND_CHECK(*aspect > 0);
  if (whole.width > whole.height * *aspect) return {whole.height * *aspect, whole.height};
  return {whole.width, whole.width / *aspect};
}

double breathingScale(double breathing, double closeFocus, double distance) {
  WEND_CHECK(distance > 0);
  return 1 + breathing * closeFocus / distance;
}

HalfTangents halfTangents(FrameSize frame, double focal, double tangentScale) {
  WEND_CHECK(focal > 0 && tangentScale > 0);
  return {frame.width / (2 * focal) * tangentScale, frame.height / (2 * focal) * tangentScale};
}

FieldOfView fieldOfView(HalfTangents half) {
  const auto full = [](double tangent) { return 2 * degrees(std::atan(tangent)); };
  return {full(half.h), full(half.v), full(std::hypot(half.h, half.v))};
}

HalfTangents widened(HalfTangents half, double margin) {
  WEND_CHECK(margin >= 0);
  if (margin == 0) return half;
  const auto opened = [margin](double tangent) {
    const double angle = std::min(degrees(std::atan(tangent)) + margin, kWidestHalfAngle);
    return std::max(tangent, std::tan(radians(angle)));
  };
  return {opened(half.h), opened(half.v)};
}

}  // namespace wend::optics
