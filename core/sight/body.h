/// Whether the lens sees a body: a person standing at a place, as a filled upright cylinder.
#pragma once

#include <optional>

#include "core/sight/scene.h"

namespace wend::sight {

/// Directions across a body are asked at every corner that matters, just beside it, and no further apart than this;
/// between two corners a gap that opens and closes again between two answers is missed.
inline constexpr double kFanStep = 0.25;  // degrees

struct BodySight {
  bool seen = false;
  std::optional<int> mirror;  ///< the tag of the mirror it is seen in; nothing when it is seen directly
  double marginDegrees = 0;   ///< see degreesToFrame
};

/// Ensures   (1) an upright line within the body's radius, from `floor` to `top`, is seen when one of its heights is in
///           the widened frame and hidden by nothing; the body is seen when such a line is;
///           (2) lines that a wall cuts off from the body's centre do not count;
///           (3) direct sight is named before a mirror, mirrors in the order of the pieces;
///           (4) in a mirror: the ray from the pupil to the reflected body meets the mirror's rectangle in the widened
///           frame, and both halves of its way are open; one bounce; a mirror within a millimetre of a solid wins;
///           (5) sight is the same both ways: when a slender body at p is seen from q at its only height, so is q from
///           p.
/// Error     gaps narrower than kFanStep that no corner borders; slivers under kSliver do not count.
/// Cost      in the prisms between pupil and body, times the directions asked.
BodySight bodySight(const SceneAt& now, const Eye& eye, const Body& body);

}  // namespace wend::sight
