/// The small plan on a summer day at 50 degrees north, at the afternoon time at which the sun stands as high as asked.
#pragma once

#include "core/answers/sun.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {

/// Requires  an elevation between 1 and 60 degrees.
inline plan::Plan sunlit(double elevation) {
  plan::Plan plan = smallPlan();
  plan.site = plan::Site{50, 0, {2031, 6, 21}, 0, 0, {}};
  double high = 12.5 * 3600, low = 21 * 3600;
  for (int i = 0; i < 60; ++i) {
    plan.clock.timeOfDay = (high + low) / 2;
    (sunOf(plan, 0)->elevation > elevation ? high : low) = *plan.clock.timeOfDay;
  }
  return plan;
}

inline double sunBearing(const plan::Plan& plan) {
  return sunOf(plan, 0)->bearing;
}

}  // namespace wend::answers
