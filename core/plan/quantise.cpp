#include "core/plan/quantise.h"

#include <cmath>

#include "core/base/text.h"

namespace wend::plan {

double quantised(double value, const NumberKind& kind) {
  if (!(value >= kind.least && value <= kind.most)) return value;
  return std::round(value * kind.perUnit) / kind.perUnit + 0.0;
}

geometry::Point quantised(geometry::Point point) {
  return {quantised(point.x, kinds::kPlace), quantised(point.y, kinds::kPlace)};
}

std::string rangeText(const NumberKind& kind) {
  const std::string unit = *kind.unit ? std::string(" ") + kind.unit : std::string();
  return "from " + base::shortest(kind.least) + " to " + base::shortest(kind.most) + unit;
}

}  // namespace wend::plan
