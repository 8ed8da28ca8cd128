#include "core/plan/footprint.h"

#include <algorithm>
#include <cmath>

namespace wend::plan {

namespace {

Point centreOf(const std::vector<Point>& points) {
  if (points.empty()) return {};
  Point low = points.front(), high = points.front();
  for (const Point& point : points) {
    low = {std::min(low.x, point.x), std::min(low.y, point.y)};
    high = {std::max(high.x, point.x), std::max(high.y, point.y)};
  }
  return geometry::lerp(low, high, 0.5);
}

/// `v` turned clockwise. Quarter turns are exact, so that what stands square to the walls stays so.
geometry::Vec turned(geometry::Vec v, double degrees) {
  const double quarters = std::remainder(degrees, 360) / 90;
  if (quarters == std::round(quarters)) {
    if (quarters == 1) return -left(v);
    if (quarters == -1) return left(v);
    return quarters == 0 ? v : -v;
  }
  const double sine = std::sin(geometry::radians(degrees)), cosine = std::cos(geometry::radians(degrees));
  return {v.x * cosine + v.y * sine, v.y * cosine - v.x * sine};
}

}  // namespace

Point centreOf(const Footprint& shape) {
  if (const auto* disc = std::get_if<Disc>(&shape)) return disc->centre;
  if (const auto* outline = std::get_if<Outline>(&shape)) return centreOf(outline->points);
  return centreOf(std::get<Line>(shape).points);
}

Footprint placed(const Footprint& shape, geometry::Vec offset, double turn) {
  if (offset == geometry::Vec{} && turn == 0) return shape;
  Footprint moved = shape;
  if (auto* disc = std::get_if<Disc>(&moved)) {
    disc->centre = disc->centre + offset;
    return moved;
  }
  const Point centre = centreOf(shape);
  const auto outline = std::get_if<Outline>(&moved);
  for (Point& point : outline ? outline->points : std::get<Line>(moved).points)
    point = centre + offset + turned(point - centre, turn);
  return moved;
}

}  // namespace wend::plan
