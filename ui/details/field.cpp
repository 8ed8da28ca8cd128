#include "ui/details/field.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/plan/edits_beats.h"
#include "core/plan/edits_marks.h"
#include "core/units/angle.h"
#include "core/units/length.h"
#include "core/units/stop.h"
#include "core/units/time_text.h"
#include "core/units/typed.h"

namespace wend::ui {
namespace {

using base::Problem;
using units::LengthUnit;

constexpr double kNudgeMetres = 0.05, kNudgeSeconds = 0.1, kNudgeDegrees = 1;

/// At least so many decimals, and as many as it takes.
std::string plainText(double value, int decimals) {
  if (!std::isfinite(value)) return base::fixed(value, 0);
  const std::string fixed = base::fixed(value, decimals);
  return base::readNumber(fixed) == value ? fixed : base::shortest(value);
}

/// Feet and inches as a tape reads where that is exact, else inches to a hundredth.
std::string feetText(double metres) {
  const std::string tape = units::lengthText(metres, LengthUnit::feet);
  const auto read = units::lengthFrom(tape, LengthUnit::feet);
  if (std::isinf(metres) || (read.ok() && std::abs(*read - metres) < 5e-5)) return tape;
  const double inches = std::round(std::abs(metres) / units::kMetresPerInch * 100) / 100;
  const double feet = std::floor(inches / 12);
  return (metres < 0 ? "-" : "") + base::fixed(feet, 0) + "'-" +
         plainText(std::round((inches - 12 * feet) * 100) / 100, 0) + "\"";
}

units::TakeTimecode timecodeOf(const plan::Plan& plan) {
  const units::FrameRate rate{plan.clock.rateNumerator, plan.clock.rateDenominator};
  const units::TimecodeKind kind{rate, plan.clock.dropFrame && rate.droppedPerMinute() > 0};
  const auto start = units::framesFrom(plan.clock.startTimecode, kind);
  return {kind, start.ok() ? *start : 0};
}

base::Result<Value> momentFrom(const plan::Plan& plan, const std::string& typed) {
  const auto time = units::timeFrom(typed, timecodeOf(plan));
  if (!time) return time.problems();
  if (!time->beat.empty() && !plan::hasBeat(plan, time->beat))
    return Problem{"no-such-beat", "", units::asTyped(time->beat), "the id of a beat of the plan",
                   "type seconds, or a beat as in b2+1.5"};
  return Value(plan::Moment{time->beat, time->seconds});
}

base::Result<Value> numberFrom(const std::string& text, const std::string& unit) {
  std::string_view bare = base::trimmed(text);
  if (!unit.empty() && bare.ends_with(unit)) bare = base::trimmed(bare.substr(0, bare.size() - unit.size()));
  if (const auto value = units::typedNumber(bare)) return Value(*value);
  return Problem{"bad-number", "", units::asTyped(text), "a number", "type digits with one decimal mark"};
}

base::Result<Value> choiceFrom(const Field& field, const std::string& text) {
  if (std::find(field.choices.begin(), field.choices.end(), text) != field.choices.end()) return Value(text);
  return Problem{"no-such-choice", "", units::asTyped(text), "one of the choices", "choose one from the list"};
}

base::Result<Value> asValue(base::Result<double> number) {
  if (!number) return number.problems();
  return Value(*number);
}

Field numeric(const std::string& label, Quantity quantity, const std::string& unit, double value, double nudge,
              int decimals, SetNumber set) {
  Field field{.label = label,
              .quantity = quantity,
              .unit = unit,
              .value = value,
              .set = nullptr,
              .nudge = nudge,
              .decimals = decimals};
  if (set) field.set = [set](const plan::Plan& plan, const Value& v) { return set(plan, std::get<double>(v)); };
  return field;
}

PlanEdit momentSet(const plan::Plan& plan, const plan::MomentRef& ref, const plan::Moment& moment) {
  const double seconds = plan::secondsOf(plan, moment);
  const auto* arrival = std::get_if<plan::Arrival>(&ref);
  // A mark that is left at once stays so only under the edit of its own.
  PlanEdit edited = arrival ? plan::arrivalSet(plan, arrival->mark, seconds) : plan::retimedMoment(plan, ref, seconds);
  if (!edited || moment.beat.empty()) return edited;
  return plan::boundMoment(*edited, ref, moment.beat);
}

}  // namespace

std::string textOf(const Field& field, const plan::Plan& plan) {
  if (const auto* words = std::get_if<std::string>(&field.value)) return *words;
  if (const auto* moment = std::get_if<plan::Moment>(&field.value))
    return plainText(plan::secondsOf(plan, *moment), field.decimals);
  const auto* number = std::get_if<double>(&field.value);
  if (!number) return {};
  if (field.quantity == Quantity::stop) {
    // Between thirds the exact number is the honest one.
    const std::string third = units::stopText(*number);
    const auto read = units::stopFrom(third);
    return read.ok() && std::abs(*read - *number) < 0.0006 ? third : "T" + plainText(*number, 1);
  }
  if (field.quantity == Quantity::length && plan.display == LengthUnit::feet) return feetText(*number);
  return plainText(*number, field.decimals);
}

std::string unitOf(const Field& field, const plan::Plan& plan) {
  return field.quantity == Quantity::length && plan.display == LengthUnit::feet ? std::string() : field.unit;
}

base::Result<Value> valueFrom(const Field& field, const plan::Plan& plan, const std::string& typed) {
  const std::string text(base::trimmed(typed));
  const bool number = field.quantity != Quantity::words && field.quantity != Quantity::choice;
  if (text.empty() && !field.whenEmpty.empty()) return Value(std::monostate());
  if (text.empty() && number)
    return Problem{"empty-field", "", "nothing", field.label, "type a value, or Escape for the old one"};
  switch (field.quantity) {
    case Quantity::words:
      return Value(text);
    case Quantity::choice:
      return choiceFrom(field, text);
    case Quantity::length:
      return asValue(units::lengthFrom(text, plan.display));
    case Quantity::angle:
      return asValue(units::angleFrom(text));
    case Quantity::stop:
      return asValue(units::stopFrom(text));
    case Quantity::moment:
      return momentFrom(plan, text.ends_with(" s") ? text.substr(0, text.size() - 2) : text);
    case Quantity::seconds:
    case Quantity::number:
      return numberFrom(text, field.unit);
  }
  return Value(text);
}

std::optional<Value> nudged(const Field& field, const plan::Plan& plan, double steps) {
  if (const auto* moment = std::get_if<plan::Moment>(&field.value))
    return plan::Moment{{}, plan::secondsOf(plan, *moment) + steps * kNudgeSeconds};
  const auto* number = std::get_if<double>(&field.value);
  if (!number || !std::isfinite(*number)) return std::nullopt;
  if (field.quantity == Quantity::stop) return units::closedBy(*number, steps / 3);
  if (field.nudge == 0) return std::nullopt;
  return *number + steps * field.nudge;
}

Field lengthField(const std::string& label, double metres, SetNumber set) {
  return numeric(label, Quantity::length, "m", metres, kNudgeMetres, 2, std::move(set));
}
Field angleField(const std::string& label, double degrees, SetNumber set) {
  return numeric(label, Quantity::angle, "\u00b0", degrees, kNudgeDegrees, 1, std::move(set));
}
Field secondsField(const std::string& label, double seconds, SetNumber set) {
  return numeric(label, Quantity::seconds, "s", seconds, kNudgeSeconds, 1, std::move(set));
}
Field stopField(const std::string& label, double stop, SetNumber set) {
  return numeric(label, Quantity::stop, "", stop, 0, 0, std::move(set));
}
Field numberField(const std::string& label, double value, const std::string& unit, double nudge, int decimals,
                  SetNumber set) {
  return numeric(label, Quantity::number, unit, value, nudge, decimals, std::move(set));
}

Field percentField(const std::string& label, double share, SetNumber set) {
  return numberField(
      label, std::round(share * 1e6) / 1e4, "%", 5, 0,
      [set = std::move(set)](const plan::Plan& plan, double percent) { return set(plan, percent / 100); });
}

Field wordsField(const std::string& label, const std::string& words, SetWords set) {
  Field field{.label = label, .quantity = Quantity::words, .unit = {}, .value = words, .set = nullptr};
  if (set) field.set = [set](const plan::Plan& plan, const Value& v) { return set(plan, std::get<std::string>(v)); };
  field.columns = 2;
  return field;
}

Field shortWordsField(const std::string& label, const std::string& words, SetWords set) {
  Field field = wordsField(label, words, std::move(set));
  field.columns = 1;
  return field;
}

Field choiceField(const std::string& label, const std::string& now, std::vector<std::string> choices, SetWords set) {
  Field field = shortWordsField(label, now, std::move(set));
  field.quantity = Quantity::choice;
  field.choices = std::move(choices);
  return field;
}

Field momentField(const std::string& label, const plan::Moment& moment, const plan::MomentRef& ref) {
  Field field{.label = label,
              .quantity = Quantity::moment,
              .unit = "s",
              .value = moment,
              .set = nullptr,
              .nudge = 1,
              .decimals = 1};
  field.set = [ref](const plan::Plan& p, const Value& v) { return momentSet(p, ref, std::get<plan::Moment>(v)); };
  return field;
}

Field optionalMomentField(const std::string& label, const std::optional<plan::Moment>& moment,
                          const std::string& meaning, SetMoment set) {
  Field field{.label = label,
              .quantity = Quantity::moment,
              .unit = "s",
              .value = moment.value_or(plan::Moment{}),
              .set = nullptr,
              .nudge = 1,
              .decimals = 1};
  field.set = [set](const plan::Plan& p, const Value& v) { return set(p, std::get<plan::Moment>(v)); };
  return orNothing(std::move(field), !moment, meaning, [set](const plan::Plan& p) { return set(p, std::nullopt); });
}

Field orNothing(Field field, bool isEmpty, const std::string& meaning,
                std::function<PlanEdit(const plan::Plan&)> clear) {
  field.whenEmpty = meaning;
  if (isEmpty) field.value = std::monostate();
  field.set = [set = field.set, clear = std::move(clear)](const plan::Plan& plan, const Value& v) {
    return std::holds_alternative<std::monostate>(v) ? clear(plan) : set(plan, v);
  };
  return field;
}

}  // namespace wend::ui
