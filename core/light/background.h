/// How the background sits against the set stop: its brightest and its darkest tenth.
#pragma once

#include <optional>
#include <vector>

namespace wend::light {

/// Offsets in stops, positive over. A tenth is the mean in stops of that tenth of the known rays, at least one ray.
struct Background {
  double brightest = 0;
  double darkest = 0;
  double unknownShare = 0;  ///< of the rays that met ground or a wall without a known reading, 0 to 1
};

/// `stops` are the readings where rays spread evenly over the frame end, behind the density, absent where unknown.
/// Requires  setStop and the stops positive. Ensures darkest <= brightest; the order of the rays does not matter.
/// Nothing when no ray is known.
std::optional<Background> backgroundAgainst(const std::vector<std::optional<double>>& stops, double setStop);

}  // namespace wend::light
