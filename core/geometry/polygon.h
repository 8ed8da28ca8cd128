/// Closed outlines of the floor plan: inside or outside, area, extent, and the shadow a convex one throws.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/geometry/segment.h"

namespace wend::geometry {

using Ring = std::vector<Point>;

/// An axis-aligned part of the plan, metres.
struct Extent {
  Point low, high;
  bool operator==(const Extent&) const = default;
};

/// The smallest extent around the points. Requires at least one.
Extent extentOf(std::span<const Point> points);

/// Even-odd: a place on a left or lower edge is inside, on a right or upper edge outside, so that outlines sharing an
/// edge never both hold it. Orientation does not matter.
bool contains(std::span<const Point> ring, Point p);

/// Square metres, positive when the ring goes counter-clockwise.
double signedArea(std::span<const Point> ring);

/// Metres from p to the ring's edge, inside or outside. Requires at least one point.
double distanceToEdge(std::span<const Point> ring, Point p);

/// The stretch of a ray from which `source` is cut off by the convex ring: every p of it has the segment from `source`
/// to p through the ring.
///
/// Requires  the ring convex, counter-clockwise, with area.
/// Ensures   the shadow of a convex ring is convex, so the answer is one stretch; nothing when `source` lies inside
///           the ring or the ray passes the shadow by.
std::optional<Span> shadowOn(std::span<const Point> ring, Point source, Point origin, Vec direction);

/// True when the open segment from a to b passes through the inside of the convex counter-clockwise ring.
bool crosses(std::span<const Point> ring, Segment s);

}  // namespace wend::geometry
