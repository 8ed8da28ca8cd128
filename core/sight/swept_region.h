/// The ground a lens may see during one short step of time, as shapes to be filled and widened: what `SweptView` finds
/// and what the raster draws.
///
/// Frame     plan metres.
/// Tests     tests/core/sight/swept_view_test.cpp
#pragma once

#include <array>
#include <span>
#include <vector>

#include "core/geometry/point.h"

namespace wend::sight {

using geometry::Point;

/// One edge of the ground seen from the middle of the step. Edges form closed rings, counter-clockwise, even-odd.
struct RegionEdge {
  Point a, b;
  /// Whether ground within a body's radius of this edge is to be added. False where a slice of `slices` covers what
  /// lies beyond the edge anyway.
  bool widened = true;
  /// Whether a wall runs along all of it, nowhere further than 2 `Triangulation::kJoin` away. So of the bodies nearer
  /// to it than their radius none stands further than that from walls.
  bool onWall = false;
};

/// A convex piece of ground that becomes visible while the lens moves; counter-clockwise.
struct RegionSlice {
  std::array<Point, 6> corner;
  int corners = 0;
};

/// Ensures   every point the lens sees at some instant of the step lies in a ring or in a slice: it may hold more, and
///           never less. Asked again and again, it keeps its memory.
struct SweptRegion {
  std::vector<RegionEdge> ring;
  std::vector<RegionSlice> slices;
  void clear() {
    ring.clear();
    slices.clear();
  }
};

}  // namespace wend::sight
