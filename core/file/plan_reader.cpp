#include "core/file/plan_reader.h"

#include "core/base/text.h"
#include "core/file/describe_plan.h"
#include "core/file/object_reader.h"

namespace wend::file {

namespace {

using base::Problem;

/// What keeps the document from being looked at any further.
std::optional<Problem> otherFormat(JsonValue root) {
  if (!root.isObject())
    return Problem{"wrong-type", "/", root.shown(), "an object with the plan's parts", "check that this is a plan"};
  const auto format = root.member("format");
  if (!format || format->kind() != JsonKind::text || format->text() != kPlanFormat)
    return Problem{"wrong-format", "/format", format ? format->shown() : "nothing", "\"wend-plan\"",
                   "check that this is a plan"};
  const auto version = root.member("version");
  const auto number = version ? base::readNumber(version->raw()) : std::nullopt;
  if (number && *number > kPlanVersion)
    return Problem{"newer-version", "/version", version->shown(), "version " + std::to_string(kPlanVersion),
                   "this plan was saved by a newer Wend: open it with that one; the file was left as it is"};
  if (!number || *number != kPlanVersion)
    return Problem{"wrong-version", "/version", version ? version->shown() : "nothing",
                   "version " + std::to_string(kPlanVersion), "restore the version the file was saved with"};
  return std::nullopt;
}

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
  if (auto problem = otherFormat(document.root())) return *problem;
  PlanRead read = planFrom(document.root(), problems);
  if (problems.count() > 0) return problems.told();
  return read;
}

}  // namespace wend::file
