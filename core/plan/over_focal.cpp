#include "core/plan/over_focal.h"

#include <algorithm>
#include <cmath>

namespace wend::plan {

double OverFocal::at(double focal) const {
  if (rows.empty()) return everywhere;
  const auto above =
      std::lower_bound(rows.begin(), rows.end(), focal, [](const FocalValue& row, double f) { return row.focal < f; });
  if (above == rows.end()) return rows.back().value;
  if (above == rows.begin() || above->focal == focal) return above->value;
  const FocalValue& below = *(above - 1);
  const double share = std::log(focal / below.focal) / std::log(above->focal / below.focal);
  return std::lerp(below.value, above->value, std::clamp(share, 0.0, 1.0));
}

std::size_t firstNotRising(const std::vector<FocalValue>& rows) {
  for (std::size_t i = 1; i < rows.size(); ++i)
    if (!(rows[i].focal > rows[i - 1].focal)) return i;
  return rows.size();
}

}  // namespace wend::plan
