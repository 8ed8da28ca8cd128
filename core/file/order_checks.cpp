#include "core/file/order_checks.h"

#include <cmath>

#include "core/base/text.h"
#include "core/geometry/tolerance.h"
#include "core/plan/arc_leg.h"
#include "core/plan/invariants.h"

namespace wend::file {

namespace {

using plan::kSameTime;

std::string seconds(double value) {
  return base::shortest(std::round(value * 1000) / 1000) + " s";
}

std::optional<plan::Point> placeOf(const ReadContext& context, const plan::Mark& mark) {
  return mark.shelter.empty() ? std::optional(mark.pos) : context.index().shelterAt(mark.shelter);
}

void checkNext(ReadContext& context, JsonValue row, JsonValue nextRow, const plan::Mark& mark, const plan::Mark& next) {
  const auto leaves = context.index().secondsOf(mark.until.value_or(mark.at));
  const auto arrives = context.index().secondsOf(next.at);
  const auto from = placeOf(context, mark);
  const auto to = placeOf(context, next);
  if (!leaves || !arrives || !from || !to) return;
  const bool hold = geometry::distance(*from, *to) <= geometry::kHold && mark.leg.shape == plan::LegShape::straight &&
                    mark.leg.via.empty();
  if (*arrives < *leaves - kSameTime || (!hold && *arrives < *leaves + kSameTime)) {
    context.problem("time-order", nextRow, "at", seconds(*arrives),
                    "later than " + seconds(*leaves) + ", when the mark before is left", "put the marks in order");
    return;
  }
  if (mark.leg.shape != plan::LegShape::arc) return;
  if (auto problem = plan::arcProblem(mark.leg, *from, *to, row.pointerTo("leg"))) context.problem(std::move(*problem));
}

}  // namespace

void checkKeys(ReadContext& context, const std::vector<JsonValue>& rows, const std::vector<KeyTimes>& keys,
               bool fromStart) {
  std::optional<double> done;
  for (std::size_t i = 0; i < keys.size(); ++i) {
    const auto at = context.index().secondsOf(keys[i].at);
    if (!at) return;
    if (i == 0 && fromStart && std::abs(*at) > kSameTime)
      context.problem("first-key", rows[i], "at", seconds(*at), "0 for the first key", "add a key at 0");
    if (done && *at < *done - kSameTime)
      context.problem("key-overlap", rows[i], "at", seconds(*at),
                      "no earlier than " + seconds(*done) + ", when the key before is done",
                      "move this key or shorten the one before");
    done = *at + keys[i].over;
  }
}

void checkMarks(ReadContext& context, const std::vector<JsonValue>& rows, const std::vector<plan::Mark>& marks) {
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const auto reached = context.index().secondsOf(marks[i].at);
    const auto left = context.index().secondsOf(marks[i].until.value_or(marks[i].at));
    if (reached && left && *left < *reached - kSameTime)
      context.problem("time-order", rows[i], "until", seconds(*left),
                      "no earlier than " + seconds(*reached) + ", its at", "swap the two or correct one");
    else if (i + 1 < marks.size())
      checkNext(context, rows[i], rows[i + 1], marks[i], marks[i + 1]);
  }
}

}  // namespace wend::file
