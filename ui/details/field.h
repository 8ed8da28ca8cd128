/// One value of what is chosen: what it is called, how it reads, how it is typed and which edit it stands for.
///
/// Fields are values made anew for each plan: a kind of thing has a list of them, a line each (fields.h).
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/answers/answers.h"
#include "core/base/result.h"
#include "core/plan/references.h"
#include "ui/document/selection.h"

namespace wend::ui {

/// What the details are about.
struct Subject {
  const plan::Plan& plan;
  const Selection& selection;
  const answers::Answers* answers = nullptr;  ///< null before anything was computed
  double playhead = 0;
};

/// How a value is read and written.
enum class Quantity { words, choice, length, angle, moment, seconds, stop, number };

/// Nothing, a number, words, or a time that may hang on a beat.
using Value = std::variant<std::monostate, double, std::string, plan::Moment>;

using PlanEdit = base::Result<plan::Plan>;

struct Field {
  std::string label;
  Quantity quantity = Quantity::words;
  std::string unit;  ///< inside the field, behind the value
  Value value;
  std::function<PlanEdit(const plan::Plan&, const Value&)> set;  ///< none: computed, not editable
  std::vector<std::string> choices{};
  std::string whenEmpty{};  ///< what an empty field means; empty: the field may not be empty
  double nudge = 0;         ///< what an arrow key adds; 0: arrow keys do nothing
  int decimals = 0;         ///< at least so many
  int columns = 1;          ///< it is wide

  bool editable() const { return set != nullptr; }
};

using Fields = std::vector<Field>;

/// The value as the field shows it, without the unit that stands inside the field.
/// Ensures   (1) typed back it is the same value to the plan's step
std::string textOf(const Field& field, const plan::Plan& plan);

/// The unit inside the field: none for lengths in feet, whose text has it.
std::string unitOf(const Field& field, const plan::Plan& plan);

/// The value of a typed text.
/// Fails     as the readers of core/units; empty-field, no-such-beat, no-such-choice, bad-number
base::Result<Value> valueFrom(const Field& field, const plan::Plan& plan, const std::string& typed);

/// The value so many nudges further; nothing for values that cannot be nudged.
std::optional<Value> nudged(const Field& field, const plan::Plan& plan, double steps);

using SetNumber = std::function<PlanEdit(const plan::Plan&, double)>;
using SetWords = std::function<PlanEdit(const plan::Plan&, const std::string&)>;

Field lengthField(const std::string& label, double metres, SetNumber set);
Field angleField(const std::string& label, double degrees, SetNumber set);
Field secondsField(const std::string& label, double seconds, SetNumber set);
Field stopField(const std::string& label, double stop, SetNumber set);
Field numberField(const std::string& label, double value, const std::string& unit, double nudge, int decimals,
                  SetNumber set);
/// A share of one, shown and typed in percent.
Field percentField(const std::string& label, double share, SetNumber set);
/// Two columns wide: names are longer than numbers.
Field wordsField(const std::string& label, const std::string& words, SetWords set);
/// One column wide: letters, revisions.
Field shortWordsField(const std::string& label, const std::string& words, SetWords set);
Field choiceField(const std::string& label, const std::string& now, std::vector<std::string> choices, SetWords set);
/// A time of the plan. Typing a beat with an offset hangs it on that beat, typing seconds keeps it on its beat.
Field momentField(const std::string& label, const plan::Moment& moment, const plan::MomentRef& ref);

/// A time that is in no list of the plan's moments, or none, which means `meaning`.
using SetMoment = std::function<PlanEdit(const plan::Plan&, std::optional<plan::Moment>)>;
Field optionalMomentField(const std::string& label, const std::optional<plan::Moment>& moment,
                          const std::string& meaning, SetMoment set);

/// The field may be empty, which means `meaning`. `set` gets nothing then.
Field orNothing(Field field, bool isEmpty, const std::string& meaning,
                std::function<PlanEdit(const plan::Plan&)> clear);

}  // namespace wend::ui
