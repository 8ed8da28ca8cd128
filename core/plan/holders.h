/// Who has a thing that changes hands during the take: focus, a pole, the rig.
///
/// Units     seconds of the take.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/plan/plan.h"

namespace wend::plan {

/// From when on somebody has it.
struct Holder {
  double from = 0;
  std::string who;
  bool operator==(const Holder&) const = default;
};

/// `first` has it from the start; empty: whom the earliest handover takes it from. Nobody where there is neither.
///
/// Ensures   (1) a handover counts when it is done, `over` after its start; (2) the order of the plan's list does not
///           matter; (3) what somebody else hands over than who has it stays where it is: a plan may have two poles.
std::vector<Holder> holdersOf(const Plan& plan, std::string_view what, std::string first = {});

/// Empty: nobody.
std::string holderAt(const std::vector<Holder>& holders, double t);

}  // namespace wend::plan
