/// Outlines around sets of grid cells, for drawing.
#pragma once

#include <cstdint>
#include <vector>

#include "core/geometry/bit_grid.h"

namespace wend::geometry {

/// The outlines of the cells whose byte is not 0, holes included, to be filled even-odd.
///
/// Requires  one byte a cell
/// Ensures   (1) filled even-odd, the outlines hold the centre of a cell exactly when the cell is set; (2) corners are
///           cut from the middle of one cell edge to the middle of the next, so that slopes do not look like stairs
/// Cost      linear in the cells
std::vector<std::vector<Point>> outlines(const Grid& grid, const std::vector<std::uint8_t>& cells);

}  // namespace wend::geometry
