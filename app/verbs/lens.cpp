// wend pulls: the moves of focus, iris and zoom.
#include "app/verbs/common.h"
#include "core/exchange/verbs_json.h"
#include "core/sheets/text_tables.h"

namespace wend::app {

namespace {

Exit pulls(const Arguments& arguments) {
  if (const auto fits = endingFits(arguments, {".txt", ".csv"}); !fits) return refused(fits.problems());
  auto answers = answersAt(arguments.operands()[0], arguments.has("--quiet"));
  if (!answers) return refused(answers.problems());
  if (arguments.has("--json")) return handedOut(arguments, exchange::pullsJson(**answers));
  const auto& evidence = *(*answers)->evidence;
  const plan::Plan& plan = (*answers)->take->plan();
  const bool csv = arguments.text("--output").value_or("").ends_with(".csv");
  return handedOut(arguments, csv ? sheets::movesTable(plan, evidence).csv() : sheets::pullsText(plan, evidence));
}

}  // namespace

const Verb kPulls{"pulls",
                  "PLAN",
                  "the moves of focus, iris and zoom: triggers, speeds, cover; .csv too",
                  "wend pulls samples/first-batch.wend",
                  {kJson, kOutput, kQuiet},
                  pulls};

}  // namespace wend::app
