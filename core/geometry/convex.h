/// Convex areas of the plan, counter-clockwise: cut by lines, met with each other, asked whether a body fits in.
#pragma once

#include <optional>
#include <vector>

#include "core/geometry/segment.h"

namespace wend::geometry {

using Convex = std::vector<Point>;  ///< corners, counter-clockwise; empty: nothing

/// Cuts off what lies right of the line from a to b.
/// Ensures   (1) what remains is convex and counter-clockwise; (2) nothing remains of what lies right altogether.
void cutRightOf(Convex& area, Point a, Point b);

/// What both hold.
Convex common(Convex a, const Convex& b);

/// The part of a segment that lies in the area; nothing where that is a point at most.
std::optional<Segment> partInside(const Convex& area, Segment s);

/// True when every place within `radius` metres of the way lies in the area. Requires radius >= 0.
bool holds(const Convex& area, Segment way, double radius);

}  // namespace wend::geometry
