/// Which shelter a place is in.
#pragma once

#include <string>

#include "core/plan/plan.h"

namespace wend::answers {

/// The id of the first whose circle holds it; empty where none does. Plan metres.
std::string shelterAt(const plan::Plan& plan, geometry::Point pos);

}  // namespace wend::answers
