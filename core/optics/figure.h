/// A person in frame: the points a figure is judged on, where they fall in the picture, and what hides them.
///
/// Frame     plan metres for figures; half-frames in the picture: x right, y up, the frame's edges at -1 and +1. Poses
///           here are those of the entrance pupil.
/// Stops     being more than a count of 25 points on an upright cylinder: an arm, a hat or a coat is not seen.
#pragma once

#include <array>
#include <functional>
#include <optional>

#include "core/geometry/pose.h"
#include "core/optics/frame.h"

namespace wend::optics {

/// An upright cylinder with eyes. Heights are above `foot`.
struct Figure {
  geometry::Point3 foot;
  double radius = 0.25;
  double eyes = 1.6;
  double top = 1.7;
};

/// Of that stature with its eyes so high above its feet in whatever posture: top = eyes + 0.065 stature.
Figure figureOf(geometry::Point3 foot, double radius, double eyesAbove, double stature);

geometry::Point3 eyesOf(const Figure& figure);

/// The eyes first, then eight heights (2k+1)/16 of the top, three points each: -0.9, 0 and +0.9 radii square to the
/// line from the pupil in plan, left to right as the pupil sees them.
using FigurePoints = std::array<geometry::Point3, 25>;
FigurePoints figurePoints(const Figure& figure, geometry::Point pupil);

/// Where a point falls in the picture, in half-frames; nothing at or behind the pupil. May lie outside the frame.
std::optional<geometry::Point> placeInFrame(geometry::Point3 point, const geometry::Pose& pupil, HalfTangents half);

/// In the frame, edges included.
bool inFrame(geometry::Point3 point, const geometry::Pose& pupil, HalfTangents half);

enum class Showing { whole, part, hidden, out };
/// Whether anything of somebody is to be seen.
constexpr bool shows(Showing showing) {
  return showing == Showing::whole || showing == Showing::part;
}

/// Ensures   (1) out: no point in frame; hidden: none of those in frame is seen; whole: the eyes are in frame and every
///               point in frame is seen; part: all else
///           (2) asks `hides` about points in frame only, each once at most
Showing showing(const Figure& figure, const geometry::Pose& pupil, HalfTangents half,
                const std::function<bool(geometry::Point3)>& hides);

/// Whether the straight line meets the figure's cylinder, surface included.
bool standsBetween(const Figure& figure, geometry::Point3 from, geometry::Point3 to);

/// A box in the picture, half-frames.
struct FrameBox {
  double left = 0, right = 0, bottom = 0, top = 0;
};

/// The box around the figure as the pupil sees it: around the upright rectangle through its axis, as wide as the
/// figure, square to the line from the pupil in plan. Not cut to the frame. Nothing when all of it is behind; what lies
/// nearer than kNearest ahead of the pupil is left out.
std::optional<FrameBox> boxInFrame(const Figure& figure, const geometry::Pose& pupil, HalfTangents half);

/// The part of a box inside the frame; nothing when no part is.
std::optional<FrameBox> cutToFrame(const FrameBox& box);

/// Metres ahead of the pupil within which nothing is drawn.
inline constexpr double kNearest = 0.01;

}  // namespace wend::optics
