/// Sets of cells grown by a disc, 64 cells at a time.
#pragma once

#include "core/base/team.h"
#include "core/sight/cell_bits.h"

namespace wend::sight {

/// Adds to `out` every cell whose centre is no further than `radius` cells from that of a cell set in `from`; reads the
/// box of `from` and returns that of what may have been added. The team shares out the columns of words.
///
/// Requires  equal grids; `from` and `out` are not the same.
/// Cost      about four operations a word of the box for every cell of the radius.
WordBox addGrown(const CellBits& from, const WordBox& box, double radius, CellBits& out, base::Team& team);

}  // namespace wend::sight
