/// The entrance pupil and the frame it sees through.
///
/// Tests     tests/core/sight/body_test.cpp, tests/core/sight/frame_sides_test.cpp
#pragma once

#include "core/geometry/pose.h"
#include "core/sight/half_plane.h"

namespace wend::sight {

using geometry::Point;
using geometry::Point3;
using geometry::Vec;

struct Eye {
  geometry::Pose pupil;
  double tanHalfWidth = 0.5;   ///< of the delivered frame
  double tanHalfHeight = 0.3;  ///< of the delivered frame
  double marginDegrees = 0;    ///< widens the frame on every side; people of the crew are kept out of this wider frame
  bool operator==(const Eye&) const = default;
};

/// A side of a frame as a plane through the pupil: beyond it lies what has dot(along, plan offset from the pupil) + up
/// * (height over the pupil) < 0.
struct FrameSide {
  Vec along;
  double up = 0;
  bool operator==(const FrameSide&) const = default;
};

/// The four planes of an eye's widened frame, ready to be asked many times.
///
/// Ensures   (1) a point is in the frame exactly when its slope lies within `slopes` of its plan direction; (2) each
///           side stands `marginDegrees` further out than that of the delivered frame, measured in the plane through
///           the axis that is square to the side, and no further than square to the axis: a frame is at most a half
///           space.
class Frame {
 public:
  explicit Frame(const Eye& eye);

  Point foot() const { return foot_; }
  double height() const { return height_; }
  bool holds(Point3 p) const;
  /// The slopes in frame along a unit plan direction; empty when the direction is out of frame at every height.
  Slopes slopes(Vec direction) const;
  /// The bearings between which the frame lies, as radians counter-clockwise from the axis' plan direction: all round
  /// (-pi to pi) when it holds the zenith or the nadir.
  Span turns() const { return turns_; }
  /// The plan direction of the axis.
  Vec axis() const { return axis_; }
  FrameSide lower() const { return {axis_ * (tall_.sin * cosTilt_ - tall_.cos * sinTilt_), highest(-1)}; }
  FrameSide upper() const { return {axis_ * (tall_.sin * cosTilt_ + tall_.cos * sinTilt_), -highest(1)}; }

 private:
  struct HalfAngle {
    double sin, cos;
  };
  static HalfAngle widened(double tangent, double marginDegrees);
  /// The cosine of the tilt and, upwards or downwards, the half height together.
  double highest(int sign) const { return tall_.cos * cosTilt_ - sign * tall_.sin * sinTilt_; }

  Point foot_;
  double height_;
  Vec axis_, rightward_;
  double cosTilt_, sinTilt_;
  HalfAngle wide_, tall_;
  Span turns_;
};

/// A person or a thing as an upright cylinder.
struct Body {
  Point centre;
  double radius = 0.28;
  double floor = 0;
  double top = 1.8;
};

/// Degrees by which the delivered frame's nearest side would have to open before the body could be in it; negative:
/// how far the body reaches in across that side. Whether something hides the body makes no difference.
///
/// Ensures   (1) never more than the true angle; for an untilted frame within 0.5 % of the body's radius of it; (2) a
///           body farther out than `marginDegrees` is not seen directly.
double degreesToFrame(const Eye& eye, const Body& body);
/// Never more than that, and cheaper: of a ball around the body.
double leastDegreesToFrame(const Eye& eye, const Body& body);

}  // namespace wend::sight
