#include "core/geometry/contour.h"

#include <gtest/gtest.h>

#include <random>

namespace wend::geometry {
namespace {

bool holds(const std::vector<std::vector<Point>>& rings, Point p) {
  bool inside = false;
  for (const auto& ring : rings) inside ^= contains(ring, p);
  return inside;
}

TEST(Outlines, HoldExactlyTheCentresOfSetCells) {
  const unsigned seed = 20261;
  RecordProperty("seed", static_cast<int>(seed));
  std::mt19937_64 random(seed);
  for (int round = 0; round < 200; ++round) {
    Grid grid;
    grid.origin = {-3, 2};
    grid.cell = 0.25;
    grid.nx = 1 + static_cast<int>(random() % 12);
    grid.ny = 1 + static_cast<int>(random() % 12);
    std::vector<std::uint8_t> cells(grid.cells());
    for (auto& cell : cells) cell = random() % 3 == 0;
    const auto rings = outlines(grid, cells);
    for (std::size_t i = 0; i < cells.size(); ++i)
      ASSERT_EQ(holds(rings, grid.centre(i)), cells[i] != 0) << "seed " << seed << " round " << round << " cell " << i;
  }
}

TEST(Outlines, CutTheCornersOfOneCellToALozenge) {
  Grid grid;
  grid.cell = 1;
  grid.nx = grid.ny = 3;
  std::vector<std::uint8_t> cells(9);
  cells[4] = 1;
  const auto rings = outlines(grid, cells);
  ASSERT_EQ(rings.size(), 1u);
  EXPECT_EQ(rings[0].size(), 4u);
  EXPECT_DOUBLE_EQ(signedArea(rings[0]), 0.5);
}

TEST(Outlines, OfNothingAreNone) {
  Grid grid;
  grid.nx = grid.ny = 4;
  EXPECT_TRUE(outlines(grid, std::vector<std::uint8_t>(16)).empty());
}

}  // namespace
}  // namespace wend::geometry
