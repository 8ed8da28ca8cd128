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

Nearest nearestOnLine(Point p, std::span<const Point> line) {
  WEND_CHECK(!line.empty());
  Nearest best{line.front(), distance(p, line.front())};
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point q = nearestOnSegment(p, line[i - 1], line[i]);
    if (const double d = distance(p, q); d < best.distance) best = {q, d};
  }
  return best;
}

Nearest nearestOnRing(Point p, std::span<const Point> ring) {
  const Nearest open = nearestOnLine(p, ring);
  const Point closing = nearestOnSegment(p, ring.back(), ring.front());
  const double d = distance(p, closing);
  return d < open.distance ? Nearest{closing, d} : open;
}

EdgeDistance edgeDistance(Point p, std::span<const Point> ring) {
  const Nearest nearest = nearestOnRing(p, ring);
  return {contains(ring, p) ? nearest.distance : -nearest.distance, nearest.point};
}

}  // namespace wend::geometry
