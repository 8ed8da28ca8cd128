/// The nearest place of a line or an outline, what lies inside an outline, and where two segments meet.
///
/// Frame     plan metres. A ring is closed from its last point to its first; its sense of turning does not matter.
/// Cost      linear in the number of points.
#pragma once

#include <optional>
#include <vector>

#include "core/geometry/point.h"

namespace wend::geometry {

struct Nearest {
  Point point;
  double distance = 0;
};

/// Ensures   (1) the point lies on the closed segment ab, (2) no point of it is nearer; a == b is a point.
Point nearestOnSegment(Point p, Point a, Point b);

/// Requires  at least one point. Of several equally near places the first along the line counts.
Nearest nearestOnLine(Point p, const std::vector<Point>& line);
Nearest nearestOnRing(Point p, const std::vector<Point>& ring);

/// Even-odd: true strictly inside, false strictly outside. On the edge itself the answer is either; whoever must know
/// asks nearestOnRing as well.
bool insideRing(Point p, const std::vector<Point>& ring);

/// Distance to the ring's edge, positive inside and negative outside, with the edge point it is measured to.
struct EdgeDistance {
  double inward = 0;
  Point edge;
};
/// Requires  at least one point. Ensures |inward| is the distance to `edge`, and no edge point is nearer.
EdgeDistance edgeDistance(Point p, const std::vector<Point>& ring);

/// Share along ab, 0 to 1, at which it meets the closed segment cd; nothing for segments that miss or run parallel.
std::optional<double> meeting(Point a, Point b, Point c, Point d);

}  // namespace wend::geometry
