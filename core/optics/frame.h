/// The delivered picture: how large it is behind the lens and how wide it looks in front of it.
///
/// Frame     millimetres behind the lens, tangents and degrees in front of it. Widths count as if unsqueezed: a lens
///           that squeezes by 2 looks as wide as a gate twice as wide behind an ordinary lens.
/// Source    angle of view 2 atan(side / 2f): Bill Claff, "Angle of View Values for Common Focal Lengths", 2006,
///           photonstophotos.net. Squeeze multiplies the tangent, never the angle:
///           jukolart.us, "Lens Angle and Field of View".
/// Stops     holding for lenses that do not keep straight lines straight (fisheyes), and within a few focal lengths of
///           the lens, where the image moves away and narrows the view; `tangentScale` is how a plan states that.
#pragma once

#include <optional>

namespace wend::optics {

struct FrameSize {
  double width = 0, height = 0;  ///< mm
  bool operator==(const FrameSize&) const = default;
};

/// The largest centred rectangle of `aspect` (width over height) inside the gate widened by `squeeze`; without an
/// aspect the whole of it.
///
/// Requires  every length, squeeze and aspect positive
/// Ensures   (1) one side is the widened gate's, the other no longer than the gate's
///           (2) width / height = aspect
FrameSize deliveredFrame(FrameSize gate, double squeeze, std::optional<double> aspect);

/// Tangents of the half angles the frame covers, right and up of the axis.
struct HalfTangents {
  double h = 0, v = 0;
  bool operator==(const HalfTangents&) const = default;
};

/// How much wider (positive `breathing`) or narrower the view is when focused at `distance`, both distances in metres
/// from the sensor: 1 + breathing x closeFocus / distance. So `breathing` is the share gained at closest focus, and a
/// lens set at infinity has none. Requires distance > 0, infinity allowed.
double breathingScale(double breathing, double closeFocus, double distance);

/// Requires  focal > 0, tangentScale > 0
/// Ensures   h / v = frame width / height
HalfTangents halfTangents(FrameSize frame, double focal, double tangentScale = 1);

/// Full angles, degrees.
struct FieldOfView {
  double horizontal = 0, vertical = 0, diagonal = 0;
};

/// Ensures   in tangents of the half angles, diagonal^2 = horizontal^2 + vertical^2
FieldOfView fieldOfView(HalfTangents half);

/// The half angle no widened frame exceeds, degrees: a plane picture cannot reach 90.
inline constexpr double kWidestHalfAngle = 89.5;

/// The frame opened by `margin` degrees on every side: who must not be in frame should not be near it either.
///
/// Requires  margin >= 0
/// Ensures   (1) contains the frame it came from; margin 0 returns it unchanged
///           (2) each half angle grows by `margin`, up to kWidestHalfAngle
HalfTangents widened(HalfTangents half, double margin);

}  // namespace wend::optics
