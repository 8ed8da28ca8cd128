/// Where the shadows of bodies fall: what a point of a body is in the light of, carried on to what stands behind it.
///
/// Frame     plan metres, heights above the datum.
/// Error     a body's shadow is looked for by a few points of its axis: one whose edge alone reaches in is missed. The
///           ground is taken as the floor under the body.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/answers/take.h"
#include "core/light/shadow.h"

namespace wend::answers {

/// Along the axis of a body: what its shadow is looked for by.
std::vector<Point3> axisOf(const light::Blocker& body);

struct Fallen {
  Point3 at;       ///< a hair before what it falls on
  std::string on;  ///< a wall, an opening or a piece; empty: the ground
};

/// Where light on its way `along`, of length 1, that a point stops would have gone. Nothing within sixty metres:
/// nothing.
std::optional<Fallen> fallOf(const Take& take, const sight::SceneAt& now, geometry::Vec3 along, Point3 point);

}  // namespace wend::answers
