/// How far a rig strays from where the plan has it.
#pragma once

#include "core/plan/plan.h"

namespace wend::plan {

/// Metres, by the plan's own table: a dolly's, else an operator's, walking or standing.
inline double rigWobble(const Plan& plan, bool moving) {
  if (plan.camera.rig.kind == RigKind::dolly) return plan.wobble.dolly;
  return moving ? plan.wobble.operatorMoving : plan.wobble.operatorStill;
}

}  // namespace wend::plan
