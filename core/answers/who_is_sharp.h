/// Who is sharp and when, followed or not, and which two or three people one setting would hold.
#pragma once

#include "core/answers/answers.h"

namespace wend::answers {

/// Shorter than this nothing is told, seconds. Our choice.
inline constexpr double kShortestSharp = 0.5;

/// Performers whose eyes are in the frame, not hidden, and blurred by no more than the blur circle, sample by sample.
/// Gaps of a sample do not part a span. In order of starts. Empty without a lens.
std::vector<snags::SharpSpan> sharpSpans(const Take& take, const std::vector<Instant>& samples);

/// Every two and every three performers in the frame together for kShortestSharp or longer, cut where one setting
/// begins or stops to hold all of them within the plan's blurShare. In order of starts. Empty without a lens.
std::vector<snags::Together> togetherInFrame(const Take& take, const std::vector<Instant>& samples);

}  // namespace wend::answers
