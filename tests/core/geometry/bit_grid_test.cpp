#include "core/geometry/bit_grid.h"

#include <gtest/gtest.h>

#include <random>

namespace wend::geometry {
namespace {

/// The same numbers on every machine.
double uniform(std::mt19937_64& random, double low, double high) {
  return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53;
}

TEST(Grid, CoversAnExtentWithWholeCells) {
  const Grid grid = gridOver({{-1, 2}, {5, 4}}, 0.1, 0.5);
  EXPECT_EQ(grid.nx, 70);
  EXPECT_EQ(grid.ny, 30);
  EXPECT_EQ(grid.cellAt({-1.45, 1.55}), 0u);
  EXPECT_EQ(grid.cellAt(grid.centre(137)), 137u);
  EXPECT_FALSE(grid.cellAt({5.6, 3}));
}

TEST(BitGrid, AnAreaHoldsTheCellsWhoseCentreItHolds) {
  std::mt19937_64 random(12);
  for (const int columns : {10, 63, 64, 65, 130}) {
    const Grid grid{{-3, 1}, 0.1, columns, 40};
    BitGrid bits(grid);
    for (int trial = 0; trial < 20; ++trial) {
      Ring ring;
      for (int i = 0; i < 5; ++i) ring.push_back({uniform(random, -5, 12), uniform(random, 0, 6)});
      bits.clear();
      bits.toggleRing(ring);
      bits.fill();
      for (std::size_t cell = 0; cell < grid.cells(); ++cell)
        EXPECT_EQ(bits.at(cell), contains(ring, grid.centre(cell))) << columns << " " << cell;
    }
  }
}

TEST(BitGrid, NearIsNearerThanTheRadius) {
  std::mt19937_64 random(13);
  const Grid grid{{0, 0}, 0.1, 100, 50};
  BitGrid bits(grid);
  std::size_t set = 0;
  for (int trial = 0; trial < 50; ++trial) {
    const Segment s{{uniform(random, -2, 12), uniform(random, -1, 6)},
                    {uniform(random, -2, 12), uniform(random, -1, 6)}};
    const double radius = uniform(random, 0.05, 1);
    bits.clear();
    bits.addNear(s, radius);
    for (std::size_t cell = 0; cell < grid.cells(); ++cell) {
      const double metres = distance(grid.centre(cell), s);
      if (std::abs(metres - radius) < 1e-9) continue;
      EXPECT_EQ(bits.at(cell), metres < radius) << trial << " " << cell;
    }
    set += bits.count();
  }
  EXPECT_GT(set, 1000u);
}

TEST(BitGrid, SetCellsAreVisitedInOrder) {
  BitGrid bits({{0, 0}, 1, 70, 5});
  bits.addNear({{3.5, 4.5}, {3.5, 4.5}}, 0.3);
  bits.addNear({{62.5, 2.5}, {64.5, 2.5}}, 0.3);
  std::vector<std::size_t> cells;
  bits.eachSet([&](std::size_t cell) { cells.push_back(cell); });
  EXPECT_EQ(cells, (std::vector<std::size_t>{2 * 70 + 62, 2 * 70 + 63, 2 * 70 + 64, 4 * 70 + 3}));
  bits.clear();
  bits.eachSet([&](std::size_t) { ADD_FAILURE(); });
}

}  // namespace
}  // namespace wend::geometry
