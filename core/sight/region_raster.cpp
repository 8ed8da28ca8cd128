#include "core/sight/region_raster.h"

#include <cmath>

#include "core/base/check.h"

namespace wend::sight {

RegionRaster::RegionRaster(const geometry::Grid& grid, double radius, const RowKernels& kernels, Bodies bodies)
    : grid_(grid),
      scale_(1 / grid.cell),
      radius_(radius / grid.cell),
      kernels_(&kernels),
      bodies_(bodies),
      toggles_(grid) {
  WEND_CHECK(radius >= 0);
}

namespace {

/// The whole numbers in [low, high], at least 0 and below `limit`, as [from, until).
struct Range {
  int from, until;
};
Range wholeBetween(double low, double high, int limit) {
  const double end = limit;
  const double from = std::clamp(std::ceil(low), 0.0, end), until = std::clamp(std::floor(high) + 1, 0.0, end);
  return {static_cast<int>(from), static_cast<int>(until)};
}

int wordOf(double column, int columns) {
  return static_cast<int>(std::clamp(column, 0.0, static_cast<double>(columns))) / 64;
}

/// The line through a and b as a border of the rows it passes.
BorderLine lineThrough(double ax, double ay, double bx, double by) {
  return {static_cast<float>(std::min(ay, by)), static_cast<float>(std::max(ay, by)), static_cast<float>(ax),
          static_cast<float>(ay), static_cast<float>((bx - ax) / (by - ay))};
}

}  // namespace

double RegionRaster::slack(std::span<const Cells> corners) const {
  double largest = std::max(grid_.nx, grid_.ny);
  for (const Cells& c : corners) largest = std::max({largest, std::abs(c.x), std::abs(c.y)});
  return 1e-3 + 1e-6 * largest;
}

WordBox RegionRaster::addWidened(std::span<const Cells> corners, CellBits& out) const {
  WidenedShape shape;
  const double r = radius_ + slack(corners);
  double west = corners[0].x, east = west, south = corners[0].y, north = south;
  for (const Cells& c : corners) {
    west = std::min(west, c.x), east = std::max(east, c.x);
    south = std::min(south, c.y), north = std::max(north, c.y);
  }
  const Range rows = wholeBetween(south - r, north + r, grid_.ny);
  if (rows.from >= rows.until || east + r < 0 || west - r > grid_.nx - 1) return {};
  shape.rowFrom = rows.from, shape.rowUntil = rows.until;
  shape.radius = static_cast<float>(r), shape.squared = static_cast<float>(r * r);
  Cells a = corners.back();
  for (const Cells& b : corners) {
    shape.x[static_cast<std::size_t>(shape.corners)] = static_cast<float>(b.x);
    shape.y[static_cast<std::size_t>(shape.corners++)] = static_cast<float>(b.y);
    const double dx = b.x - a.x, dy = b.y - a.y;
    // Going round counter-clockwise an edge that falls is a left border, one that rises a right one.
    if (dy != 0) {
      const double outward = r / std::sqrt(dx * dx + dy * dy), ox = dy * outward, oy = -dx * outward;
      const BorderLine line = lineThrough(a.x + ox, a.y + oy, b.x + ox, b.y + oy);
      (dy < 0 ? shape.left[static_cast<std::size_t>(shape.lefts++)]
              : shape.right[static_cast<std::size_t>(shape.rights++)]) = line;
    }
    a = b;
  }
  kernels_->addWidened(shape, out.view());
  return {rows.from, rows.until, wordOf(west - r, grid_.nx), wordOf(east + r, grid_.nx) + 1};
}

WordBox RegionRaster::addNear(const RegionEdge& edge, CellBits& out) {
  const std::array<Cells, 2> ends{cellsOf(edge.a), cellsOf(edge.b)};
  return addWidened(ends, out);
}

WordBox RegionRaster::addNear(const RegionSlice& slice, CellBits& out) {
  std::array<Cells, kMostCorners> corners;
  const auto count = static_cast<std::size_t>(slice.corners);
  if (count == 0) return {};
  for (std::size_t i = 0; i < count; ++i) corners[i] = cellsOf(slice.corner[i]);
  return addWidened(std::span(corners.data(), count), out);
}

WordBox RegionRaster::toggle(const RegionEdge& edge) {
  const Cells from = cellsOf(edge.a), to = cellsOf(edge.b);
  // Rounded once, so that the two edges at a point agree on the row that parts them.
  float ax = static_cast<float>(from.x), ay = static_cast<float>(from.y);
  float bx = static_cast<float>(to.x), by = static_cast<float>(to.y);
  if (ay > by) std::swap(ax, bx), std::swap(ay, by);
  const double end = grid_.ny;
  FillEdge fill;
  fill.rowFrom = static_cast<int>(std::clamp(std::ceil(static_cast<double>(ay)), 0.0, end));
  fill.rowUntil = static_cast<int>(std::clamp(std::ceil(static_cast<double>(by)), 0.0, end));
  if (fill.rowFrom >= fill.rowUntil) return {};
  fill.x0 = ax, fill.y0 = ay, fill.slope = (bx - ax) / (by - ay);
  kernels_->toggleEdge(fill, toggles_.view());
  return {fill.rowFrom, fill.rowUntil, wordOf(static_cast<double>(std::min(ax, bx)) - 1, grid_.nx),
          wordOf(static_cast<double>(std::max(ax, bx)) + 2, grid_.nx) + 1};
}

WordBox RegionRaster::addInterior(std::span<const RegionEdge> ring, CellBits& out) {
  WordBox box;
  for (const RegionEdge& edge : ring) box.take(toggle(edge));
  kernels_->fill(toggles_.view(), box, out.view());
  return box;
}

WordBox RegionRaster::add(const SweptRegion& region, CellBits& out) {
  WordBox box = addInterior(region.ring, out);
  for (const RegionEdge& edge : region.ring)
    if (widens(edge)) box.take(addNear(edge, out));
  for (const RegionSlice& slice : region.slices) box.take(addNear(slice, out));
  return box;
}

WordBox RegionRaster::boxAround(std::span<const RegionEdge> ring) const {
  if (ring.empty()) return {};
  Point low = ring[0].a, high = low;
  for (const RegionEdge& edge : ring) {
    low = {std::min(low.x, edge.a.x), std::min(low.y, edge.a.y)};
    high = {std::max(high.x, edge.a.x), std::max(high.y, edge.a.y)};
  }
  const std::array<Cells, 2> corners{cellsOf(low), cellsOf(high)};
  const double r = radius_ + slack(corners) + 1;
  const Range rows = wholeBetween(corners[0].y - r, corners[1].y + r, grid_.ny);
  return {rows.from, rows.until, wordOf(corners[0].x - r, grid_.nx), wordOf(corners[1].x + r, grid_.nx) + 1};
}

void RegionRaster::erase(const RegionSlice& area, CellBits& out) {
  std::array<Cells, kMostCorners> corners;
  const auto count = static_cast<std::size_t>(area.corners);
  if (count < 3) return;
  for (std::size_t i = 0; i < count; ++i) corners[i] = cellsOf(area.corner[i]);
  const double r = radius_ + slack(std::span(corners.data(), count));
  NarrowedShape shape;
  double south = corners[0].y, north = south;
  Cells a = corners[count - 1];
  for (std::size_t i = 0; i < count; ++i) {
    const Cells b = corners[i];
    south = std::min(south, b.y), north = std::max(north, b.y);
    const double dx = b.x - a.x, dy = b.y - a.y;
    if (dy != 0) {
      const double inward = r / std::sqrt(dx * dx + dy * dy), ox = -dy * inward, oy = dx * inward;
      const BorderLine line = lineThrough(a.x + ox, a.y + oy, b.x + ox, b.y + oy);
      (dy < 0 ? shape.left[static_cast<std::size_t>(shape.lefts++)]
              : shape.right[static_cast<std::size_t>(shape.rights++)]) = line;
    }
    a = b;
  }
  const Range rows = wholeBetween(south + r, north - r, grid_.ny);
  shape.rowFrom = rows.from, shape.rowUntil = rows.until;
  if (rows.from < rows.until) kernels_->eraseNarrowed(shape, out.view());
}

}  // namespace wend::sight
