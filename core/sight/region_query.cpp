#include "core/sight/region_query.h"

#include <algorithm>
#include <cmath>

namespace wend::sight {

namespace {

using geometry::Segment;

double apart(Segment s, Segment t) {
  if (geometry::whereMeet(s, t)) return 0;
  return std::min(
      {geometry::distance(s.a, t), geometry::distance(s.b, t), geometry::distance(t.a, s), geometry::distance(t.b, s)});
}

bool holds(const RegionSlice& slice, Point p) {
  for (int i = 0; i < slice.corners; ++i) {
    const Point a = slice.corner[static_cast<std::size_t>(i)];
    const Point b = slice.corner[static_cast<std::size_t>((i + 1) % slice.corners)];
    if (cross(b - a, p - a) < 0) return false;
  }
  return slice.corners > 2;
}

double apart(const RegionSlice& slice, Segment way) {
  if (holds(slice, way.a)) return 0;
  double least = HUGE_VAL;
  for (int i = 0; i < slice.corners; ++i)
    least = std::min(least, apart(Segment{slice.corner[static_cast<std::size_t>(i)],
                                          slice.corner[static_cast<std::size_t>((i + 1) % slice.corners)]},
                                  way));
  return least;
}

/// The way's box, grown.
struct Reach {
  double left, right, low, high;
  Reach(Segment way, double radius)
      : left(std::min(way.a.x, way.b.x) - radius),
        right(std::max(way.a.x, way.b.x) + radius),
        low(std::min(way.a.y, way.b.y) - radius),
        high(std::max(way.a.y, way.b.y) + radius) {}
  bool misses(Point a, Point b) const {
    return (a.x < left && b.x < left) || (a.x > right && b.x > right) || (a.y < low && b.y < low) ||
           (a.y > high && b.y > high);
  }
  bool misses(const RegionSlice& slice) const {
    const auto all = [&](auto beyond) {
      return std::all_of(slice.corner.begin(), slice.corner.begin() + slice.corners, beyond);
    };
    return all([&](Point p) { return p.x < left; }) || all([&](Point p) { return p.x > right; }) ||
           all([&](Point p) { return p.y < low; }) || all([&](Point p) { return p.y > high; });
  }
};

}  // namespace

bool ringHolds(const SweptRegion& region, Point p) {
  bool inside = false;
  for (const RegionEdge& edge : region.ring) {
    if ((edge.a.y > p.y) == (edge.b.y > p.y)) continue;
    const bool up = edge.b.y > edge.a.y;
    if ((cross(edge.b - edge.a, p - edge.a) > 0) == up) inside = !inside;
  }
  return inside;
}

double distance(const SweptRegion& region, Segment way) {
  if (ringHolds(region, way.a)) return 0;
  double least = HUGE_VAL;
  for (const RegionEdge& edge : region.ring) {
    const double d = apart(Segment{edge.a, edge.b}, way);
    if (d == 0) return 0;
    if (edge.widened) least = std::min(least, d);
  }
  for (const RegionSlice& slice : region.slices) least = std::min(least, apart(slice, way));
  return least;
}

bool meets(const SweptRegion& region, Segment way, double radius) {
  const Reach reach(way, radius);
  for (const RegionEdge& edge : region.ring) {
    if (reach.misses(edge.a, edge.b)) continue;
    const double d = apart(Segment{edge.a, edge.b}, way);
    if (d == 0 || (edge.widened && d <= radius)) return true;
  }
  for (const RegionSlice& slice : region.slices)
    if (!reach.misses(slice) && apart(slice, way) <= radius) return true;
  return ringHolds(region, way.a);
}

}  // namespace wend::sight
