/// The cells of a grid that a box may hold, so that what lies in a corner of the ground is not asked of all of it.
#pragma once

#include <algorithm>
#include <cmath>

#include "core/geometry/bit_grid.h"

namespace wend::answers {

inline geometry::Extent grown(geometry::Extent box, double by) {
  return {box.low - geometry::Vec{by, by}, box.high + geometry::Vec{by, by}};
}

/// f(cell) for every cell whose centre lies in the box.
template <class F>
void eachCellIn(const geometry::Grid& grid, const geometry::Extent& box, F&& f) {
  const auto first = [&](double low, double origin) {
    return std::max(0, static_cast<int>(std::ceil((low - origin) / grid.cell - 0.5)));
  };
  const auto last = [&](double high, double origin, int count) {
    return std::min(count - 1, static_cast<int>(std::floor((high - origin) / grid.cell - 0.5)));
  };
  for (int y = first(box.low.y, grid.origin.y); y <= last(box.high.y, grid.origin.y, grid.ny); ++y)
    for (int x = first(box.low.x, grid.origin.x); x <= last(box.high.x, grid.origin.x, grid.nx); ++x)
      f(static_cast<std::size_t>(y) * static_cast<std::size_t>(grid.nx) + static_cast<std::size_t>(x));
}

}  // namespace wend::answers
