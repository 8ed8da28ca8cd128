// wend clear, wend spot, wend routes: where people may stand and until when.
#include "app/verbs/common.h"
#include "core/answers/clear_ground.h"
#include "core/answers/routes.h"
#include "core/answers/whole_take.h"
#include "core/exchange/verbs_json.h"
#include "core/sheets/text_tables.h"

namespace wend::app {

namespace {

base::Result<double> timeOption(const answers::Take& take, const Arguments& arguments, const std::string& name,
                                double otherwise) {
  const auto text = arguments.text(name);
  if (!text) return otherwise;
  return timeWithin(take, *text);
}

Exit clear(const Arguments& arguments) {
  if (const auto fits = endingFits(arguments, {".txt"}); !fits) return refused(fits.problems());
  auto take = takeAt(arguments.operands()[0]);
  if (!take) return refused(take.problems());
  const auto from = timeOption(**take, arguments, "--from", 0);
  const auto until = timeOption(**take, arguments, "--until", (*take)->length());
  const auto height = arguments.number("--height", (*take)->plan().sightRules.height, 0.1, 10, "m");
  for (const auto* number : {&from, &until, &height})
    if (!*number) return refused(number->problems());
  if (*until < *from)
    return refused({"empty-span", "--until", "an end before the start", "--until after --from", "swap the two"});
  const auto clear = answers::clearGroundOf(**take, {*height}, {*from, *until});
  if (!clear) return refused(clear.problems());
  const geometry::Span span{*from, *until};
  const auto glass = *answers::glassGroundOf(**take, {*height, span, clear->clearFloor()});
  return handedOut(arguments, arguments.has("--json") ? exchange::clearJson(*clear, glass)
                                                      : sheets::clearText((*take)->plan(), *clear, glass, span));
}

Exit spot(const Arguments& arguments) {
  if (const auto fits = endingFits(arguments, {".txt"}); !fits) return refused(fits.problems());
  auto take = takeAt(arguments.operands()[0]);
  if (!take) return refused(take.problems());
  const auto x = arguments.operandNumber(1, "X", -10000, 10000, "m"),
             y = arguments.operandNumber(2, "Y", -10000, 10000, "m");
  const auto height = arguments.number("--height", (*take)->plan().sightRules.height, 0.1, 10, "m");
  for (const auto* number : {&x, &y, &height})
    if (!*number) return refused(number->problems());
  if (!(*take)->plan().lens) return refused(noLens());
  const double radius = (*take)->plan().sightRules.radius;
  const auto sight = answers::sightOfSpot(**take, {*x, *y}, *height, radius);
  const auto panes = answers::panesShowing(**take, {*x, *y}, *height, radius);
  return handedOut(arguments, arguments.has("--json") ? exchange::spotJson(**take, {*x, *y}, *height, sight, panes)
                                                      : sheets::spotText(**take, {*x, *y}, *height, sight, panes));
}

Exit routes(const Arguments& arguments) {
  if (const auto fits = endingFits(arguments, {".txt"}); !fits) return refused(fits.problems());
  auto answers = answersAt(arguments.operands()[0], arguments.has("--quiet"));
  if (!answers) return refused(answers.problems());
  const plan::Plan& plan = (*answers)->take->plan();
  if (!plan.lens) return refused(noLens());
  answers = answers::withRoutes(*answers);
  if (!answers) return refused(answers.problems());
  const auto routes = sheets::routesOf(**answers);
  return handedOut(arguments, arguments.has("--json") ? exchange::routesJson(routes)
                                                      : sheets::routesText(routes) + "\n" + sheets::kCaution + "\n");
}

const Option kHeight{"--height", "H", "of the person, in metres; the plan's sight rules say otherwise"};

}  // namespace

const Verb kClear{"clear",
                  "PLAN",
                  "the ground that is clear over a span, between frames too",
                  "wend clear samples/first-batch.wend --from b6 --until b7",
                  {{"--from", "T", "start of the span; the take's start without it"},
                   {"--until", "T", "end of the span; the take's end without it"},
                   kHeight,
                   kJson,
                   kOutput,
                   kQuiet},
                  clear};

const Verb kSpot{"spot",
                 "PLAN X Y",
                 "when one spot is seen and when it is clear, with margins",
                 "wend spot samples/first-batch.wend 8.5 0.6",
                 {kHeight, kJson, kOutput, kQuiet},
                 spot};

const Verb kRoutes{"routes",
                   "PLAN",
                   "who stands where and walks when, drawn or found, and where it breaks",
                   "wend routes samples/first-batch.wend",
                   {kJson, kOutput, kQuiet},
                   routes};

}  // namespace wend::app
