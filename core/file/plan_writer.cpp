#include "core/file/plan_writer.h"

#include "core/file/describe_plan.h"
#include "core/file/object_writer.h"
#include "core/file/plan_reader.h"

namespace wend::file {

std::string writePlan(const plan::Plan& plan) {
  ObjectWriter<plan::Plan> writer(plan);
  writer.fixed("format", Written::text(kPlanFormat));
  writer.fixed("version", Written::raw(std::to_string(kPlanVersion)));
  describe(writer, Of<plan::Plan>{});
  return writer.finish().document();
}

}  // namespace wend::file
