#include "core/file/plan_reader.h"

#include "core/file/describe_plan.h"
#include "core/file/format_stamp.h"
#include "core/file/object_reader.h"

namespace wend::file {

namespace {

PlanRead planFrom(JsonValue root, ProblemList& problems) {
  ReadContext context(root, problems);
  PlanRead read;
  ObjectReader<plan::Plan> reader(context, root, read.plan);
  reader.known("format");
  reader.known("version");
  describe(reader, Of<plan::Plan>{});
  reader.finish();
  read.notes = context.notes().told();
  return read;
}

}  // namespace

base::Result<PlanRead> readPlan(std::string_view json) {
  ProblemList problems;
  JsonDocument document(json);
  if (!document.parse(problems)) return problems.told();
  if (auto problem = otherFormat(document.root(), {kPlanFormat, kPlanVersion, "plan"})) return *problem;
  PlanRead read = planFrom(document.root(), problems);
  if (problems.count() > 0) return problems.told();
  return read;
}

}  // namespace wend::file
