#include "core/optics/shot_size.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"

namespace wend::optics {

const ShotSizes& usualShotSizes() {
  static const ShotSizes sizes{{"extreme wide", 3}, {"wide", 1.5},          {"full", 1.05},  {"medium wide", 0.75},
                               {"medium", 0.45},    {"medium close", 0.31}, {"close", 0.17}, {"extreme close", 0.10}};
  return sizes;
}

double frameOverStature(double verticalTangent, double distance, double stature) {
  WEND_CHECK(distance > 0 && stature > 0);
  return 2 * verticalTangent * distance / stature;
}

std::size_t nearestShotSize(double q, const ShotSizes& sizes) {
  WEND_CHECK(q > 0 && !sizes.empty());
  std::size_t i = 0;
  // The border between neighbours is their geometric mean; on it the wider size holds.
  while (i + 1 < sizes.size() && q < std::sqrt(sizes[i].q * sizes[i + 1].q)) ++i;
  return i;
}

std::optional<ShotSize> shotSizeNamed(std::string_view name, const ShotSizes& sizes) {
  const auto found = std::find_if(sizes.begin(), sizes.end(), [name](const ShotSize& s) { return s.name == name; });
  if (found == sizes.end()) return std::nullopt;
  return *found;
}

FocalForSize focalForSize(double frameHeight, double distance, double q, double stature, FocalLimits limits) {
  WEND_CHECK(frameHeight > 0 && distance > 0 && q > 0 && stature > 0);
  WEND_CHECK(limits.shortest > 0 && limits.shortest <= limits.longest);
  const double wanted = frameHeight * distance / (q * stature);
  const double focal = std::clamp(wanted, limits.shortest, limits.longest);
  return {focal, focal != wanted, wanted};
}

}  // namespace wend::optics
