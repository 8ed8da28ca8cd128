// wend at, wend table: one instant, and instants along the take.
#include "app/verbs/common.h"
#include "core/answers/on_found_routes.h"
#include "core/answers/traps.h"
#include "core/exchange/verbs_json.h"
#include "core/sheets/text_tables.h"
#include "core/snags/stretch.h"

namespace wend::app {

namespace {

answers::Instant everythingAt(const answers::Answers& answers, const answers::Traps& traps, double t) {
  answers::Instant instant = answers::instantAt(*answers.take, t, answers.evidence.get());
  instant.traps = traps.at(instant);
  return instant;
}

/// Whose way was found is where it leads, as the other verbs have it.
base::Result<answers::AnswersPtr> answersOnRoutes(const Arguments& arguments, std::vector<std::string>& routed) {
  auto answers = answersAt(arguments.operands()[0], arguments.has("--quiet"));
  if (!answers || !(*answers)->take->plan().lens || !answers::routesWanted(*(*answers)->take)) return answers;
  answers = answers::withRoutes(*answers);
  if (!answers) return answers;
  routed = (*answers)->evidence->routed;
  return answers::drawnOut(*answers);
}

std::string routedText(const plan::Plan& plan, const std::vector<std::string>& routed) {
  std::string text;
  for (const auto& id : routed) text += snags::nameOf(plan, id) + " is where the route found for them leads\n";
  return text.empty() ? text : "\n" + text;
}

Exit at(const Arguments& arguments) {
  if (const auto fits = endingFits(arguments, {".txt"}); !fits) return refused(fits.problems());
  std::vector<std::string> routed;
  auto answers = answersOnRoutes(arguments, routed);
  if (!answers) return refused(answers.problems());
  const answers::Take& take = *(*answers)->take;
  const auto t = timeWithin(take, arguments.operands()[1]);
  if (!t) return refused(t.problems());
  const auto instant = everythingAt(**answers, answers::Traps(take, (*answers)->evidence.get()), *t);
  return handedOut(arguments, arguments.has("--json")
                                  ? exchange::instantJson(take.plan(), instant)
                                  : sheets::instantText(take, instant) + routedText(take.plan(), routed) + "\n" +
                                        sheets::kCaution + "\n");
}

Exit table(const Arguments& arguments) {
  if (const auto fits = endingFits(arguments, {".txt", ".csv"}); !fits) return refused(fits.problems());
  std::vector<std::string> routed;
  auto answers = answersOnRoutes(arguments, routed);
  if (!answers) return refused(answers.problems());
  const answers::Take& take = *(*answers)->take;
  const auto step = arguments.number("--step", 0, 0.001, 86400, "s");
  if (!step) return refused(step.problems());
  std::vector<answers::Instant> rows;
  const answers::Traps traps(take, (*answers)->evidence.get());
  const auto add = [&](double t) { rows.push_back(everythingAt(**answers, traps, t)); };
  if (*step == 0)
    for (const double t : take.frameTimes()) add(t);
  else
    for (int i = 0; i * *step <= take.length() + 1e-9; ++i) add(std::min(i * *step, take.length()));
  if (arguments.has("--json")) return handedOut(arguments, exchange::tableJson(rows));
  const bool csv = arguments.text("--output").value_or("").ends_with(".csv");
  const auto table = sheets::instantsTable(take, rows, csv ? sheets::Columns::all : sheets::Columns::few);
  return handedOut(arguments, csv ? table.csv() : table.text());
}

}  // namespace

const Verb kAt{"at",
               "PLAN TIME",
               "everything about one instant: frame, who is in it, focus, light, crew",
               "wend at samples/first-batch.wend b6+5",
               {kJson, kOutput, kQuiet},
               at};

const Verb kTable{"table",
                  "PLAN",
                  "the same along the take, a row a frame or every S seconds; .csv has more",
                  "wend table samples/first-batch.wend --step 1",
                  {{"--step", "S", "seconds between rows; without it a row a frame"}, kJson, kOutput, kQuiet},
                  table};

}  // namespace wend::app
