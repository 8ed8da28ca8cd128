#include "core/file/plan_reader.h"

#include "core/file/describe_plan.h"
#include "core/file/whole_document.h"

namespace wend::file {

base::Result<PlanRead> readPlan(std::string_view json) {
  auto whole = readWhole<plan::Plan>(json, kPlanStamp);
  if (!whole) return whole.problems();
  auto [plan, notes] = std::move(whole).value();
  return PlanRead{std::move(plan), std::move(notes)};
}

}  // namespace wend::file
