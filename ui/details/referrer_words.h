/// What of a plan refers to something, in the words of the details: why that cannot be taken out.
#pragma once

#include <string>

#include "core/base/problem.h"
#include "core/plan/plan.h"

namespace wend::ui {

/// "Handover 1, Pole p2 and 3 more" of the problems with missing references that a plan without it has; empty when none
/// of them is one.
std::string referrersOf(const plan::Plan& plan, const base::Problems& problems);

}  // namespace wend::ui
