#include "core/file/plan_writer.h"

#include "core/file/describe_plan.h"
#include "core/file/plan_reader.h"
#include "core/file/whole_document.h"

namespace wend::file {

std::string writePlan(const plan::Plan& plan) {
  return writtenWhole(plan, kPlanStamp);
}

}  // namespace wend::file
