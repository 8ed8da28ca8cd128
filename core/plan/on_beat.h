/// Which beat a time belongs to.
///
/// Units     seconds.
#pragma once

#include <string>

#include "core/plan/plan.h"

namespace wend::plan {

/// The last beat that has begun, of two at once the later in the list; empty, and the time itself, before the first.
struct OnBeat {
  std::string beat;
  double plus = 0;  ///< after it
};

/// A beat that begins within a nanosecond counts: times worked out from frames fall that near to it.
OnBeat onBeat(const Plan& plan, double t);

}  // namespace wend::plan
