/// The ground on which a whole body stays below the frame, or above it, all through a short step: somebody who crouches
/// near a lens held high, or stands far off while it looks down.
///
/// Why it is sound. A point is beyond a side of the frame when a number that is linear in the point is negative
/// (`FrameSide`). At any instant that number is the one of the middle of the step and no more than what its factors
/// differ by, times how far from the pupil the point is. Within a square about the pupil that is bounded, and what is
/// left is a half plane.
///
/// Frame     plan metres, heights above the datum.
#pragma once

#include <array>
#include <limits>
#include <optional>

#include "core/geometry/convex.h"
#include "core/sight/eye.h"
#include "core/sight/low_shadow.h"

namespace wend::sight {

/// What an eye or a body strays by between two looks is taken as half as much again as it does from look to look.
inline constexpr double kAsMuchAgain = 1.5;

/// Whether an eye turns and tilts by more than 30 degrees between two looks at it: it has been anywhere between them.
bool whirls(const geometry::Pose& before, const geometry::Pose& after);

/// A side of the frame during a step. Unless it is found it tells nothing.
struct StepSide {
  FrameSide middle;  ///< half-way through the step
  /// What that of any other instant differs by at most: its `along`, its `up`, and by the pupil's way, in metres.
  double turned = std::numeric_limits<double>::infinity(), tipped = 0, moved = 0;
  bool operator==(const StepSide&) const = default;
};

struct StepSides {
  Point foot;  ///< of the pupil half-way through the step, like the height and the plan direction of its axis
  double height = 0;
  Vec axis{0, 1};
  StepSide lower, upper;
  bool operator==(const StepSides&) const = default;
};

/// An eye with its frame, worked out once for all that is asked of it.
struct FramedEye {
  explicit FramedEye(const Eye& eye) : pupil(eye.pupil), frame(eye) {}
  geometry::Pose pupil;
  Frame frame;
};

/// From the eye at the start, the quarters and the end of a step.
///
/// Ensures   nothing is told where one of them is missing or whirls from one to the next.
/// Error     between two looks the sides may stray half as much again as they do at any of them, as in `eyeStep`.
StepSides sidesOver(const std::array<std::optional<FramedEye>, 5>& eyes);

/// Of an eye behind an upright mirror.
StepSides imageOf(const StepSides& sides, geometry::Segment mirror);

/// Ground within `reach` of the pupil from which no height of the body comes back inside that side of the frame at any
/// instant of the step.
///
/// Ensures   convex, of four corners at most; empty when only ground behind the pupil would be left.
geometry::Convex groundBeyond(const StepSides& sides, const StepSide& side, Heights body, double reach);

}  // namespace wend::sight
