/// Reads a plan, strictly: what it cannot honour it names, all of it, and changes nothing on the way.
///
/// Ensures   (1) every number is finite and in its range, every reference exists, every id is unique, marks and keys
///           are in order, arcs are consistent, file references stay below the plan's folder
///           (2) keys this version does not know are kept, in order and with their numbers as written, and noted
///           (3) no input takes more than the limits of limits.h allow, and none ends the program
/// Fails     all problems, at most 100 and one that counts the rest; each with its place as a JSON pointer (a line
///           where the text is no JSON), what was found, what was expected, what to do. A newer version is refused
///           alone.
/// Cost      O(n log n) over the bytes
#pragma once

#include <string_view>

#include "core/base/result.h"
#include "core/plan/plan.h"

namespace wend::file {

inline constexpr int kPlanVersion = 1;
inline constexpr std::string_view kPlanFormat = "wend-plan";

struct PlanRead {
  plan::Plan plan;
  base::Problems notes;  ///< unknown keys, with "did you mean"
};

base::Result<PlanRead> readPlan(std::string_view json);

}  // namespace wend::file
