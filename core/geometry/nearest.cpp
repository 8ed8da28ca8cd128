#include "core/geometry/nearest.h"

#include <algorithm>

#include "core/base/check.h"

namespace wend::geometry {

Point nearestOnSegment(Point p, Point a, Point b) {
  const Vec along = b - a;
  const double square = dot(along, along);
  if (square == 0) return a;
  return lerp(a, b, std::clamp(dot(p - a, along) / square, 0.0, 1.0));
}

Nearest nearestOnLine(Point p, const std::vector<Point>& line) {
  WEND_CHECK(!line.empty());
  Nearest best{line.front(), distance(p, line.front())};
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point q = nearestOnSegment(p, line[i - 1], line[i]);
    if (const double d = distance(p, q); d < best.distance) best = {q, d};
  }
  return best;
}

Nearest nearestOnRing(Point p, const std::vector<Point>& ring) {
  const Nearest open = nearestOnLine(p, ring);
  const Point closing = nearestOnSegment(p, ring.back(), ring.front());
  const double d = distance(p, closing);
  return d < open.distance ? Nearest{closing, d} : open;
}

bool insideRing(Point p, const std::vector<Point>& ring) {
  bool inside = false;
  for (std::size_t i = 0, before = ring.size() - 1; i < ring.size(); before = i++) {
    const Point a = ring[before], b = ring[i];
    // Half-open in y, so that a ray through a corner is counted once.
    if ((a.y > p.y) == (b.y > p.y)) continue;
    const bool toTheRight = cross(b - a, p - a) > 0;
    if (toTheRight == (b.y > a.y)) inside = !inside;
  }
  return inside;
}

EdgeDistance edgeDistance(Point p, const std::vector<Point>& ring) {
  const Nearest nearest = nearestOnRing(p, ring);
  return {insideRing(p, ring) ? nearest.distance : -nearest.distance, nearest.point};
}

std::optional<double> meeting(Point a, Point b, Point c, Point d) {
  const Vec u = b - a, v = d - c;
  const double area = cross(u, v);
  if (area == 0) return std::nullopt;
  const double s = cross(c - a, v) / area, q = cross(c - a, u) / area;
  if (s < 0 || s > 1 || q < 0 || q > 1) return std::nullopt;
  return s;
}

}  // namespace wend::geometry
