/// Where a piece that moves stands: its footprint, shifted and turned.
#pragma once

#include "core/plan/set.h"

namespace wend::plan {

/// What a footprint turns about: a disc's centre, else the centre of the box around its points, sides along the plan's
/// axes. Not the centre of mass: it is to be found with a tape, and adding a corner inside the box does not shift it.
Point centreOf(const Footprint& shape);

/// `shape` moved by `offset` and turned by `turn` degrees, clockwise positive, about its own centre.
/// Ensures   (1) same kind, same points in the same order  (2) lengths and angles are kept within rounding
///           (3) placed(shape, {}, 0) == shape to the bit  (4) centreOf(shape) + offset is what it turned about
Footprint placed(const Footprint& shape, geometry::Vec offset, double turn);

}  // namespace wend::plan
