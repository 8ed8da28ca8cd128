#include "core/geometry/bit_grid.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>

#include "core/base/check.h"

namespace wend::geometry {

std::optional<std::size_t> Grid::cellAt(Point p) const {
  const double column = std::floor((p.x - origin.x) / cell), row = std::floor((p.y - origin.y) / cell);
  if (!(column >= 0 && column < nx && row >= 0 && row < ny)) return std::nullopt;
  return static_cast<std::size_t>(row) * static_cast<std::size_t>(nx) + static_cast<std::size_t>(column);
}

Grid gridOver(Extent extent, double cell, double border) {
  WEND_CHECK(cell > 0);
  Grid grid;
  grid.cell = cell;
  grid.origin = extent.low - Vec{border, border};
  const Vec size = extent.high - extent.low + Vec{2 * border, 2 * border};
  // A whole number of cells that rounding made a hair too long stays that number.
  grid.nx = std::max(1, static_cast<int>(std::ceil(size.x / cell - 1e-9)));
  grid.ny = std::max(1, static_cast<int>(std::ceil(size.y / cell - 1e-9)));
  return grid;
}

BitGrid::BitGrid(const Grid& grid) : grid_(grid), words_(static_cast<std::size_t>(grid.nx) / 64 + 1) {
  bits_.assign(words_ * static_cast<std::size_t>(grid.ny), 0);
  toggles_.assign(bits_.size(), 0);
}

bool BitGrid::at(std::size_t cell) const {
  const auto wide = static_cast<std::size_t>(grid_.nx);
  const std::size_t column = cell % wide;
  return (bits_[slot(static_cast<int>(cell / wide), column / 64)] >> (column % 64)) & 1;
}

std::size_t BitGrid::count() const {
  std::size_t set = 0;
  for (const std::uint64_t word : bits_) set += static_cast<std::size_t>(std::popcount(word));
  return set;
}

void BitGrid::Rows::take(int low, int high) {
  if (low >= high) return;
  *this = from >= until ? Rows{low, high} : Rows{std::min(from, low), std::max(until, high)};
}

void BitGrid::clear() {
  std::fill(bits_.begin() + static_cast<std::ptrdiff_t>(slot(drawn_.from, 0)),
            bits_.begin() + static_cast<std::ptrdiff_t>(slot(drawn_.until, 0)), 0);
  drawn_ = {};
}

namespace {

/// Whole numbers i in [0, limit) with low < i + 0.5 < high, in cells, as a half-open range.
struct Range {
  int from, until;
};
Range centresBetween(double low, double high, int limit) {
  const double from = std::clamp(std::floor(low - 0.5) + 1, 0.0, static_cast<double>(limit));
  const double until = std::clamp(std::ceil(high - 0.5), 0.0, static_cast<double>(limit));
  return {static_cast<int>(from), static_cast<int>(until)};
}

}  // namespace

void BitGrid::setColumns(int row, int from, int until) {
  if (from >= until) return;
  const std::size_t first = static_cast<std::size_t>(from) / 64, last = static_cast<std::size_t>(until - 1) / 64;
  const std::uint64_t head = ~std::uint64_t{0} << (from % 64), tail = ~std::uint64_t{0} >> (63 - (until - 1) % 64);
  if (first == last) {
    bits_[slot(row, first)] |= head & tail;
    return;
  }
  bits_[slot(row, first)] |= head;
  for (std::size_t w = first + 1; w < last; ++w) bits_[slot(row, w)] = ~std::uint64_t{0};
  bits_[slot(row, last)] |= tail;
}

namespace {

/// What a level line at y meets of a disc.
void widen(Span& span, Point centre, double radius, double y) {
  const double off = y - centre.y, squared = radius * radius - off * off;
  if (squared <= 0) return;
  const double half = std::sqrt(squared);
  span = {std::min(span.from, centre.x - half), std::max(span.until, centre.x + half)};
}

/// What it meets of a segment.
void widen(Span& span, Point a, Point b, double y) {
  if ((a.y > y) == (b.y > y)) return;
  const double x = a.x + (b.x - a.x) * ((y - a.y) / (b.y - a.y));
  span = {std::min(span.from, x), std::max(span.until, x)};
}

}  // namespace

void BitGrid::addNear(Segment s, double radius) {
  // In cells from the origin; the capsule is convex, so each row holds one stretch of it.
  const double scale = 1 / grid_.cell, r = radius * scale;
  const Point a{(s.a.x - grid_.origin.x) * scale, (s.a.y - grid_.origin.y) * scale};
  const Point b{(s.b.x - grid_.origin.x) * scale, (s.b.y - grid_.origin.y) * scale};
  const Range rows = centresBetween(std::min(a.y, b.y) - r, std::max(a.y, b.y) + r, grid_.ny);
  if (std::max(a.x, b.x) + r < 0 || std::min(a.x, b.x) - r > grid_.nx) return;
  const double metres = length(b - a);
  const Vec off = metres > 0 ? left(b - a) * (r / metres) : Vec{};
  for (int row = rows.from; row < rows.until; ++row) {
    const double y = row + 0.5;
    Span span{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
    widen(span, a, r, y);
    widen(span, b, r, y);
    widen(span, a + off, b + off, y);
    widen(span, a - off, b - off, y);
    if (span.from >= span.until) continue;
    const Range columns = centresBetween(span.from, span.until, grid_.nx);
    setColumns(row, columns.from, columns.until);
  }
  drawn_.take(rows.from, rows.until);
}

void BitGrid::toggle(Segment edge) {
  const double scale = 1 / grid_.cell;
  Point a{(edge.a.x - grid_.origin.x) * scale, (edge.a.y - grid_.origin.y) * scale};
  Point b{(edge.b.x - grid_.origin.x) * scale, (edge.b.y - grid_.origin.y) * scale};
  if (a.y > b.y) std::swap(a, b);
  // Rows with a.y <= row + 0.5 < b.y, so that edges that meet share no row.
  const int from = static_cast<int>(std::clamp(std::ceil(a.y - 0.5), 0.0, static_cast<double>(grid_.ny)));
  const int until = static_cast<int>(std::clamp(std::ceil(b.y - 0.5), 0.0, static_cast<double>(grid_.ny)));
  if (from >= until) return;
  const double slope = (b.x - a.x) / (b.y - a.y);
  for (int row = from; row < until; ++row) {
    const double x = a.x + (row + 0.5 - a.y) * slope;
    const auto column = static_cast<std::size_t>(std::clamp(std::ceil(x - 0.5), 0.0, static_cast<double>(grid_.nx)));
    toggles_[slot(row, column / 64)] ^= std::uint64_t{1} << (column % 64);
  }
  toggled_.take(from, until);
}

void BitGrid::toggleRing(std::span<const Point> ring) {
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) toggle({ring[j], ring[i]});
}

void BitGrid::fill() {
  const std::uint64_t lastMask = (std::uint64_t{1} << (grid_.nx % 64)) - 1;
  for (int row = toggled_.from; row < toggled_.until; ++row) {
    std::uint64_t inside = 0;
    for (std::size_t w = 0; w < words_; ++w) {
      std::uint64_t word = toggles_[slot(row, w)];
      toggles_[slot(row, w)] = 0;
      for (int shift = 1; shift < 64; shift *= 2) word ^= word << shift;
      word ^= inside;
      inside = (word >> 63) ? ~std::uint64_t{0} : 0;
      bits_[slot(row, w)] |= w + 1 == words_ ? word & lastMask : word;
    }
  }
  drawn_.take(toggled_.from, toggled_.until);
  toggled_ = {};
}

}  // namespace wend::geometry
