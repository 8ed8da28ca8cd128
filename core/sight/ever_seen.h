/// The cells in which a body is seen at some time of a span: its complement is the ground clear over the whole take.
///
/// Most steps of a take see nothing new, and are passed over many at a time: first a few steps spread over the take are
/// found, then the ground that holds all that is seen in the stretches between them (`GroundOfSteps::findOver`). A
/// stretch whose ground is all seen already is done; of the others the step in the middle is found, and the halves are
/// asked about in the next round. A round looks only at what the rounds before it saw, so that neither the threads nor
/// the order within it matter.
///
/// To grow ground by a radius and to join grounds are the same in either order. So the insides of many steps are joined
/// first and grown together, once; of their edges and slices only those are drawn one by one that come near a cell not
/// yet seen, which few do, because neighbouring steps cover each other's borders.
///
/// Tests     tests/core/sight/seen_steps_test.cpp, tests/property/ever_seen_test.cpp
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
/// Ensures   (1) holds every cell in which a body is seen at some instant, and the settled ones; where `findOver`
///               offers nothing, every cell that `RegionRaster` sets, and the hidden areas leave, in some step
///           (2) no cell that it does not set in some step, but cells nearer than the radius to the inside of a ring
///               across an edge that the raster does not widen
///           (3) the same bytes on any number of threads.
/// Fails     when cancelled: nothing.
/// Cost      a bit a cell for each thread four times over and four times besides, and the grounds of 512 steps.
std::optional<CellBits> everSeen(const geometry::Grid& grid, double radius, StepRange steps, const GroundMaker& ground,
                                 int threads = 1, const base::Cancel& cancel = {}, Bodies bodies = Bodies::anywhere,
                                 const CellBits* settled = nullptr);

}  // namespace wend::sight
