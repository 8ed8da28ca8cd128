/// How finely sight is cut into steps.
#pragma once

#include <algorithm>

#include "core/answers/take.h"

namespace wend::answers {

/// Steps a second: the take's frames, and no fewer than 24. Within a step ways and aims are held against straight ones
/// at its quarters; a slow frame rate is no reason to look less closely.
inline double sightRate(const Take& take) {
  return std::max(take.rate(), 24.0);
}

}  // namespace wend::answers
