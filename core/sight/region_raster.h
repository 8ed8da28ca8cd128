/// The cells in which a body would be seen, from the ground seen during a step: a body stands on a cell's centre and
/// is seen when the seen ground comes nearer to it than its radius.
///
/// The rings are filled by parity and their widened edges and the slices drawn as convex areas grown by the radius,
/// one stretch of cells a row: no outline is ever offset.
///
/// Frame     plan metres; edges and slices may lie outside the grid.
/// Error     computed in single precision, so shapes grow by a slack of (1e-3 + 1e-6 n) cells, n the largest coordinate
///           of the shape or the grid in cells from the grid's corner: 0.1 mm on a thousand cells of 5 cm.
#pragma once

#include <span>

#include "core/sight/cell_bits.h"
#include "core/sight/row_kernels.h"
#include "core/sight/swept_region.h"

namespace wend::sight {

/// Which bodies are asked about.
///
/// Seen ground ends at walls, and what is nearer than the radius to such an end is nearer than that to a wall. Where
/// bodies stand clear of walls, that ground is nobody's, and drawing it is work for nothing: for every body further
/// than radius, slack and 2 `Triangulation::kJoin` from all walls both kinds give the same answer. Walls that a body
/// may stand across, such as hanging cloth, leave only `anywhere`.
enum class Bodies { anywhere, clearOfWalls };

/// Keeps its memory from step to step.
class RegionRaster {
 public:
  /// Requires  radius >= 0.
  RegionRaster(const geometry::Grid& grid, double radius, const RowKernels& kernels = rowKernels(),
               Bodies bodies = Bodies::anywhere);

  const geometry::Grid& grid() const { return grid_; }
  double radius() const { return radius_ * grid_.cell; }
  /// Whether ground near the edge is to be added.
  bool widens(const RegionEdge& edge) const {
    return edge.widened && !(edge.onWall && bodies_ == Bodies::clearOfWalls);
  }

  /// Adds the cells of the seen ground; the box of what was touched.
  ///
  /// Requires  rings closed, end point equal to start point to the last bit; slices convex, counter-clockwise.
  /// Ensures   (1) every cell whose centre lies in a ring, or nearer than the radius to an edge it widens or a slice,
  ///           is set: at an edge that is not widened, a centre within the slack may go either way; (2) no cell further
  ///           than radius and slack is.
  /// Cost      a stretch for every row of every shape, and a word for every 64 cells of the rings' box.
  WordBox add(const SweptRegion& region, CellBits& out);
  /// The same for the rings alone, and without widening.
  WordBox addInterior(std::span<const RegionEdge> ring, CellBits& out);
  /// The cells nearer than the radius to an edge or a slice.
  WordBox addNear(const RegionEdge& edge, CellBits& out);
  WordBox addNear(const RegionSlice& slice, CellBits& out);

  /// A box that holds all cells which the rings may set; empty for no ring.
  WordBox boxAround(std::span<const RegionEdge> ring) const;

  /// Clears the cells whose whole body lies in a convex area of at most six corners, counter-clockwise.
  ///
  /// Ensures   (1) no cell is cleared whose centre lies outside the area or nearer than the radius to its outline;
  ///           (2) every cell further inside than radius and slack is.
  void erase(const RegionSlice& area, CellBits& out);

 private:
  struct Cells {
    double x, y;
  };
  Cells cellsOf(Point p) const {
    return {(p.x - grid_.origin.x) * scale_ - 0.5, (p.y - grid_.origin.y) * scale_ - 0.5};
  }
  WordBox toggle(const RegionEdge& edge);
  WordBox addWidened(std::span<const Cells> corners, CellBits& out) const;
  double slack(std::span<const Cells> corners) const;

  geometry::Grid grid_;
  double scale_, radius_;
  const RowKernels* kernels_;
  Bodies bodies_;
  CellBits toggles_;
};

}  // namespace wend::sight
