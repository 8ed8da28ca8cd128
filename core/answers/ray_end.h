/// Where a line of sight ends: on what stands, or on the floor. Plan metres.
#pragma once

#include <optional>

#include "core/answers/take.h"

namespace wend::answers {

/// Farther than this nothing is looked for, metres.
inline constexpr double kFarthestRay = 200;

/// Metres along a ray to the first solid or to the floor under its start; nothing when it meets neither. People do not
/// stop it.
/// Requires  direction of length 1
std::optional<double> rayLength(const Take& take, const sight::SceneAt& now, geometry::Point3 from,
                                geometry::Vec3 direction);

/// The ray through a place of the picture in half-frames, of length 1.
geometry::Vec3 rayThrough(const geometry::Pose& pupil, optics::HalfTangents half, geometry::Point place);

}  // namespace wend::answers
