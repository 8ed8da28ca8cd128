/// Samples of a take visited so many seconds apart.
///
/// Units     seconds.
#pragma once

#include <cmath>
#include <vector>

#include "core/snags/instant.h"

namespace wend::answers {

/// Calls visit(instant) for the first sample at or after each multiple of `step`, each sample at most once.
/// Requires  step > 0; samples in order of time.
/// Ensures   no two visits further apart than `spacing`.
template <class Visit>
void eachSpaced(const std::vector<snags::Instant>& samples, double step, Visit visit) {
  constexpr double kHair = 1e-9;
  double next = 0;
  for (const auto& instant : samples) {
    if (instant.time < next - kHair) continue;
    next = step * (std::floor(instant.time / step + kHair) + 1);
    visit(instant);
  }
}

/// The most seconds between two visits: `step`, and a sample more where samples do not fall on its multiples.
inline double spacing(const std::vector<snags::Instant>& samples, double step) {
  return step + (samples.size() > 1 ? samples[1].time - samples[0].time : 0);
}

}  // namespace wend::answers
