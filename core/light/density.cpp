#include "core/light/density.h"

#include <cmath>

#include "core/light/exposure.h"

namespace wend::light {
namespace {

geometry::KeyBlend blendOf(const std::vector<DensityKey>& keys, double t) {
  std::vector<geometry::KeySpan> times;
  for (const DensityKey& key : keys) times.push_back(key.time);
  return geometry::blendAt(times, t);
}

}  // namespace

double densityAt(const std::vector<DensityKey>& keys, double t, double otherwise) {
  if (keys.empty()) return otherwise;
  const auto blend = blendOf(keys, t);
  return geometry::lerp(keys[blend.before].stops, keys[blend.after].stops, blend.share);
}

double densityRate(const std::vector<DensityKey>& keys, double t) {
  if (keys.empty()) return 0;
  const auto blend = blendOf(keys, t);
  if (blend.before == blend.after) return 0;
  const geometry::KeySpan& key = keys[blend.after].time;
  const double s = (t - key.at) / key.over;
  const double mean = (keys[blend.after].stops - keys[blend.before].stops) / key.over;
  return mean * (key.eased ? 6 * s * (1 - s) : 1);
}

std::vector<DensityCut> densityCuts(const std::vector<DensityKey>& keys, double length) {
  std::vector<DensityCut> cuts;
  for (std::size_t i = 1; i < keys.size(); ++i) {
    const geometry::KeySpan& time = keys[i].time;
    if (time.over > 0 || time.at <= 0 || time.at >= length || std::abs(keys[i].stops - keys[i - 1].stops) < 1e-9)
      continue;
    cuts.push_back({time.at, keys[i - 1].stops, keys[i].stops});
  }
  return cuts;
}

}  // namespace wend::light
