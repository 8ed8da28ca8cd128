#include "core/light/colour.h"

#include <cmath>

namespace wend::light {

double mired(double kelvin) {
  return 1e6 / kelvin;
}

double kelvinOf(double value) {
  return 1e6 / value;
}

double miredShift(double fromKelvin, double toKelvin) {
  return mired(toKelvin) - mired(fromKelvin);
}

double blendedKelvin(double fromKelvin, double toKelvin, double share) {
  if (share <= 0) return fromKelvin;
  if (share >= 1) return toKelvin;
  return kelvinOf(mired(fromKelvin) + share * miredShift(fromKelvin, toKelvin));
}

std::vector<ColourJump> colourJumps(const std::vector<std::optional<double>>& kelvin, double least) {
  std::vector<ColourJump> jumps;
  std::optional<std::size_t> last;
  for (std::size_t i = 0; i < kelvin.size(); ++i) {
    if (!kelvin[i]) continue;
    const double shift = last ? miredShift(*kelvin[*last], *kelvin[i]) : 0;
    if (last && shift != 0 && std::abs(shift) >= least) jumps.push_back({*last, i, shift});
    last = i;
  }
  return jumps;
}

}  // namespace wend::light
