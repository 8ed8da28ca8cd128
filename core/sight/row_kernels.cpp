#include "core/sight/row_kernels.h"

#include <cmath>
#include <limits>

namespace wend::sight {

namespace {

constexpr float kFar = std::numeric_limits<float>::max();

/// The cells of one row from the first at or right of `low` to the last at or left of `high`, as [from, until).
struct Stretch {
  int from, until;
};

Stretch cellsBetween(float low, float high, int columns) {
  const float wide = static_cast<float>(columns);
  const float first = std::min(std::max(low, 0.0f), wide), end = std::min(std::max(high + 1.0f, 0.0f), wide);
  const int whole = static_cast<int>(first);
  return {whole + (static_cast<float>(whole) < first ? 1 : 0), static_cast<int>(end)};
}

std::uint64_t bitsFrom(int bit) {
  return bit >= 64 ? 0 : ~std::uint64_t{0} << std::max(bit, 0);
}

std::uint64_t bitsOf(Stretch s, int word) {
  return bitsFrom(s.from - 64 * word) & ~bitsFrom(s.until - 64 * word);
}

float xAt(const BorderLine& line, float y) {
  return line.x0 + (y - line.y0) * line.slope;
}

Stretch rowOf(const WidenedShape& shape, int row, int columns) {
  const float y = static_cast<float>(row);
  float low = kFar, high = -kFar;
  for (std::size_t i = 0; i < static_cast<std::size_t>(shape.corners); ++i) {
    const float off = y - shape.y[i], squared = shape.squared - off * off;
    if (!(squared >= 0)) continue;
    const float half = std::sqrt(squared);
    low = std::min(low, shape.x[i] - half), high = std::max(high, shape.x[i] + half);
  }
  for (std::size_t i = 0; i < static_cast<std::size_t>(shape.lefts); ++i)
    if (y >= shape.left[i].low && y <= shape.left[i].high) low = std::min(low, xAt(shape.left[i], y));
  for (std::size_t i = 0; i < static_cast<std::size_t>(shape.rights); ++i)
    if (y >= shape.right[i].low && y <= shape.right[i].high) high = std::max(high, xAt(shape.right[i], y));
  return cellsBetween(low, high, columns);
}

void addWidened(const WidenedShape& shape, const BitRows& out) {
  for (int row = shape.rowFrom; row < shape.rowUntil; ++row) {
    const Stretch s = rowOf(shape, row, out.columns);
    for (int word = s.from / 64; 64 * word < s.until; ++word) out.words[word * out.stride + row] |= bitsOf(s, word);
  }
}

void eraseNarrowed(const NarrowedShape& shape, const BitRows& out) {
  for (int row = shape.rowFrom; row < shape.rowUntil; ++row) {
    const float y = static_cast<float>(row);
    float low = -kFar, high = kFar;
    for (std::size_t i = 0; i < static_cast<std::size_t>(shape.lefts); ++i) low = std::max(low, xAt(shape.left[i], y));
    for (std::size_t i = 0; i < static_cast<std::size_t>(shape.rights); ++i)
      high = std::min(high, xAt(shape.right[i], y));
    const Stretch s = cellsBetween(low, high, out.columns);
    for (int word = s.from / 64; 64 * word < s.until; ++word) out.words[word * out.stride + row] &= ~bitsOf(s, word);
  }
}

void toggleEdge(const FillEdge& edge, const BitRows& toggles) {
  const float wide = static_cast<float>(toggles.columns);
  for (int row = edge.rowFrom; row < edge.rowUntil; ++row) {
    const float x = edge.x0 + (static_cast<float>(row) - edge.y0) * edge.slope;
    const float first = std::min(std::max(x, 0.0f), wide);
    const int whole = static_cast<int>(first), cell = whole + (static_cast<float>(whole) < first ? 1 : 0);
    toggles.words[cell / 64 * toggles.stride + row] ^= std::uint64_t{1} << (cell % 64);
  }
}

void fill(const BitRows& toggles, const WordBox& box, const BitRows& out) {
  // The bits past the last column in a row belong to no cell.
  const std::uint64_t inGrid = (std::uint64_t{1} << (out.columns % 64)) - 1;
  for (int row = box.rowFrom; row < box.rowUntil; ++row) {
    std::uint64_t inside = 0;
    for (int word = box.wordFrom; word < box.wordUntil; ++word) {
      std::uint64_t bits = toggles.words[word * toggles.stride + row];
      toggles.words[word * toggles.stride + row] = 0;
      for (int shift = 1; shift < 64; shift *= 2) bits ^= bits << shift;
      bits ^= inside;
      inside = (bits >> 63) != 0 ? ~std::uint64_t{0} : 0;
      out.words[word * out.stride + row] |= word == out.columns / 64 ? bits & inGrid : bits;
    }
  }
}

int differences(const std::uint64_t* a, const std::uint64_t* b, int count, int* out) {
  int found = 0;
  for (int i = 0; i < count; ++i) {
    out[found] = i;
    found += a[i] != b[i];
  }
  return found;
}

void widen(const std::uint64_t* west, const std::uint64_t* here, const std::uint64_t* east, int by, int count,
           std::uint64_t* grown) {
  for (int i = 0; i < count; ++i)
    grown[i] |= (here[i] << by) | (west[i] >> (64 - by)) | (here[i] >> by) | (east[i] << (64 - by));
}

void unite(const std::uint64_t* from, int count, std::uint64_t* to) {
  for (int i = 0; i < count; ++i) to[i] |= from[i];
}

}  // namespace

const RowKernels& plainKernels() {
  static constexpr RowKernels kernels{addWidened, eraseNarrowed, toggleEdge, fill, differences, widen, unite};
  return kernels;
}

const RowKernels& rowKernels() {
  const RowKernels* fast = avx2Kernels();
  return fast != nullptr ? *fast : plainKernels();
}

}  // namespace wend::sight
