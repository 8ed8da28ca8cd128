/// How softly a zoom begins and ends.
#pragma once

#include <array>

#include "core/plan/plan.h"
#include "core/snags/evidence.h"

namespace wend::answers {

/// Seconds over which a zoom gets up to its speed and comes to rest: half of an eased key's time, 0 of an even one, of
/// a planned zoom what its slack leaves room for. A cut has none.
///
/// Requires  a zoom of that plan
std::array<double, 2> zoomFeather(const plan::Plan& plan, const snags::Move& zoom);

}  // namespace wend::answers
