/// The marks of a lens barrel as a plan holds them: whether they can be one scale.
///
/// A ring turns one way, so its marks run one way: values and degrees each rise throughout or fall throughout, in
/// whichever direction. Marks that do not are a slip of the hand, and no curve through them would be a lens.
#pragma once

#include <cstddef>
#include <vector>

#include "core/plan/camera.h"

namespace wend::plan {

/// What stands at a mark: metres (infinity where the plan names none), T-number, mm.
double markValue(const FocusMark& mark);
double markValue(const IrisMark& mark);
double markValue(const ZoomMark& mark);

/// The first row that does not go on the way the rows before it go, in value or in degrees, or the number of rows.
/// Ensures   (1) none for fewer than two rows  (2) rows that run one way do so in reverse order too  (3) two rows of
///           one value, or of one place, count as turning back
std::size_t firstTurningBack(const std::vector<FocusMark>& marks);
std::size_t firstTurningBack(const std::vector<IrisMark>& marks);
std::size_t firstTurningBack(const std::vector<ZoomMark>& marks);

}  // namespace wend::plan
