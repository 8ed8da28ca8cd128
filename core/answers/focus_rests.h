/// Where the focus can be left alone: stretches that one setting serves from the nearest wanted distance to infinity.
#pragma once

#include <vector>

#include "core/answers/answers.h"

namespace wend::answers {

/// Stretches of three seconds or more (common practice, no source) over the samples. Focal length and stop may change
/// inside a stretch, not at its ends.
std::vector<snags::FocusRest> focusRests(const Take& take, const std::vector<Instant>& samples);

}  // namespace wend::answers
