#include "core/light/dimmer.h"

#include <algorithm>
#include <cmath>

namespace wend::light {

std::optional<double> shareInstead(double whole, double lamp, double stops) {
  const double given = std::min(lamp, whole);
  if (given <= 0) return std::nullopt;
  const double share = 1 - (1 - std::exp2(-stops)) * whole / given;
  return share >= 0 ? std::optional(share) : std::nullopt;
}

std::vector<std::optional<double>> sharesInstead(const FaceLight& light, double stops) {
  std::vector<std::optional<double>> shares(light.fixtureLux.size());
  if (!light.needed) return shares;
  for (std::size_t i = 0; i < shares.size(); ++i) shares[i] = shareInstead(light.lux, light.fixtureLux[i], stops);
  return shares;
}

}  // namespace wend::light
