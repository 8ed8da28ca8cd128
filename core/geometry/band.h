/// Bands of a width around polylines: what walls are made of on the floor plan. Plan metres.
#pragma once

#include <array>
#include <span>
#include <vector>

#include "core/geometry/polygon.h"

namespace wend::geometry {

/// Four corners, counter-clockwise.
using Quad = std::array<Point, 4>;

/// A mitre reaches at most this many half widths from its joint: sharper joints are cut off there.
inline constexpr double kMitreLimit = 4;

/// A polyline with its length, so that places can be named by metres from its first point.
class Course {
 public:
  /// Points nearer than kTouch to the one before are left out. Requires two points further apart than that.
  explicit Course(std::span<const Point> points);

  double length() const { return starts_.back(); }
  /// The place `along` metres from the first point, clamped to the ends; at a joint the way of the later leg.
  Point at(double along) const;
  /// The unit direction there.
  Vec direction(double along) const;
  const std::vector<Point>& points() const { return points_; }
  /// Metres from the first point to each point.
  const std::vector<double>& starts() const { return starts_; }

 private:
  std::size_t legAt(double along) const;
  std::vector<Point> points_;
  std::vector<double> starts_;
};

/// The band of `width` around the part of the course from `part.from` to `part.until` metres, as convex quads, one a
/// leg.
///
/// Ensures   (1) joints inside the course are mitred, cuts and ends are square; (2) neighbouring quads share their
///           mitre line to rounding; (3) the parts of a course cut into stretches cover it without gap or overlap, when
///           no cut lies within the mitre of a joint.
std::vector<Quad> bandAround(const Course& course, double width, Span part);

}  // namespace wend::geometry
