/// Cells of a grid as rows of bits, one picture for each step: what `CellTimes` holds cell by cell, turned round.
///
/// Frame     a border of cells that are never Yes runs round the grid, so that a look a few cells away stays inside.
///           Column c of the grid is bit c + border of its row; bits are 64 to a word, words row by row from the south.
#pragma once

#include <cstdint>
#include <vector>

#include "core/crew/cell_times.h"
#include "core/crew/move_set.h"
#include "core/geometry/bit_grid.h"

namespace wend::crew {

class BorderedGrid {
 public:
  BorderedGrid(const geometry::Grid& grid, int border);

  std::size_t border() const { return border_; }
  std::size_t nx() const { return nx_; }
  std::size_t ny() const { return ny_; }
  /// Of a row.
  std::size_t words() const { return words_; }
  std::size_t rows() const { return ny_ + 2 * border_; }
  std::size_t allWords() const { return words_ * rows(); }
  /// Bits of all rows.
  std::size_t bits() const { return allWords() * 64; }
  /// The bit of a cell of the plain grid.
  std::size_t bitOf(std::size_t cell) const { return (cell / nx_ + border_) * words_ * 64 + cell % nx_ + border_; }
  /// Requires a bit that is a cell's.
  std::size_t cellOf(std::size_t bit) const {
    return (bit / (words_ * 64) - border_) * nx_ + bit % (words_ * 64) - border_;
  }
  /// How many bits on a cell so far away lies.
  std::ptrdiff_t step(CellOffset o) const { return o.dy * static_cast<std::ptrdiff_t>(words_ * 64) + o.dx; }

 private:
  std::size_t border_, nx_, ny_, words_;
};

/// Ensures   bit b of step k is the answer of the cell b stands for, and 0 on the border.
/// Cost      64 times 64 bits are turned round at once.
class StepMaps {
 public:
  StepMaps(const CellTimes& times, const BorderedGrid& grid);
  const std::uint64_t* at(std::size_t step) const { return bits_.data() + step * words_; }
  bool at(std::size_t step, std::size_t bit) const { return (at(step)[bit / 64] >> (bit % 64)) & 1; }

 private:
  std::size_t words_;
  std::vector<std::uint64_t> bits_;
};

}  // namespace wend::crew
