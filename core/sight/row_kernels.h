/// The inner loops of the raster, eight rows at a time: twice, plainly and with the AVX2 instructions, to the same
/// bytes. Which one runs depends on the processor and changes nothing but the time.
///
/// Frame     cells: the centre of the cell in column c and row r is the point (c, r). Single precision.
/// Tests     tests/core/sight/region_raster_test.cpp, tests/core/sight/cell_growth_test.cpp
#pragma once

#include <array>
#include <cstdint>

#include "core/sight/cell_bits.h"

namespace wend::sight {

constexpr int kMostCorners = 6;

/// A straight piece of a shape's left or right border: x = x0 + (y - y0) slope, for rows in [low, high].
struct BorderLine {
  float low = 0, high = 0, x0 = 0, y0 = 0, slope = 0;
};

/// A convex area widened by a radius: in each row one stretch, from its leftmost border to its rightmost.
struct WidenedShape {
  int rowFrom = 0, rowUntil = 0;
  float radius = 0, squared = 0;
  int corners = 0, lefts = 0, rights = 0;
  std::array<float, kMostCorners> x{}, y{};
  std::array<BorderLine, kMostCorners> left{}, right{};
};

/// A convex area narrowed by a radius: right of all its left borders and left of all its right ones.
struct NarrowedShape {
  int rowFrom = 0, rowUntil = 0;
  int lefts = 0, rights = 0;
  std::array<BorderLine, kMostCorners> left{}, right{};
};

/// One edge of an area to be filled: x = x0 + (row - y0) slope, in rows [rowFrom, rowUntil), at least one.
struct FillEdge {
  int rowFrom = 0, rowUntil = 0;
  float x0 = 0, y0 = 0, slope = 0;
};

/// Requires  rows within the grid; every edge of a filled area toggled exactly once between two fills.
/// Ensures   both kinds give the same bytes.
struct RowKernels {
  /// Sets the cells whose centre lies in the shape.
  void (*addWidened)(const WidenedShape& shape, const BitRows& out);
  /// Clears the cells whose centre lies in the shape.
  void (*eraseNarrowed)(const NarrowedShape& shape, const BitRows& out);
  /// Toggles, in each row, the first cell at or right of the edge.
  void (*toggleEdge)(const FillEdge& edge, const BitRows& toggles);
  /// Adds to `out` the cells with an odd number of toggles at or left of them, and zeroes the toggles.
  void (*fill)(const BitRows& toggles, const WordBox& box, const BitRows& out);
  /// Where two columns of words differ in `count` words: their numbers to `out`, which holds `count` and eight more;
  /// how many.
  int (*differences)(const std::uint64_t* a, const std::uint64_t* b, int count, int* out);
  /// Adds to `grown`, in each of `count` rows of a column of words, the cells that lie `by` east and `by` west of one
  /// set in `here`, or in the columns of words beside it. 1 <= by <= 63.
  void (*widen)(const std::uint64_t* west, const std::uint64_t* here, const std::uint64_t* east, int by, int count,
                std::uint64_t* grown);
  /// Adds `count` rows of a column of words to another.
  void (*unite)(const std::uint64_t* from, int count, std::uint64_t* to);
};

const RowKernels& plainKernels();
/// Null where the processor or the compiler has none.
const RowKernels* avx2Kernels();
/// The fastest that runs here.
const RowKernels& rowKernels();

}  // namespace wend::sight
