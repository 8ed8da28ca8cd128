#include "core/light/background.h"

#include <algorithm>
#include <numeric>

#include "core/light/exposure.h"

namespace wend::light {

std::optional<Background> backgroundAgainst(const std::vector<std::optional<double>>& stops, double setStop) {
  std::vector<double> offsets;
  for (const auto& stop : stops)
    if (stop) offsets.push_back(offsetStops(*stop, setStop));
  if (offsets.empty()) return std::nullopt;
  std::sort(offsets.begin(), offsets.end());
  const auto tenth = static_cast<std::ptrdiff_t>((offsets.size() + 9) / 10);
  const auto mean = [tenth](auto from) { return std::accumulate(from, from + tenth, 0.0) / double(tenth); };
  return Background{mean(offsets.end() - tenth), mean(offsets.begin()),
                    double(stops.size() - offsets.size()) / double(stops.size())};
}

}  // namespace wend::light
