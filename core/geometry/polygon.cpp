#include "core/geometry/polygon.h"

#include <limits>

#include "core/base/check.h"

namespace wend::geometry {

Extent extentOf(std::span<const Point> points) {
  WEND_CHECK(!points.empty());
  Extent box{points[0], points[0]};
  for (const Point& p : points) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

bool contains(std::span<const Point> ring, Point p) {
  bool inside = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const Point a = ring[i], b = ring[j];
    if ((a.y > p.y) == (b.y > p.y)) continue;
    if (p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)) inside = !inside;
  }
  return inside;
}

double signedArea(std::span<const Point> ring) {
  double twice = 0;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
    twice += cross(ring[j] - ring[0], ring[i] - ring[0]);
  return twice / 2;
}

double distanceToEdge(std::span<const Point> ring, Point p) {
  WEND_CHECK(!ring.empty());
  double nearest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
    nearest = std::min(nearest, distance(p, Segment{ring[j], ring[i]}));
  return nearest;
}

namespace {

/// Keeps of `span` where offset + slope * r >= 0.
void keepWhere(Span& span, double offset, double slope) {
  if (slope > 0) {
    span.from = std::max(span.from, -offset / slope);
  } else if (slope < 0) {
    span.until = std::min(span.until, -offset / slope);
  } else if (offset < 0) {
    span.until = span.from - 1;
  }
}

/// Left of the line through `at` along `along`.
void keepLeftOf(Span& span, Point at, Vec along, Point origin, Vec direction) {
  keepWhere(span, cross(along, origin - at), cross(along, direction));
}

}  // namespace

std::optional<Span> shadowOn(std::span<const Point> ring, Point source, Point origin, Vec direction) {
  Span span{0, std::numeric_limits<double>::infinity()};
  Point right = ring[0], left = ring[0];
  bool outside = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const Vec edge = ring[i] - ring[j];
    // An edge that faces the source: the shadow starts behind it.
    if (cross(edge, source - ring[j]) < 0) {
      outside = true;
      keepLeftOf(span, ring[j], edge, origin, direction);
    }
    if (cross(right - source, ring[i] - source) < 0) right = ring[i];
    if (cross(left - source, ring[i] - source) > 0) left = ring[i];
  }
  if (!outside) return std::nullopt;
  keepLeftOf(span, source, right - source, origin, direction);
  keepLeftOf(span, source, source - left, origin, direction);
  if (!(span.until > span.from)) return std::nullopt;
  return span;
}

bool crosses(std::span<const Point> ring, Segment s) {
  Span span{0, 1};
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
    keepLeftOf(span, ring[j], ring[i] - ring[j], s.a, s.b - s.a);
  return span.until - span.from > 1e-12;
}

}  // namespace wend::geometry
