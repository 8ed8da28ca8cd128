/// The shot sizes a plan names: the usual ones, with those that the plan says otherwise or adds.
#pragma once

#include "core/optics/shot_size.h"
#include "core/plan/plan.h"

namespace wend::answers {

/// From the widest to the closest.
optics::ShotSizes sizesOf(const plan::Plan& plan);

}  // namespace wend::answers
