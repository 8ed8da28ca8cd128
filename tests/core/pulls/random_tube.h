/// Tubes to try things on: wandering, jumping, with gaps and pinches. Same seed, same tube.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>

#include "core/pulls/tube.h"

namespace wend::pulls {

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : random_(seed) {}
  double uniform(double a, double b) { return a + (b - a) * static_cast<double>(random_() >> 11) * 0x1p-53; }
  int below(int n) { return static_cast<int>(uniform(0, n)); }
  bool chance(double p) { return uniform(0, 1) < p; }

 private:
  std::mt19937_64 random_;
};

struct TubeStyle {
  int samples = 200;
  double step = 1.0 / 24;
  double drift = 20;   ///< the most change of the middle a second
  double gaps = 0.02;  ///< chance of a gap at a sample
  double cuts = 0;     ///< chance of a jump without a gap
  double narrowest = 0.5, widest = 12;
};

inline Tube randomTube(std::uint64_t seed, const TubeStyle& style) {
  Draw draw(seed);
  Tube tube;
  double middle = draw.uniform(0, 300), speed = 0, half = draw.uniform(style.narrowest, style.widest);
  int open = 0;
  for (int i = 0; i < style.samples; ++i) {
    const double t = i * style.step;
    if (draw.chance(0.05)) speed = draw.chance(0.4) ? 0 : draw.uniform(-style.drift, style.drift);
    if (draw.chance(0.05)) half = std::exp(draw.uniform(std::log(style.narrowest), std::log(style.widest)));
    middle = std::clamp(middle + speed * style.step, 0.0, 300.0);
    if (open == 0 && draw.chance(style.gaps)) open = 4 + draw.below(40);
    if (open > 0 && --open == 0) middle = draw.uniform(0, 300);
    if (draw.chance(style.cuts)) {
      tube.push_back({t, middle - half, middle + half, false});
      middle = draw.uniform(0, 300);
    }
    if (open > 0 && i > 0 && i + 1 < style.samples)
      tube.push_back({t, 0, 0, true});
    else
      tube.push_back({t, middle - half, middle + half, false});
  }
  return tube;
}

}  // namespace wend::pulls
