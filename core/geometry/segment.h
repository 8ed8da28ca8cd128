/// Straight pieces of the floor plan: where a line of sight meets one, how near a place is to it, its mirror image.
///
/// Frame     plan metres. A ray has a unit direction, so that what comes back is metres along it.
#pragma once

#include <algorithm>
#include <optional>

#include "core/geometry/point.h"

namespace wend::geometry {

struct Segment {
  Point a, b;
  bool operator==(const Segment&) const = default;
};

/// v turned counter-clockwise by `radians`.
inline Vec turned(Vec v, double radians) {
  const double c = std::cos(radians), s = std::sin(radians);
  return {v.x * c - v.y * s, v.x * s + v.y * c};
}

/// Angle from `from` to `to` in radians, counter-clockwise positive, in [-pi, pi]. Requires neither zero.
inline double angleBetween(Vec from, Vec to) {
  return std::atan2(cross(from, to), dot(from, to));
}

/// Metres along the ray at which it meets the segment.
///
/// Ensures   (1) a ray that meets a chain of segments at a joint meets exactly one of the two it passes between: an end
///           counts with the side it lies on, "on the line" going left; (2) a ray along the segment meets nothing.
inline std::optional<double> whereRayMeets(Point origin, Vec direction, Segment s) {
  const Vec a = s.a - origin, b = s.b - origin;
  const bool aLeft = cross(direction, a) >= 0, bLeft = cross(direction, b) >= 0;
  if (aLeft == bLeft) return std::nullopt;
  const double r = cross(a, b - a) / cross(direction, b - a);
  if (!(r >= 0)) return std::nullopt;
  return r;
}

/// Metres from p to the nearest point of the segment.
inline double distance(Point p, Segment s) {
  const Vec d = s.b - s.a;
  const double squared = dot(d, d);
  const double share = squared > 0 ? std::clamp(dot(p - s.a, d) / squared, 0.0, 1.0) : 0.0;
  return distance(p, s.a + d * share);
}

/// Share of `s` (0 at a, 1 at b) at which it meets `t`, ends included; nothing for parallel ones.
inline std::optional<double> whereMeet(Segment s, Segment t) {
  const Vec d = s.b - s.a, e = t.b - t.a;
  const double turn = cross(d, e);
  if (turn == 0) return std::nullopt;
  const double share = cross(t.a - s.a, e) / turn, other = cross(t.a - s.a, d) / turn;
  if (share < 0 || share > 1 || other < 0 || other > 1) return std::nullopt;
  return share;
}

/// The mirror image in the line through the segment. Requires the segment not to be a point.
inline Vec reflected(Vec v, Segment mirror) {
  const Vec d = mirror.b - mirror.a;
  return d * (2 * dot(v, d) / dot(d, d)) - v;
}
inline Point reflected(Point p, Segment mirror) {
  return mirror.a + reflected(p - mirror.a, mirror);
}

/// The part of a ray inside a circle; nothing when it misses or only touches. `from` is 0 when the ray starts inside.
inline std::optional<Span> chord(Point origin, Vec direction, Point centre, double radius) {
  const Vec d = centre - origin;
  const double along = dot(d, direction), off = cross(direction, d);
  const double squared = radius * radius - off * off;
  if (squared <= 0) return std::nullopt;
  const double half = std::sqrt(squared);
  if (along + half <= 0) return std::nullopt;
  return Span{std::max(0.0, along - half), along + half};
}

}  // namespace wend::geometry
