#include "core/geometry/convex.h"

#include <algorithm>

namespace wend::geometry {

void cutRightOf(Convex& area, Point a, Point b) {
  const Vec line = b - a;
  Convex kept;
  kept.reserve(area.size() + 1);
  for (std::size_t i = 0, j = area.size() - 1; i < area.size(); j = i++) {
    const double from = cross(line, area[j] - a), to = cross(line, area[i] - a);
    if ((from < 0 && to > 0) || (from > 0 && to < 0)) kept.push_back(lerp(area[j], area[i], from / (from - to)));
    if (to >= 0) kept.push_back(area[i]);
  }
  if (kept.size() < 3) kept.clear();
  area = std::move(kept);
}

Convex common(Convex a, const Convex& b) {
  for (std::size_t i = 0, j = b.size() - 1; i < b.size() && !a.empty(); j = i++) cutRightOf(a, b[j], b[i]);
  if (b.empty()) a.clear();
  return a;
}

std::optional<Segment> partInside(const Convex& area, Segment s) {
  if (area.empty()) return std::nullopt;
  double from = 0, until = 1;
  for (std::size_t i = 0, j = area.size() - 1; i < area.size(); j = i++) {
    const Vec line = area[i] - area[j];
    const double a = cross(line, s.a - area[j]), b = cross(line, s.b - area[j]);
    if (a < 0 && b < 0) return std::nullopt;
    if (a < 0) from = std::max(from, a / (a - b));
    if (b < 0) until = std::min(until, a / (a - b));
  }
  if (!(from < until)) return std::nullopt;
  return Segment{lerp(s.a, s.b, from), lerp(s.a, s.b, until)};
}

bool holds(const Convex& area, Segment way, double radius) {
  if (area.size() < 3) return false;
  for (std::size_t i = 0, j = area.size() - 1; i < area.size(); j = i++) {
    const Vec edge = area[i] - area[j];
    const double reach = radius * length(edge);
    if (cross(edge, way.a - area[j]) < reach || cross(edge, way.b - area[j]) < reach) return false;
  }
  return true;
}

}  // namespace wend::geometry
