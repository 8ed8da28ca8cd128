/// Random ground, and by brute force which cells of it hold a body that would be seen.
#pragma once

#include <cmath>
#include <cstdint>
#include <random>

#include "core/geometry/segment.h"
#include "core/sight/region_raster.h"
#include "tests/core/sight/world.h"

namespace wend::sight::regions {

using geometry::Segment;
using geometry::Vec;

/// A convex area inscribed in an ellipse: often long and thin, now and then hardly an area at all.
inline RegionSlice randomSlice(std::mt19937_64& random, Point centre, double most) {
  RegionSlice slice;
  slice.corners = 3 + static_cast<int>(random() % 4);
  const double long_ = world::uniform(random, 0, most), thin = world::uniform(random, 0, 1);
  const double wide = long_ * thin * thin * thin, turn = world::uniform(random, 0, 6.3);
  std::array<double, 6> at{};
  for (int i = 0; i < slice.corners; ++i) at[static_cast<std::size_t>(i)] = world::uniform(random, 0, 6.283185);
  std::sort(at.begin(), at.begin() + slice.corners);
  for (std::size_t i = 0; i < static_cast<std::size_t>(slice.corners); ++i) {
    const Vec on{long_ * std::cos(at[i]), wide * std::sin(at[i])};
    slice.corner[i] = centre + geometry::turned(on, turn);
  }
  return slice;
}

/// A star-shaped ring about a centre, closed to the last bit.
inline void addRandomRing(std::mt19937_64& random, Point centre, double most, std::vector<RegionEdge>& ring) {
  const int corners = 3 + static_cast<int>(random() % 20);
  std::vector<Point> at;
  for (int i = 0; i < corners; ++i) {
    const double turn = (i + world::uniform(random, 0, 0.9)) * 6.283185 / corners;
    at.push_back(centre + Vec{std::cos(turn), std::sin(turn)} * world::uniform(random, 0.05 * most, most));
  }
  for (std::size_t i = 0; i < at.size(); ++i) ring.push_back({at[i], at[(i + 1) % at.size()], random() % 2 == 0});
}

inline bool holds(std::span<const RegionEdge> ring, Point p) {
  bool inside = false;
  for (const RegionEdge& e : ring)
    if ((e.a.y > p.y) != (e.b.y > p.y) && p.x < e.a.x + (p.y - e.a.y) * (e.b.x - e.a.x) / (e.b.y - e.a.y))
      inside = !inside;
  return inside;
}

inline double distanceTo(Point p, const RegionSlice& s) {
  double nearest = 1e300;
  bool inside = s.corners > 2;
  for (int i = 0; i < s.corners; ++i) {
    const Point a = s.corner[static_cast<std::size_t>(i)];
    const Point b = s.corner[static_cast<std::size_t>((i + 1) % s.corners)];
    nearest = std::min(nearest, geometry::distance(p, Segment{a, b}));
    if (geometry::cross(b - a, p - a) < 0) inside = false;
  }
  return inside ? 0 : nearest;
}

/// Metres from p to the ground that is to be widened.
inline double distanceTo(Point p, const SweptRegion& region) {
  double nearest = 1e300;
  for (const RegionEdge& e : region.ring)
    if (e.widened) nearest = std::min(nearest, geometry::distance(p, Segment{e.a, e.b}));
  for (const RegionSlice& s : region.slices) nearest = std::min(nearest, distanceTo(p, s));
  return nearest;
}

inline double distanceToRing(Point p, std::span<const RegionEdge> ring) {
  double nearest = 1e300;
  for (const RegionEdge& e : ring) nearest = std::min(nearest, geometry::distance(p, Segment{e.a, e.b}));
  return nearest;
}

/// A few rings and slices, most over the grid, some across its border and some far off.
inline SweptRegion randomRegion(std::mt19937_64& random, const geometry::Grid& grid, int rings, int slices) {
  SweptRegion region;
  const double size = std::max(grid.nx, grid.ny) * grid.cell;
  const auto somewhere = [&] {
    return grid.origin + Vec{world::uniform(random, -0.3, 1.3) * size, world::uniform(random, -0.3, 1.3) * size};
  };
  for (int i = 0; i < rings; ++i) addRandomRing(random, somewhere(), size / 2, region.ring);
  for (int i = 0; i < slices; ++i) region.slices.push_back(randomSlice(random, somewhere(), size / 2));
  return region;
}

}  // namespace wend::sight::regions
