#include "core/sight/mirror_plan.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace wend::sight {

namespace {

using geometry::Extent;
using geometry::Segment;

/// A wall no further in front than this is behind the glass.
constexpr double kFlush = 1e-3;

std::array<Point, 4> cornersOf(const Extent& box) {
  return {box.low, Point{box.high.x, box.low.y}, box.high, Point{box.low.x, box.high.y}};
}

}  // namespace

std::optional<Segment> inFront(Segment wall, Segment mirror) {
  const Vec along = geometry::unit(mirror.b - mirror.a);
  const double a = cross(along, wall.a - mirror.a), b = cross(along, wall.b - mirror.a);
  if (std::max(a, b) <= kFlush) return std::nullopt;
  if (a >= 0 && b >= 0) return wall;
  const Point on = lerp(wall.a, wall.b, a / (a - b));
  return a < 0 ? Segment{on, wall.b} : Segment{wall.a, on};
}

Extent boxByMirror(const Extent& box, Segment mirror) {
  std::vector<Point> corners;
  for (const Point corner : cornersOf(box))
    corners.insert(corners.end(), {corner, geometry::reflected(corner, mirror)});
  return geometry::extentOf(corners);
}

void addLineBut(Segment mirror, const Extent& box, std::vector<Segment>& walls) {
  const double size = geometry::distance(mirror.a, mirror.b);
  const Vec along = (mirror.b - mirror.a) / size;
  double low = -1, high = size + 1;
  for (const Point corner : cornersOf(box)) {
    low = std::min(low, dot(corner - mirror.a, along));
    high = std::max(high, dot(corner - mirror.a, along));
  }
  walls.push_back({mirror.a + along * low, mirror.a});
  walls.push_back({mirror.b, mirror.a + along * high});
}

std::vector<Segment> wallsByMirror(std::span<const Segment> walls, Segment mirror, const Extent& box) {
  std::vector<Segment> both;
  for (const Segment& wall : walls) {
    const auto front = inFront(wall, mirror);
    if (!front) continue;
    both.push_back(*front);
    both.push_back({geometry::reflected(front->a, mirror), geometry::reflected(front->b, mirror)});
  }
  addLineBut(mirror, boxByMirror(box, mirror), both);
  return both;
}

SweptStep imageOf(const SweptStep& step, Segment mirror) {
  SweptStep image = step;
  const double twice = 2 * geometry::bearingOf(mirror.b - mirror.a);
  for (SweptPose* pose : {&image.from, &image.until}) {
    pose->pupil = geometry::reflected(pose->pupil, mirror);
    pose->bearing = twice - pose->bearing;
  }
  return image;
}

}  // namespace wend::sight
