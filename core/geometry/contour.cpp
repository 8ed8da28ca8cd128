#include "core/geometry/contour.h"

#include <array>

#include "core/base/check.h"

namespace wend::geometry {

namespace {

/// Directed cell edges with the set cell on their left, walked from corner to corner. Directions: east, north, west,
/// south.
class Tracer {
 public:
  Tracer(const Grid& grid, const std::vector<std::uint8_t>& cells)
      : grid_(grid),
        cells_(cells),
        open_(static_cast<std::size_t>(grid.nx + 1) * static_cast<std::size_t>(grid.ny + 1)) {
    for (int row = 0; row < grid.ny; ++row)
      for (int column = 0; column < grid.nx; ++column) addEdges(column, row);
  }

  std::vector<std::vector<Point>> traced() {
    std::vector<std::vector<Point>> rings;
    for (int y = 0; y <= grid_.ny; ++y)
      for (int x = 0; x <= grid_.nx; ++x)
        for (int d = 0; d < 4; ++d)
          if (has(x, y, d)) rings.push_back(ringFrom(x, y, d));
    return rings;
  }

 private:
  static constexpr std::array<int, 4> kX = {1, 0, -1, 0}, kY = {0, 1, 0, -1};

  bool set(int column, int row) const {
    if (column < 0 || row < 0 || column >= grid_.nx || row >= grid_.ny) return false;
    return cells_[static_cast<std::size_t>(row) * static_cast<std::size_t>(grid_.nx) +
                  static_cast<std::size_t>(column)];
  }
  std::uint8_t& at(int x, int y) {
    return open_[static_cast<std::size_t>(y) * static_cast<std::size_t>(grid_.nx + 1) + static_cast<std::size_t>(x)];
  }
  bool has(int x, int y, int d) { return (at(x, y) >> d) & 1; }
  void add(int x, int y, int d) { at(x, y) = static_cast<std::uint8_t>(at(x, y) | (1 << d)); }

  void addEdges(int c, int r) {
    if (!set(c, r)) return;
    if (!set(c, r - 1)) add(c, r, 0);
    if (!set(c + 1, r)) add(c + 1, r, 1);
    if (!set(c, r + 1)) add(c + 1, r + 1, 2);
    if (!set(c - 1, r)) add(c, r + 1, 3);
  }

  std::vector<Point> ringFrom(int x, int y, int d) {
    std::vector<Point> ring;
    while (has(x, y, d)) {
      at(x, y) = static_cast<std::uint8_t>(at(x, y) & ~(1 << d));
      ring.push_back(grid_.origin + Vec{(x + kX[static_cast<std::size_t>(d)] * 0.5) * grid_.cell,
                                        (y + kY[static_cast<std::size_t>(d)] * 0.5) * grid_.cell});
      x += kX[static_cast<std::size_t>(d)];
      y += kY[static_cast<std::size_t>(d)];
      // Left first keeps two cells that meet at a corner apart.
      for (const int turn : {1, 0, 3}) {
        const int next = (d + turn) % 4;
        if (!has(x, y, next)) continue;
        d = next;
        break;
      }
    }
    return ring;
  }

  const Grid& grid_;
  const std::vector<std::uint8_t>& cells_;
  std::vector<std::uint8_t> open_;
};

}  // namespace

std::vector<std::vector<Point>> outlines(const Grid& grid, const std::vector<std::uint8_t>& cells) {
  WEND_CHECK(cells.size() == grid.cells());
  return Tracer(grid, cells).traced();
}

}  // namespace wend::geometry
