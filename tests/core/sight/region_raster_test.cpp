#include "core/sight/region_raster.h"

#include <gtest/gtest.h>

#include <cstdio>

#include "core/sight/swept_view.h"
#include "tests/core/sight/regions.h"

namespace wend::sight {
namespace {

using geometry::Grid;

Grid gridOf(int nx, int ny, double cell, Point origin = {-3.2, 1.7}) {
  Grid grid;
  grid.origin = origin, grid.cell = cell, grid.nx = nx, grid.ny = ny;
  return grid;
}

double slackOf(const Grid& grid) {
  return (1e-3 + 3e-6 * std::max(grid.nx, grid.ny)) * grid.cell;
}

std::mt19937_64 seeded(std::uint64_t seed) {
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  return std::mt19937_64(seed);
}

struct Tally {
  long cells = 0, set = 0, missed = 0, extra = 0;
};

void compare(const CellBits& bits, const SweptRegion& region, double radius, Tally& tally) {
  const Grid& grid = bits.grid();
  for (std::size_t cell = 0; cell < grid.cells(); ++cell) {
    const Point p = grid.centre(cell);
    const double near = regions::distanceTo(p, region);
    const bool inside = regions::holds(region.ring, p);
    const bool onBorder = regions::distanceToRing(p, region.ring) < slackOf(grid);
    const bool must = near < radius || (inside && !onBorder);
    const bool may = near < radius + slackOf(grid) || inside || onBorder;
    ++tally.cells, tally.set += bits.at(cell);
    tally.missed += must && !bits.at(cell);
    tally.extra += !may && bits.at(cell);
  }
}

TEST(RegionRaster, SetsWhatLiesNearerThanTheRadiusAndNothingElse) {
  auto random = seeded(61001);
  Tally tally;
  for (int trial = 0; trial < 400; ++trial) {
    const Grid grid = gridOf(1 + static_cast<int>(random() % 200), 1 + static_cast<int>(random() % 90), 0.05);
    const double radius = world::uniform(random, 0, 0.4);
    const SweptRegion region = regions::randomRegion(random, grid, static_cast<int>(random() % 3), trial % 4);
    CellBits bits(grid);
    RegionRaster(grid, radius).add(region, bits);
    compare(bits, region, radius, tally);
  }
  std::printf("cells %ld set %ld\n", tally.cells, tally.set);
  EXPECT_GT(tally.set, tally.cells / 10);
  EXPECT_LT(tally.set, tally.cells * 9 / 10);
  EXPECT_EQ(tally.missed, 0);
  EXPECT_EQ(tally.extra, 0);
}

TEST(RegionRaster, HoldsOnLatticeShapesWhoseCornersLieOnCentresAndRows) {
  auto random = seeded(61002);
  Tally tally;
  const auto lattice = [&](int most) {
    return 0.05 * (static_cast<int>(random() % static_cast<std::uint64_t>(most)) - 5) + 0.025;
  };
  for (int trial = 0; trial < 600; ++trial) {
    const Grid grid = gridOf(70, 40, 0.05, {0, 0});
    SweptRegion region;
    // Upright, level and slanting edges whose ends are centres of cells, doubled corners among them.
    RegionSlice slice;
    slice.corners = 3;
    do {
      for (std::size_t i = 0; i < 3; ++i) slice.corner[i] = {lattice(80), lattice(50)};
    } while (geometry::cross(slice.corner[1] - slice.corner[0], slice.corner[2] - slice.corner[0]) < 0);
    region.slices.push_back(slice);
    const Point low{lattice(80), lattice(50)}, high{low.x + 0.05 * (trial % 9), low.y + 0.05 * (trial % 7)};
    region.ring = {{low, {high.x, low.y}}, {{high.x, low.y}, high}, {high, {low.x, high.y}}, {{low.x, high.y}, low}};
    const double radius = trial % 3 == 0 ? 0.237 : 0.11;
    CellBits bits(grid);
    RegionRaster(grid, radius).add(region, bits);
    compare(bits, region, radius, tally);
  }
  EXPECT_GT(tally.set, tally.cells / 20);
  EXPECT_EQ(tally.missed, 0);
  EXPECT_EQ(tally.extra, 0);
}

TEST(RegionRaster, KeepsItsSlackOnAWideGridAndFarFromIt) {
  auto random = seeded(61003);
  long missed = 0, extra = 0, near = 0;
  const Grid grid = gridOf(4000, 3, 0.05, {0, 0});
  for (int trial = 0; trial < 300; ++trial) {
    // Nearly level edges across the whole grid, where the columns reached depend most on the height.
    const RegionEdge edge{{world::uniform(random, -300, 200), world::uniform(random, -0.4, 0.5)},
                          {world::uniform(random, 0, 500), world::uniform(random, -0.4, 0.5)}};
    CellBits bits(grid);
    RegionRaster(grid, 0.25).addNear(edge, bits);
    const double slack = (1e-3 + 1e-6 * 10000) * grid.cell;
    for (std::size_t cell = 0; cell < grid.cells(); ++cell) {
      const double away = geometry::distance(grid.centre(cell), geometry::Segment{edge.a, edge.b});
      near += away < 0.25, missed += away < 0.25 && !bits.at(cell), extra += away > 0.25 + slack && bits.at(cell);
    }
  }
  EXPECT_GT(near, 100000);
  EXPECT_EQ(missed, 0);
  EXPECT_EQ(extra, 0);
}

TEST(RegionRaster, TouchesOnlyTheBoxItReports) {
  auto random = seeded(61004);
  for (int trial = 0; trial < 300; ++trial) {
    const Grid grid = gridOf(300, 60, 0.05);
    CellBits bits(grid);
    RegionRaster raster(grid, 0.2);
    const WordBox box = raster.add(regions::randomRegion(random, grid, trial % 2, 1), bits);
    CellBits rest = bits;
    rest.clear(box);
    ASSERT_EQ(rest.count(), 0u) << "trial " << trial;
    bits.clear(box);
    ASSERT_EQ(bits, CellBits(grid));
  }
}

TEST(RegionRaster, GivesBodiesClearOfWallsTheSameAnswerWithLessDrawn) {
  auto random = seeded(61007);
  const Grid grid = gridOf(100, 100, 0.1, {0, 0});
  long compared = 0, seen = 0, spared = 0;
  for (int trial = 0; trial < 200; ++trial) {
    std::vector<geometry::Segment> walls;
    const auto place = [&] { return Point{world::uniform(random, 0.5, 9.5), world::uniform(random, 0.5, 9.5)}; };
    for (int i = 0; i < 8; ++i) walls.push_back({place(), place()});
    const Triangulation triangles(walls, grid.extent());
    const SweptPose from{place(), world::uniform(random, 0, 360), world::uniform(random, 10, 100)};
    SweptRegion region;
    const geometry::Vec moved{world::uniform(random, -0.1, 0.1), world::uniform(random, -0.1, 0.1)};
    SweptView(triangles).of({from, {from.pupil + moved, from.bearing + 5, from.halfAngle}}, region);
    const double radius = world::uniform(random, 0.05, 0.4);
    CellBits anywhere(grid), clear(grid);
    RegionRaster(grid, radius).add(region, anywhere);
    RegionRaster(grid, radius, rowKernels(), Bodies::clearOfWalls).add(region, clear);
    for (std::size_t cell = 0; cell < grid.cells(); ++cell) {
      double nearest = HUGE_VAL;
      for (const geometry::Segment wall : walls)
        nearest = std::min(nearest, geometry::distance(grid.centre(cell), wall));
      ASSERT_TRUE(anywhere.at(cell) || !clear.at(cell));
      spared += anywhere.at(cell) && !clear.at(cell);
      if (nearest <= radius + slackOf(grid) + 2 * Triangulation::kJoin) continue;
      ++compared, seen += clear.at(cell);
      ASSERT_EQ(anywhere.at(cell), clear.at(cell)) << "trial " << trial << " cell " << cell;
    }
  }
  std::printf("cells compared %ld, seen %ld, spared near walls %ld\n", compared, seen, spared);
  EXPECT_GT(seen, compared / 20);
  EXPECT_GT(spared, 2000);
}

TEST(RegionRaster, ErasesBodiesWhollyInsideAnAreaAndNoOther) {
  auto random = seeded(61005);
  long wrongly = 0, left = 0, erased = 0;
  for (int trial = 0; trial < 400; ++trial) {
    const Grid grid = gridOf(150, 80, 0.05, {0, 0});
    const double radius = world::uniform(random, 0, 0.4);
    const Point centre{world::uniform(random, -1, 8), world::uniform(random, -1, 5)};
    const RegionSlice area = regions::randomSlice(random, centre, 5);
    CellBits bits(grid);
    for (int row = 0; row < grid.ny; ++row)
      for (int column = 0; column < grid.nx; ++column) bits.set(column, row);
    RegionRaster(grid, radius).erase(area, bits);
    for (std::size_t cell = 0; cell < grid.cells(); ++cell) {
      const Point p = grid.centre(cell);
      double depth = regions::distanceTo(p, area) > 0 ? -1 : 1e300;
      for (std::size_t i = 0; depth >= 0 && i < static_cast<std::size_t>(area.corners); ++i)
        depth = std::min(
            depth,
            geometry::distance(
                p, geometry::Segment{area.corner[i], area.corner[(i + 1) % static_cast<std::size_t>(area.corners)]}));
      erased += !bits.at(cell);
      wrongly += !bits.at(cell) && depth < radius;
      left += bits.at(cell) && depth > radius + slackOf(grid);
    }
  }
  EXPECT_GT(erased, 10000);
  EXPECT_EQ(wrongly, 0);
  EXPECT_EQ(left, 0);
}

TEST(RowKernels, GiveTheSameBytesPlainlyAndWithWideInstructions) {
  if (avx2Kernels() == nullptr) GTEST_SKIP() << "this processor has no AVX2";
  auto random = seeded(61006);
  for (int trial = 0; trial < 1500; ++trial) {
    const Grid grid = gridOf(1 + static_cast<int>(random() % 400), 1 + static_cast<int>(random() % 150), 0.05);
    const double radius = world::uniform(random, 0, 0.6);
    const SweptRegion region = regions::randomRegion(random, grid, trial % 3, 4);
    const RegionSlice hidden = regions::randomSlice(random, grid.centre(0) + geometry::Vec{2, 2}, 8);
    CellBits plain(grid), wide(grid);
    RegionRaster onPlain(grid, radius, plainKernels()), onWide(grid, radius, *avx2Kernels());
    ASSERT_EQ(onPlain.add(region, plain), onWide.add(region, wide));
    ASSERT_EQ(plain, wide) << "trial " << trial;
    onPlain.erase(hidden, plain), onWide.erase(hidden, wide);
    ASSERT_EQ(plain, wide) << "trial " << trial;
    const CellBits other = [&] {
      CellBits bits(grid);
      onPlain.addNear(hidden, bits);
      return bits;
    }();
    std::vector<int> a(static_cast<std::size_t>(grid.ny) + 8), b(a);
    const int differ = plainKernels().differences(plain.column(0), other.column(0), grid.ny, a.data());
    ASSERT_EQ(differ, avx2Kernels()->differences(plain.column(0), other.column(0), grid.ny, b.data()));
    a.resize(static_cast<std::size_t>(differ)), b.resize(a.size());
    ASSERT_EQ(a, b);
  }
}

}  // namespace
}  // namespace wend::sight
