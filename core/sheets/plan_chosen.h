/// The chosen wall, opening, piece, shelter or gear on the plan, as drawn for the take's start.
#pragma once

#include "core/sheets/plan_view.h"

namespace wend::sheets {

/// Empty for everything else: marks are part of the ways, people and snags of the moment.
geometry::Drawing chosenLayer(const plan::Plan& plan, const PlanView& view, const Chosen& chosen);

}  // namespace wend::sheets
