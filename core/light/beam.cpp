#include "core/light/beam.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/check.h"

namespace wend::light {

double intensity(const Beam& b, double offAxis) {
  WEND_CHECK(b.beam > 0 && b.field > b.beam);
  const double n = std::log(std::log2(10.0)) / std::log(b.field / b.beam);
  return b.candela * std::exp2(-std::pow(std::abs(offAxis) / (b.beam / 2), n));
}

double totalFlux(const Beam& beam) {
  // Beyond five fields there is nothing left of any beam; even steps over the rest follow a narrow one too.
  constexpr int kSteps = 4000;
  const double end = std::min(180.0, 5 * beam.field), step = end / kSteps, radians = std::numbers::pi / 180;
  double sum = 0;
  for (int i = 0; i <= kSteps; ++i) {
    const double weight = i == 0 || i == kSteps ? 1 : i % 2 == 1 ? 4 : 2;
    sum += weight * intensity(beam, i * step) * std::sin(i * step * radians);
  }
  return 2 * std::numbers::pi * sum * step * radians / 3;
}

Distribution distributionOf(const Beam& beam) {
  return [beam](double offAxis, double) { return intensity(beam, offAxis); };
}

}  // namespace wend::light
