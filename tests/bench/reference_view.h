// The same question put together from general geometry libraries: what a body of a radius is seen in, at one instant.
#pragma once

#include <memory>
#include <span>

#include "core/geometry/segment.h"
#include "core/sight/cell_bits.h"

namespace wend::reference {

/// The visible polygon by CGAL's triangular expansion (exact predicates and constructions), cut to the frame by
/// Boost.Geometry, grown by GEOS and its cell centres filled row by row.
///
/// It answers less than a step does: one instant, so that what is seen between two frames is missed; and GEOS draws the
/// grown corners as polygons inside the true circles.
class ReferenceView {
 public:
  /// Requires  the walls in the extent; the box they are put into is a metre larger.
  ReferenceView(std::span<const geometry::Segment> walls, const geometry::Extent& extent);
  ~ReferenceView();
  ReferenceView(const ReferenceView&) = delete;
  ReferenceView& operator=(const ReferenceView&) = delete;

  /// Finds the face the lens stands in: kept apart, so that it need not be timed.
  void standAt(geometry::Point lens);
  /// Adds the cells seen from there. Requires halfAngle < 80 degrees.
  void add(double bearing, double halfAngle, double radius, sight::CellBits& out);

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace wend::reference
