/// Whether a place of the plan is ground at all, whoever sees somebody there: not inside a wall, not in a piece of the
/// set, not where nobody has said what lies.
///
/// Frame     plan metres. A place is a point: how near to a wall somebody can stand is for their radius to say.
/// Stops     holding for what moves: doors and pieces on their way take ground for a time only, and are left out here.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/answers/take.h"
#include "core/geometry/bit_grid.h"

namespace wend::answers {

/// The floor in each opening, which belongs to no room: the wall's band from end to end of it, in straight pieces.
std::vector<std::vector<geometry::Point>> doorwayFloors(const plan::Plan& plan);

/// What takes a place that is no ground.
struct NoGround {
  std::string id;  ///< of a wall, an opening or a piece; empty: it lies outside of everything drawn
};

/// Nothing where a person of `height` can stand.
/// Ensures   (1) without rooms in the plan no place lies outside; (2) what is lower than a step or hangs over the head
///           takes no ground; (3) a doorway is ground, its leaf wherever it is
std::optional<NoGround> noGroundAt(const Take& take, Point place, double height);

/// The same of the cells' centres: a byte a cell, 1 where it is ground.
std::vector<std::uint8_t> groundCells(const Take& take, const geometry::Grid& grid, double height);

}  // namespace wend::answers
