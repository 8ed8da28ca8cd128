/// The floor cut into triangles along its walls: what a view walks through, triangle by triangle.
///
/// The walls are drawn onto a lattice of 2^-14 m (61 micrometres; coarser beyond two kilometres, so that no coordinate
/// takes more than 26 bits). On it "left of a line" is exact in plain doubles and "inside a circle" in 128-bit
/// integers: no predicate ever errs, so that building ends and no two triangles overlap, whatever is drawn.
///
/// Frame     plan metres.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/geometry/polygon.h"
#include "core/geometry/segment.h"

namespace wend::sight {

using geometry::Point;

class Triangulation {
 public:
  /// A side of a triangle, counter-clockwise; looked at from within, `origin` is its right end. Sides 3t, 3t+1, 3t+2
  /// bound triangle t.
  struct Side {
    std::int32_t origin = -1, end = -1;  ///< corners
    std::int32_t apex = -1;              ///< the far corner of the triangle beyond; -1 when a wall or the box ends it
    std::int32_t right = -1, left = -1;  ///< the other two sides of the triangle beyond, from `origin` to `apex`, on
    std::int32_t twin = -1;              ///< the same side from beyond, open or not; -1 on the box
    std::int32_t wall = -1;              ///< the wall it belongs to; size() of the walls on the box; -1 open
    std::int32_t unused = 0;
  };

  /// Ends nearer than this to an earlier end are that end, and a wall runs through the ends this near to it: a gap of a
  /// tenth of a millimetre in a drawing is no slit to look through.
  static constexpr double kJoin = 1e-3;

  /// Triangles between `walls` in `box`, which grows to hold every wall with a metre to spare.
  ///
  /// Requires  finite coordinates.
  /// Ensures   (1) the triangles are counter-clockwise, have area, and tile the box; (2) every wall longer than kJoin
  ///           is a chain of closed sides from end to end, no point of it further than 2 kJoin from where it was drawn,
  ///           and no other side is closed but those of the box: crossings, T-joints, overlaps and repeats share
  ///           corners; (3) where no wall forbids it no corner lies inside the circle through a triangle's corners; (4)
  ///           the same input gives the same triangles.
  /// Cost      about n to the power 1.2.
  Triangulation(std::span<const geometry::Segment> walls, geometry::Extent box);

  const Side* sides() const { return sides_.data(); }
  const Point* corners() const { return corners_.data(); }
  std::size_t triangles() const { return sides_.size() / 3; }
  std::size_t cornerCount() const { return corners_.size(); }
  const geometry::Extent& box() const { return box_; }

  /// A triangle that holds p, walls and all, or -1 outside the box; quick when `near` is a triangle near it.
  int triangleAt(Point p, int near = 0) const;

  /// Walls cut short because lattice crossings did not settle: 0 but for contrived drawings, and more is seen then.
  int unsettled() const { return unsettled_; }

 private:
  std::vector<Side> sides_;
  std::vector<Point> corners_;
  geometry::Extent box_;
  int unsettled_ = 0;
};

}  // namespace wend::sight
