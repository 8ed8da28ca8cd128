/// What hides a change of iris or zoom along a take: the camera's own movement, doorways, leaves in motion, people who
/// cross or wipe the frame, cues of light.
///
/// Source    the kinds and their least strengths are in core/pulls/cover.h: common practice, no source.
/// Stops     knowing what the eye looks at. A frame's sample stands for half a frame on either side of it, so no edge
///           is truer than that.
#pragma once

#include <vector>

#include "core/answers/answers.h"
#include "core/pulls/cover.h"

namespace wend::answers {

/// In order of their starts. Empty without a lens.
/// Requires  samples in order, of the whole take or of every frame of a stretch of it
/// Ensures   of a stretch: what of the take's covers lies in it, cut off at its first and last sample; cues whole
std::vector<pulls::CoverSpan> coversOf(const Take& take, const std::vector<Instant>& samples);

/// A doorway counts for no longer than this before somebody passes it, seconds: a camera that stands before an open
/// door is not covered by it. Our choice.
inline constexpr double kDoorwayLead = 4;
/// And for so long after the passing, while the jambs leave the frame. Our choice.
inline constexpr double kDoorwayLinger = 0.5;

namespace covers {

/// One kind each; covers.cpp puts them together.
void addCameraMoves(const std::vector<Instant>& samples, std::vector<pulls::CoverSpan>& covers);
void addCrossings(const Take& take, const std::vector<Instant>& samples, std::vector<pulls::CoverSpan>& covers);
void addOpenings(const Take& take, const std::vector<Instant>& samples, std::vector<pulls::CoverSpan>& covers);
void addCues(const Take& take, const std::vector<Instant>& samples, std::vector<pulls::CoverSpan>& covers);

/// coverWhere over the samples' times, without `shortest`.
std::vector<pulls::CoverSpan> coverOver(pulls::CoverKind kind, const std::string& by,
                                        const std::vector<Instant>& samples, const std::vector<double>& values,
                                        double least);

}  // namespace covers
}  // namespace wend::answers
