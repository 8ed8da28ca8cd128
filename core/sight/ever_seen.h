/// The cells in which a body is seen at some time of a span: its complement is the ground clear over the whole take.
///
/// To grow ground by a radius and to join grounds are the same in either order. So the insides of many steps are joined
/// first and grown together, once; of their edges and slices only those are drawn one by one that come near a cell not
/// yet seen, which few do, because neighbouring steps cover each other's borders.
#pragma once

#include <optional>

#include "core/base/cancel.h"
#include "core/sight/region_raster.h"
#include "core/sight/step_ground.h"
#include "core/sight/step_parts.h"

namespace wend::sight {

/// Cells already settled come out set whether seen or not: with the ground in which nobody can stand for settled, no
/// time is spent on what lies between columns and walls.
///
/// Requires  threads >= 1; `settled` on the same grid.
/// Ensures   (1) holds every cell that `RegionRaster` sets, and the hidden areas leave, in some step, and the settled
/// ones; (2) no other, but
///           cells nearer than the radius to the inside of a ring across an edge that the raster does not widen; (3)
///           the same bytes on any number of threads.
/// Fails     when cancelled: nothing.
/// Cost      a bit a cell for each thread four times over, and the grounds of 512 steps.
std::optional<CellBits> everSeen(const geometry::Grid& grid, double radius, StepRange steps, const GroundMaker& ground,
                                 int threads = 1, const base::Cancel& cancel = {}, Bodies bodies = Bodies::anywhere,
                                 const CellBits* settled = nullptr);

}  // namespace wend::sight
