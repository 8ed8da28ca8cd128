#include "core/optics/split.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"

namespace wend::optics {

std::optional<SplitNeeds> splitNeeds(const std::vector<double>& distances, const Optics& optics, double blurShare,
                                     double closest) {
  WEND_CHECK(!distances.empty() && blurShare > 0);
  const auto [near, far] = std::minmax_element(distances.begin(), distances.end());
  const double a = *near, b = *far, f = optics.focal / 1000;
  if (a < closest || a == b) return std::nullopt;
  WEND_CHECK(a > f);
  const double best = std::isinf(b) ? 2 * a : 2 * a / (1 + a / b);
  const double apart = std::isinf(b) ? 1 : (b - a) / (a + b);
  const double blur = blurShare * optics.blurCircle / 1000, m = optics.fNumber * blur;
  // apart f^2 + m f - m best = 0, its positive root in the form that does not cancel.
  const double shorter = 2 * m * best / (m + std::sqrt(m * m + 4 * apart * m * best));
  return SplitNeeds{f * f * apart / ((best - f) * blur), shorter * 1000};
}

}  // namespace wend::optics
