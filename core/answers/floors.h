/// The floors of a plan: how high they lie, and what stands on them.
///
/// Frame     plan metres; heights above the datum.
#pragma once

#include <optional>

#include "core/plan/plan.h"
#include "core/sight/scene.h"

namespace wend::answers {

/// The floor at a place: of the area drawn last that has one, of the first room, or the datum.
double floorAt(const plan::Plan& plan, geometry::Point place);

/// From how far down a wall or a piece hides that stands on the floor; nothing where it hangs, or where no floor of the
/// plan lies lower than it does anyway. A wall stands where there is floor on one of its sides: below that is ground. A
/// piece stands where there is floor under all of it, at every place it is moved to.
///
/// Error     floors are looked at every tenth of a metre along it.
std::optional<double> footOf(const plan::Plan& plan, const sight::WallBand& wall);
std::optional<double> footOf(const plan::Plan& plan, const sight::PieceIn& piece);

}  // namespace wend::answers
