// wend sheet: paper for one department.
#include <algorithm>

#include "app/verbs/common.h"
#include "core/answers/on_found_routes.h"
#include "core/base/text.h"
#include "core/exchange/verbs_json.h"
#include "core/sheets/dept_sheets.h"

namespace wend::app {

using base::Problem;
using base::Result;

namespace {

/// The departments asked for: one, or every one for "all".
Result<std::vector<std::string>> departmentsOf(const Arguments& arguments) {
  const auto given = arguments.text("--for");
  std::vector<std::string> words = sheets::departments();
  words.push_back("all");
  std::string expected;
  for (const auto& word : words) expected += (expected.empty() ? "" : ", ") + word;
  if (!given) return Problem{"missing-option", "--for", "nobody", "one of " + expected, "for example: --for focus"};
  if (*given == "strips")
    return Problem{"not-yet", "--for", "strips, which this version does not print yet", "one of " + expected,
                   "the focus sheet holds the same distances"};
  if (*given == "all") return sheets::departments();
  if (std::find(words.begin(), words.end(), *given) != words.end()) return std::vector<std::string>{*given};
  const auto nearest = base::nearestWord(*given, words);
  return Problem{"unknown-word", "--for", "\"" + *given + "\"", "one of " + expected,
                 nearest ? "did you mean " + *nearest + "?" : "choose one of them"};
}

Result<bool> wantsCsv(const Arguments& arguments) {
  const std::string output = arguments.text("--output").value_or("-");
  if (output.ends_with(".csv")) return true;
  if (output == "-" || output.ends_with(".txt")) return false;
  return Problem{"unknown-format", "--output", "\"" + output + "\"", "a name that ends in .txt or .csv",
                 "let the ending say which is wanted"};
}

/// Routes take long to find; the crew sheet shows them, the director's what stops the take for want of one, and the
/// sound sheet what links and poles make of them.
Result<answers::AnswersPtr> withWhatIsNeeded(const answers::AnswersPtr& answers, const std::vector<std::string>& whom) {
  const bool routes = std::any_of(whom.begin(), whom.end(),
                                  [](const auto& w) { return w == "crew" || w == "director" || w == "sound"; });
  return routes ? answers::withRoutes(answers) : answers;
}

/// On the sound sheet whose way was found is where it leads.
Result<sheets::DeptSheet> sheetFor(const answers::AnswersPtr& answers, const std::string& word) {
  if (word != "sound") return sheets::deptSheet(*answers, word);
  const auto drawn = answers::drawnOut(answers);
  if (!drawn) return drawn.problems();
  return sheets::deptSheet(**drawn, word);
}

/// JSON is in metres whatever the plan displays.
Exit sheetAsJson(const Arguments& arguments, const std::vector<std::string>& whom) {
  const auto loadedPlan = loaded(arguments.operands()[0]);
  if (!loadedPlan) return refused(loadedPlan.problems());
  auto metric = std::make_shared<plan::Plan>(*loadedPlan->plan);
  metric->display = plan::LengthUnit::metres;
  const auto take = answers::Take::of(metric, loadedPlan->luminaires);
  if (!take) return refused(take.problems());
  auto answers = answers::answersOf(*take);
  if (answers) answers = withWhatIsNeeded(*answers, whom);
  if (!answers) return refused(answers.problems());
  std::vector<sheets::DeptSheet> made;
  for (const auto& word : whom) {
    auto sheet = sheetFor(*answers, word);
    if (!sheet) return refused(sheet.problems());
    made.push_back(*std::move(sheet));
  }
  return handedOut(arguments, exchange::sheetsJson(*metric, made));
}

Exit sheet(const Arguments& arguments) {
  const auto whom = departmentsOf(arguments);
  if (!whom) return refused(whom.problems());
  if (arguments.has("--json")) return sheetAsJson(arguments, *whom);
  const auto csv = wantsCsv(arguments);
  if (!csv) return refused(csv.problems());
  auto answers = answersAt(arguments.operands()[0], arguments.has("--quiet"));
  if (answers) answers = withWhatIsNeeded(*answers, *whom);
  if (!answers) return refused(answers.problems());
  const plan::Plan& plan = (*answers)->take->plan();
  std::string text;
  for (const auto& word : *whom) {
    const auto sheet = sheetFor(*answers, word);
    if (!sheet) return refused(sheet.problems());
    const sheets::DeptSheet& made = *sheet;
    text += text.empty() ? "" : *csv ? "\r\n" : "\n\n";
    text += *csv ? sheets::sheetCsv(plan, made) : sheets::sheetText(plan, made);
  }
  return handedOut(arguments, text);
}

}  // namespace

const Verb kSheet{"sheet",
                  "PLAN",
                  "paper for one department, as text, .csv or JSON",
                  "wend sheet samples/first-batch.wend --for focus",
                  {{"--for", "WHOM", "focus, operator, crew, director, light, sound, marks or all"},
                   {"--output", "FILE", "write to a name that ends in .txt or .csv (also -o)"},
                   kJson,
                   kQuiet},
                  sheet};

}  // namespace wend::app
