#include "core/sight/cell_growth.h"

#include <gtest/gtest.h>

#include <random>

#include "core/sight/row_kernels.h"

namespace wend::sight {
namespace {

/// Cell by cell, as the header says it.
CellBits grownByHand(const CellBits& from, const WordBox& box, double radius) {
  CellBits out(from.grid());
  const int reach = static_cast<int>(radius), nx = from.grid().nx, ny = from.grid().ny;
  for (int row = box.rowFrom; row < box.rowUntil; ++row)
    for (int column = 64 * box.wordFrom; column < std::min(nx, 64 * box.wordUntil); ++column) {
      if (!from.at(column, row)) continue;
      for (int dy = -reach; dy <= reach; ++dy)
        for (int dx = -reach; dx <= reach; ++dx)
          if (dx * dx + dy * dy <= radius * radius && column + dx >= 0 && column + dx < nx && row + dy >= 0 &&
              row + dy < ny)
            out.set(column + dx, row + dy);
    }
  return out;
}

TEST(CellGrowth, SetsEveryCellOfTheDiscsAndNoOther) {
  std::mt19937 random(7001);
  for (int round = 0; round < 60; ++round) {
    SCOPED_TRACE("seed 7001, round " + std::to_string(round));
    const geometry::Grid grid{{0, 0}, 0.1, 1 + static_cast<int>(random() % 300), 1 + static_cast<int>(random() % 60)};
    CellBits from(grid);
    const auto cells = static_cast<unsigned>(random() % 40);
    for (unsigned i = 0; i < cells; ++i)
      from.set(static_cast<int>(random() % static_cast<unsigned>(grid.nx)),
               static_cast<int>(random() % static_cast<unsigned>(grid.ny)));
    WordBox box = from.box();
    if (round % 3 == 0) box.rowFrom = grid.ny / 3, box.wordFrom = box.wordUntil / 2;
    const double radius = round % 5 == 0 ? 0 : static_cast<double>(random() % 230) / 10;
    base::Team team(1 + static_cast<std::size_t>(round) % 3);
    CellBits out(grid);
    const WordBox touched = addGrown(from, box, radius, out, team);
    EXPECT_EQ(out, grownByHand(from, box, radius));
    CellBits outside = out;
    outside.clear(touched);
    EXPECT_EQ(outside.count(), 0U);
  }
}

TEST(CellGrowth, HasTheSameBytesWithAndWithoutWideInstructions) {
  if (avx2Kernels() == nullptr) GTEST_SKIP() << "this processor has no AVX2";
  std::mt19937_64 random(7002);
  constexpr int kRows = 23;
  std::vector<std::uint64_t> west(kRows), here(kRows), east(kRows), plain(kRows), wide(kRows);
  for (int by = 1; by < 64; ++by)
    for (int count = 0; count <= kRows; ++count) {
      for (auto* column : {&west, &here, &east})
        for (std::uint64_t& word : *column) word = random();
      for (std::size_t i = 0; i < kRows; ++i) plain[i] = wide[i] = random() & random() & random();
      plainKernels().widen(west.data(), here.data(), east.data(), by, count, plain.data());
      avx2Kernels()->widen(west.data(), here.data(), east.data(), by, count, wide.data());
      ASSERT_EQ(plain, wide) << "seed 7002, by " << by << ", count " << count;
      plainKernels().unite(west.data(), count, plain.data());
      avx2Kernels()->unite(west.data(), count, wide.data());
      ASSERT_EQ(plain, wide) << "seed 7002, count " << count;
    }
}

}  // namespace
}  // namespace wend::sight
