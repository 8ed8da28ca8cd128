/// Writes a plan as the text of its file.
///
/// Requires  a plan as readPlan gives it or an edit of one: finite numbers, UTF-8
/// Ensures   (1) readPlan(writePlan(p)) == p
///           (2) keys stand in a fixed order, numbers in their shortest form, one mark and one key a line; the same
///           plan
///               gives the same bytes
///           (3) unknown keys come back at the end of their object with the text they had; keys that hold their default
///               are left out
#pragma once

#include <string>

#include "core/plan/plan.h"

namespace wend::file {

std::string writePlan(const plan::Plan& plan);

}  // namespace wend::file
