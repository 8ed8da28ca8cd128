/// A grid of cells over the plan with one bit a cell, filled by areas and by what lies near a line.
#pragma once

#include <cstdint>
#include <vector>

#include "core/geometry/polygon.h"

namespace wend::geometry {

/// Cells are named by their number, row by row from the south, west to east.
struct Grid {
  Point origin;       ///< the south-west corner
  double cell = 0.1;  ///< metres
  int nx = 0, ny = 0;

  std::size_t cells() const { return static_cast<std::size_t>(nx) * static_cast<std::size_t>(ny); }
  Point centre(int column, int row) const { return origin + Vec{(column + 0.5) * cell, (row + 0.5) * cell}; }
  Point centre(std::size_t index) const {
    const auto wide = static_cast<std::size_t>(nx);
    return centre(static_cast<int>(index % wide), static_cast<int>(index / wide));
  }
  /// Half the diagonal of a cell, metres.
  double reach() const { return cell * 0.70710678118654757; }
  Extent extent() const { return {origin, origin + Vec{nx * cell, ny * cell}}; }
  /// The cell that holds p, or nothing outside.
  std::optional<std::size_t> cellAt(Point p) const;
  bool operator==(const Grid&) const = default;
};

/// The grid of whole cells that covers the extent grown by `border` metres. Requires cell > 0.
Grid gridOver(Extent extent, double cell, double border = 0);

/// Ensures   (1) an area drawn by `toggle` edges and closed by `fill` sets exactly the cells whose centre it holds,
///           even-odd; (2) `addNear` sets exactly the cells whose centre is nearer than `radius` to the segment, to the
///           rounding of the row intervals (a nanometre).
/// Cost      rows crossed; `fill` and `clear` touch only rows drawn in since the last clear.
class BitGrid {
 public:
  explicit BitGrid(const Grid& grid);

  const Grid& grid() const { return grid_; }
  bool at(std::size_t cell) const;
  std::size_t count() const;

  void clear();
  void addNear(Segment s, double radius);
  /// One edge of an area; areas toggled before one `fill` combine even-odd.
  void toggle(Segment edge);
  void toggleRing(std::span<const Point> ring);
  /// Closes what was toggled and adds it.
  void fill();

  /// Calls visit(cell) for every set cell, in order.
  template <class Visit>
  void eachSet(Visit visit) const {
    for (int row = drawn_.from; row < drawn_.until; ++row)
      for (std::size_t w = 0; w < words_; ++w) eachBit(bits_[slot(row, w)], row, w, visit);
  }

 private:
  struct Rows {
    int from = 0, until = 0;
    void take(int low, int high);
  };
  std::size_t slot(int row, std::size_t word) const { return static_cast<std::size_t>(row) * words_ + word; }
  template <class Visit>
  void eachBit(std::uint64_t word, int row, std::size_t w, Visit visit) const {
    for (; word != 0; word &= word - 1) {
      const auto column = w * 64 + static_cast<std::size_t>(__builtin_ctzll(word));
      visit(static_cast<std::size_t>(row) * static_cast<std::size_t>(grid_.nx) + column);
    }
  }
  void setColumns(int row, int from, int until);

  Grid grid_;
  std::size_t words_;
  std::vector<std::uint64_t> bits_, toggles_;
  Rows drawn_, toggled_;
};

}  // namespace wend::geometry
