/// How much of the frame a flat shape of the set fills.
#pragma once

#include <vector>

#include "core/geometry/pose.h"

namespace wend::pulls {

/// The share of the frame's area, 0 to 1, that a flat convex shape fills, cut to the frame and to what lies ahead.
/// Nothing that stands before it is asked about.
///
/// Frame     corners in order around it, plan metres; the pose is the entrance pupil's; tangents of the half angles.
/// Requires  at least three corners, tangents positive
/// Ensures   (1) 0 behind the pupil and outside the frame; (2) 1 where it holds the whole frame
double shareOfFrame(const std::vector<geometry::Point3>& corners, const geometry::Pose& pupil, double halfTangentH,
                    double halfTangentV);

}  // namespace wend::pulls
