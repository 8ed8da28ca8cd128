#include "core/answers/floors.h"

#include <algorithm>
#include <cmath>

#include "core/answers/route_ground.h"
#include "core/geometry/polygon.h"
#include "core/geometry/segment.h"

namespace wend::answers {

using geometry::Point;
using geometry::Vec;

namespace {

constexpr double kEvery = 0.1;  ///< metres
/// What is drawn so little over the floor stands on it.
constexpr double kOver = 0.05;
/// Deeper than anybody's feet.
constexpr double kDeeper = 1;

bool covers(const plan::Footprint& shape, Point pos) {
  if (const auto* disc = std::get_if<plan::Disc>(&shape)) return geometry::distance(pos, disc->centre) <= disc->radius;
  if (const auto* outline = std::get_if<plan::Outline>(&shape)) return geometry::contains(outline->points, pos);
  return false;
}

/// Whether stands(place, side) holds at places no further apart than kEvery; `side` points to the left of the way.
template <class Stands>
bool allAlong(Point a, Point b, Stands stands) {
  const double length = geometry::distance(a, b);
  const int parts = std::max(1, static_cast<int>(std::ceil(length / kEvery)));
  const Vec side = length > 0 ? geometry::left(geometry::unit(b - a)) : Vec{0, 0};
  for (int i = 0; i <= parts; ++i)
    if (!stands(geometry::lerp(a, b, i / double(parts)), side)) return false;
  return true;
}

bool standsAt(const plan::Plan& plan, const sight::PieceShape& shape, double bottom) {
  const auto floored = [&](Point place, Vec = {}) { return floorAt(plan, place) >= bottom - kOver; };
  const auto points = sight::pointsOf(shape);
  if (const auto* disc = std::get_if<sight::DiscShape>(&shape)) {
    for (int degrees = 0; degrees < 360; degrees += 15)
      if (!floored(disc->centre + geometry::turned({disc->radius, 0}, geometry::radians(degrees)))) return false;
    return floored(disc->centre);
  }
  const bool closed = std::holds_alternative<sight::OutlineShape>(shape);
  for (std::size_t i = closed ? 0 : 1; i < points.size(); ++i)
    if (!allAlong(points[(i + points.size() - 1) % points.size()], points[i], floored)) return false;
  return true;
}

}  // namespace

double floorAt(const plan::Plan& plan, Point place) {
  const auto& areas = plan.set.areas;
  for (std::size_t i = areas.size(); i-- > 0;)
    if (areas[i].floor && covers(areas[i].shape, place)) return *areas[i].floor;
  for (const auto& room : plan.set.rooms)
    if (geometry::contains(room.outline, place)) return room.floor;
  return 0;
}

std::optional<double> footOf(const plan::Plan& plan, const sight::WallBand& wall) {
  const double lowest = floorsOf(plan).lowest;
  if (lowest >= wall.bottom) return std::nullopt;
  const auto stands = [&](Point place, Vec side) {
    const Vec off = side * (wall.thickness / 2 + kOver);
    return std::max(floorAt(plan, place + off), floorAt(plan, place - off)) >= wall.bottom - kOver;
  };
  for (std::size_t i = 0; i + 1 < wall.points.size(); ++i)
    if (!allAlong(wall.points[i], wall.points[i + 1], stands)) return std::nullopt;
  return lowest - kDeeper;
}

std::optional<double> footOf(const plan::Plan& plan, const sight::PieceIn& piece) {
  const double lowest = floorsOf(plan).lowest;
  if (lowest >= piece.bottom || !standsAt(plan, piece.shape, piece.bottom)) return std::nullopt;
  for (const sight::Shift& shift : piece.shifts)
    if (!standsAt(plan, sight::shifted(piece.shape, piece.pivot, shift), piece.bottom)) return std::nullopt;
  return lowest - kDeeper;
}

}  // namespace wend::answers
