#include "core/light/flicker.h"

#include <cmath>
#include <numbers>

#include "core/base/check.h"
#include "core/light/exposure.h"

namespace wend::light {

std::vector<SteadyShutter> steadyShutters(double rate, double mains) {
  WEND_CHECK(rate > 0 && mains > 0);
  const double perPulse = 360 * rate / (2 * mains);
  std::vector<SteadyShutter> steady;
  // A hair more than open is rounding, as at 25 frames on 50 Hz.
  for (int n = 1; n * perPulse <= 360 * (1 + 1e-12); ++n) steady.push_back({n * perPulse, n});
  return steady;
}

double nearestSteady(double shutterDeg, const std::vector<SteadyShutter>& steady) {
  WEND_CHECK(!steady.empty());
  double best = steady.front().degrees;
  for (const SteadyShutter& one : steady)
    if (std::abs(one.degrees - shutterDeg) < std::abs(best - shutterDeg)) best = one.degrees;
  return best;
}

bool inStep(double rate, double mains, double tolerance) {
  return std::abs(std::remainder(2 * mains / rate, 1.0)) <= tolerance;
}

double rippleStops(double shutterDeg, double rate, double mains, double depth) {
  if (inStep(rate, mains)) return 0;
  const double turn = std::numbers::pi * 2 * mains * shutterSeconds(shutterDeg, rate);
  const double swing = depth * std::abs(std::sin(turn)) / turn;
  return std::log2((1 + swing) / (1 - swing));
}

}  // namespace wend::light
