/// The sun over a plan: where it stands by place, day and clock, and whether it reaches a point of the set.
///
/// Frame     plan bearings: those of the sky less the true bearing of plan north.
/// Stops holding where houses, hills, trees or clouds that the plan does not draw stand before it; the sun is taken as
///           a point.
#pragma once

#include <optional>

#include "core/answers/take.h"
#include "core/snags/instant.h"

namespace wend::answers {

/// Nothing without a site or a time of day.
std::optional<snags::SunAt> sunOf(const plan::Plan& plan, double t);

/// The way towards it, of length 1; nothing where it is not known or down.
std::optional<geometry::Vec3> towardsSun(const plan::Plan& plan, double t);

/// Whether light from that way comes to a point: no solid of the set within 300 m, no ceiling. Glass lets it through; a
/// room has a ceiling unless the plan says that it is open above.
/// Requires  `towards` of length 1 and rising.
bool sunReaches(const Take& take, const sight::SceneAt& now, geometry::Vec3 towards, Point3 point);

}  // namespace wend::answers
