#include "core/geometry/convex.h"

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
