#include "core/light/beam.h"

#include <cmath>

#include "core/base/check.h"

namespace wend::light {

double intensity(const Beam& b, double offAxis) {
  WEND_CHECK(b.beam > 0 && b.field > b.beam);
  const double n = std::log(std::log2(10.0)) / std::log(b.field / b.beam);
  return b.candela * std::exp2(-std::pow(std::abs(offAxis) / (b.beam / 2), n));
}

Distribution distributionOf(const Beam& beam) {
  return [beam](double offAxis, double) { return intensity(beam, offAxis); };
}

}  // namespace wend::light
