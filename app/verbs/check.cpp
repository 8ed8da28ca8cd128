// wend check: every problem of the file, then every snag.
#include <algorithm>

#include "app/verbs/common.h"
#include "core/answers/routes.h"
#include "core/exchange/verbs_json.h"
#include "core/sheets/text_tables.h"

namespace wend::app {

namespace {

Exit check(const Arguments& arguments) {
  if (const auto fits = endingFits(arguments, {".txt"}); !fits) return refused(fits.problems());
  const std::string& path = arguments.operands()[0];
  const bool json = arguments.has("--json");
  auto plan = loaded(path);
  if (!plan) {
    if (json) handedOut(arguments, exchange::checkJson(plan.problems(), {}));
    return refused(plan.problems());
  }
  const auto take = answers::Take::of(plan->plan, plan->luminaires);
  if (!take) {
    if (json) handedOut(arguments, exchange::checkJson(take.problems(), {}));
    return refused(take.problems(), path);
  }
  auto answers = answers::answersOf(*take);
  if (answers) answers = answers::withRoutes(*answers);
  if (!answers) return refused(answers.problems(), path);
  const snags::Snags& snags = *(*answers)->snags;
  std::string text = exchange::checkJson(plan->notes, snags, (*answers)->evidence.get());
  if (!json)
    text = sheets::problemsText(plan->notes) + sheets::takeSummary(**answers) + "\n" +
           sheets::snagsText(*plan->plan, snags) + "\n" + sheets::kCaution + "\n";
  const Exit out = handedOut(arguments, text);
  if (out != Exit::fine) return out;
  const bool stops = std::any_of(snags.begin(), snags.end(), [](const snags::Snag& snag) {
    return snag.severity == snags::Severity::stops && !snag.accepted;
  });
  return stops ? Exit::snags : Exit::fine;
}

}  // namespace

const Verb kCheck{"check",
                  "PLAN",
                  "every problem of the file, then every snag of the take",
                  "wend check samples/first-batch.wend",
                  {kJson, kOutput, kQuiet},
                  check};

}  // namespace wend::app
