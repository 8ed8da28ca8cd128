#include "core/crew/step_maps.h"

#include <gtest/gtest.h>

#include <random>

namespace wend::crew {
namespace {

TEST(BorderedGrid, NamesEveryCellByABitAndBack) {
  const BorderedGrid grid({{0, 0}, 0.1, 70, 9}, 5);
  EXPECT_EQ(grid.words(), 2u);
  EXPECT_EQ(grid.rows(), 19u);
  for (std::size_t cell = 0; cell < 630; ++cell) EXPECT_EQ(grid.cellOf(grid.bitOf(cell)), cell);
  EXPECT_EQ(static_cast<std::ptrdiff_t>(grid.bitOf(71) - grid.bitOf(0)), grid.step({1, 1}));
}

TEST(StepMaps, HoldTheAnswersOfEveryCellAndStep) {
  std::mt19937_64 random(51);
  for (const auto& [nx, ny, steps] : {std::tuple{3, 2, 5u}, {64, 3, 64u}, {70, 9, 130u}, {121, 4, 65u}}) {
    const geometry::Grid plain{{0, 0}, 0.1, nx, ny};
    const BorderedGrid grid(plain, 4);
    CellTimes times(plain.cells(), steps, false);
    std::size_t set = 0, found = 0;
    for (std::size_t cell = 0; cell < plain.cells(); ++cell)
      for (std::size_t step = 0; step < steps; ++step)
        if (random() % 3 == 0) times.set(cell, {step, step + 1}, true), ++set;
    const StepMaps maps(times, grid);
    for (std::size_t step = 0; step < steps; ++step) {
      for (std::size_t cell = 0; cell < plain.cells(); ++cell)
        ASSERT_EQ(maps.at(step, grid.bitOf(cell)), times.at(cell, step)) << cell << ' ' << step;
      for (std::size_t bit = 0; bit < grid.bits(); ++bit) found += maps.at(step, bit);
    }
    EXPECT_EQ(found, set) << "the border is empty";
  }
}

}  // namespace
}  // namespace wend::crew
