/// How near a body comes to the ground seen during a step, without a raster.
///
/// Frame     plan metres. The raster's rule, exactly: ground is what a ring holds by parity or a slice holds, and
///           nearness counts to slices and to widened edges.
#pragma once

#include <optional>

#include "core/geometry/segment.h"
#include "core/sight/swept_region.h"

namespace wend::sight {

/// Whether a ring holds p by parity.
bool ringHolds(const SweptRegion& region, Point p);

/// Metres from the seen ground to the nearest point of a straight way; 0 when the way touches it.
///
/// Ensures   (1) 0 for a way that has a point in a ring or a slice; (2) otherwise the least distance to a widened edge
///           or a slice, infinite when there is none; (3) a way of no length is a point.
/// Cost      edges and slices.
double distance(const SweptRegion& region, geometry::Segment way);

/// Whether a body of that radius may be seen while it goes straight along `way` during the step.
///
/// Requires  radius >= 0.
/// Ensures   the same as distance(region, way) <= radius, and quicker.
bool meets(const SweptRegion& region, geometry::Segment way, double radius);

}  // namespace wend::sight
