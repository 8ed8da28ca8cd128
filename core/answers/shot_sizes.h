/// The shot sizes a plan names: the usual ones, with those that the plan says otherwise or adds.
#pragma once

#include "core/base/problem.h"
#include "core/optics/shot_size.h"
#include "core/plan/plan.h"

namespace wend::answers {

/// From the widest to the closest.
optics::ShotSizes sizesOf(const plan::Plan& plan);

/// Zoom keys that ask for a size that neither the plan names nor the trade.
base::Problems unknownSizes(const plan::Plan& plan);

}  // namespace wend::answers
