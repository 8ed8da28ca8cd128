/// The nearest place of a line or an outline, and how deep inside an outline a place lies.
///
/// Frame     plan metres. A ring is closed from its last point to its first; its sense of turning does not matter.
/// Cost      linear in the number of points.
#pragma once

#include <span>

#include "core/geometry/polygon.h"

namespace wend::geometry {

struct Nearest {
  Point point;
  double distance = 0;
};

/// Ensures   (1) the point lies on the closed segment ab, (2) no point of it is nearer; a == b is a point.
Point nearestOnSegment(Point p, Point a, Point b);

/// Requires  at least one point. Of several equally near places the first along the line counts.
Nearest nearestOnLine(Point p, std::span<const Point> line);
Nearest nearestOnRing(Point p, std::span<const Point> ring);

/// Distance to the ring's edge, positive inside and negative outside, with the edge point it is measured to.
struct EdgeDistance {
  double inward = 0;
  Point edge;
};
/// Requires  at least one point. Ensures |inward| is the distance to `edge`, and no edge point is nearer.
EdgeDistance edgeDistance(Point p, std::span<const Point> ring);

}  // namespace wend::geometry
