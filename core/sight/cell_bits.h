/// One bit for every cell of a grid, laid out so that neighbouring rows lie side by side in memory: a word holds 64
/// cells of one row, and the words of one column of 64 follow each other from the south to the north.
///
/// Tests     tests/core/sight/region_raster_test.cpp
#pragma once

#include <algorithm>
#include <bit>
#include <cstdint>
#include <vector>

#include "core/geometry/bit_grid.h"

namespace wend::sight {

/// Rows [rowFrom, rowUntil) of the columns of words [wordFrom, wordUntil).
struct WordBox {
  int rowFrom = 0, rowUntil = 0, wordFrom = 0, wordUntil = 0;

  bool empty() const { return rowFrom >= rowUntil || wordFrom >= wordUntil; }
  /// The smallest box that holds both.
  void take(const WordBox& other) {
    if (other.empty()) return;
    if (empty()) {
      *this = other;
      return;
    }
    rowFrom = std::min(rowFrom, other.rowFrom), rowUntil = std::max(rowUntil, other.rowUntil);
    wordFrom = std::min(wordFrom, other.wordFrom), wordUntil = std::max(wordUntil, other.wordUntil);
  }
  bool operator==(const WordBox&) const = default;
};

/// Where the words of a set of bits lie.
struct BitRows {
  std::uint64_t* words = nullptr;
  int stride = 0;   ///< words from one column of words to the next; eight more than rows, so that
                    ///< eight rows may be written from any row on
  int columns = 0;  ///< cells in a row
  int rows = 0;
};

/// Ensures   (1) bits outside the grid stay zero; (2) two sets on equal grids are equal when their bits are.
/// Cost      a bit a cell.
class CellBits {
 public:
  CellBits() = default;
  explicit CellBits(const geometry::Grid& grid)
      : grid_(grid),
        stride_((grid.ny + 7) / 8 * 8 + 8),
        words_(static_cast<std::size_t>(grid.nx / 64 + 1) * static_cast<std::size_t>(stride_), 0) {}

  const geometry::Grid& grid() const { return grid_; }
  int stride() const { return stride_; }  ///< words from one column of words to the next
  WordBox box() const { return {0, grid_.ny, 0, grid_.nx / 64 + 1}; }
  BitRows view() { return {words_.data(), stride_, grid_.nx, grid_.ny}; }
  const std::uint64_t* column(int word) const { return words_.data() + slot(word, 0); }
  std::uint64_t* column(int word) { return words_.data() + slot(word, 0); }

  bool at(std::size_t cell) const {
    const auto wide = static_cast<std::size_t>(grid_.nx);
    return at(static_cast<int>(cell % wide), static_cast<int>(cell / wide));
  }
  bool at(int column, int row) const { return (words_[slot(column / 64, row)] >> (column % 64)) & 1; }
  void set(int column, int row) { words_[slot(column / 64, row)] |= std::uint64_t{1} << (column % 64); }
  std::size_t count() const {
    std::size_t set = 0;
    for (const std::uint64_t word : words_) set += static_cast<std::size_t>(std::popcount(word));
    return set;
  }

  void clear(const WordBox& box) {
    for (int word = box.wordFrom; word < box.wordUntil; ++word)
      std::fill(column(word) + box.rowFrom, column(word) + box.rowUntil, 0);
  }
  /// Adds what `other` holds inside the box. Requires equal grids.
  void add(const CellBits& other, const WordBox& box) {
    for (int word = box.wordFrom; word < box.wordUntil; ++word)
      for (int row = box.rowFrom; row < box.rowUntil; ++row) column(word)[row] |= other.column(word)[row];
  }
  /// Whether all that `other` holds inside the box is held. Requires equal grids.
  bool holds(const CellBits& other, const WordBox& box) const {
    for (int word = box.wordFrom; word < box.wordUntil; ++word)
      for (int row = box.rowFrom; row < box.rowUntil; ++row)
        if ((other.column(word)[row] & ~column(word)[row]) != 0) return false;
    return true;
  }
  bool operator==(const CellBits&) const = default;

 private:
  std::size_t slot(int word, int row) const {
    return static_cast<std::size_t>(word) * static_cast<std::size_t>(stride_) + static_cast<std::size_t>(row);
  }

  geometry::Grid grid_;
  int stride_ = 0;
  std::vector<std::uint64_t> words_;
};

/// Calls visit(cell) for every set bit of the word of 64 cells that starts at column 64 * `word` of `row`.
template <class Visit>
void eachCell(std::uint64_t bits, const geometry::Grid& grid, int word, int row, Visit visit) {
  const auto first =
      static_cast<std::uint32_t>(row) * static_cast<std::uint32_t>(grid.nx) + 64 * static_cast<std::uint32_t>(word);
  for (; bits != 0; bits &= bits - 1) visit(first + static_cast<std::uint32_t>(std::countr_zero(bits)));
}

}  // namespace wend::sight
