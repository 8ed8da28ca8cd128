// wend pulls: the moves of focus, iris and zoom.
#include "app/verbs/common.h"
#include "core/exchange/verbs_json.h"
#include "core/sheets/text_tables.h"

namespace wend::app {

namespace {

Exit pulls(const Arguments& arguments) {
  auto answers = answersAt(arguments.operands()[0], arguments.has("--quiet"));
  if (!answers) return refused(answers.problems());
  const auto& evidence = *(*answers)->evidence;
  return handedOut(arguments, arguments.has("--json") ? exchange::pullsJson(evidence)
                                                      : sheets::pullsText((*answers)->take->plan(), evidence));
}

}  // namespace

const Verb kPulls{"pulls",
                  "PLAN",
                  "the moves of focus, iris and zoom, with triggers, speeds, cover and hands",
                  "wend pulls samples/first-batch.wend",
                  {kJson, kOutput, kQuiet},
                  pulls};

}  // namespace wend::app
