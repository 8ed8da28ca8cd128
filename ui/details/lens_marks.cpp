#include "ui/details/lens_marks.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <type_traits>

#include "core/base/check.h"
#include "core/base/text.h"
#include "core/plan/edits_camera.h"
#include "core/plan/lens_marks.h"
#include "core/units/length.h"
#include "core/units/stop.h"
#include "core/units/typed.h"

namespace wend::ui {

using optics::ScaleOf;

namespace {

void put(plan::FocusMark& mark, const RingMark& from) {
  mark.distance = std::isinf(from.value) ? std::nullopt : std::optional(from.value);
  mark.witness = from.witness;
}
void put(plan::IrisMark& mark, const RingMark& from) {
  mark.stop = from.value;
}
void put(plan::ZoomMark& mark, const RingMark& from) {
  mark.focal = from.value;
}

std::string witnessOf(const plan::FocusMark& mark) {
  return mark.witness;
}
template <class Mark>
std::string witnessOf(const Mark&) {
  return {};
}

/// Calls change with the marks of that ring.
template <class Lens, class Change>
auto withMarks(Lens& lens, ScaleOf of, Change change) {
  switch (of) {
    case ScaleOf::distance:
      return change(lens.focusMarks);
    case ScaleOf::stop:
      return change(lens.irisMarks);
    case ScaleOf::focal:
      return change(lens.zoomMarks);
  }
  WEND_CHECK(false);
}

/// The plan with the marks of that ring changed.
template <class Change>
base::Result<plan::Plan> changed(const plan::Plan& plan, ScaleOf of, Change change) {
  WEND_CHECK(plan.lens.has_value());
  plan::Lens lens = *plan.lens;
  withMarks(lens, of, change);
  return plan::lensSet(plan, std::move(lens));
}

template <class Mark>
void fill(Mark& mark, const RingMark& from) {
  put(mark, from);
  mark.deg = from.degrees;
}

}  // namespace

std::vector<RingMark> ringMarks(const plan::Plan& plan, ScaleOf of) {
  if (!plan.lens) return {};
  return withMarks(*plan.lens, of, [](const auto& marks) {
    std::vector<RingMark> rows;
    for (const auto& mark : marks) rows.push_back({plan::markValue(mark), mark.deg, witnessOf(mark)});
    return rows;
  });
}

base::Result<plan::Plan> markSet(const plan::Plan& plan, ScaleOf of, std::size_t row, const RingMark& mark) {
  return changed(plan, of, [&](auto& marks) {
    WEND_CHECK(row < marks.size());
    fill(marks[row], mark);
  });
}

namespace {

/// Before which of the rows a new mark goes.
std::size_t placeFor(const std::vector<RingMark>& rows, ScaleOf of, double value) {
  const bool falling = rows.size() > 1 ? rows.front().value > rows.back().value
                                       : of == ScaleOf::distance;  // as a barrel is read: from infinity on
  const auto at = std::find_if(rows.begin(), rows.end(), [&](const RingMark& other) {
    return falling ? other.value < value : other.value > value;
  });
  return static_cast<std::size_t>(at - rows.begin());
}

std::string markText(const RingMark& mark, ScaleOf of, plan::LengthUnit unit) {
  return markValueText(of, mark.value, unit) + " at " + base::shortest(mark.degrees) + "\u00b0";
}

}  // namespace

std::string turnsBackWords(const plan::Plan& plan, ScaleOf of, const RingMark& mark, std::optional<std::size_t> row) {
  const auto rows = ringMarks(plan, of);
  const std::size_t place = row ? *row : placeFor(rows, of, mark.value), after = row ? place + 1 : place;
  std::string beside;
  const auto add = [&](std::size_t i) {
    beside +=
        (beside.empty() ? "" : " and ") + ("row " + std::to_string(i + 1) + ", ") + markText(rows[i], of, plan.display);
  };
  if (place > 0) add(place - 1);
  if (after < rows.size()) add(after);
  const std::string own = row ? "row " + std::to_string(*row + 1) + ", " : "";
  return own + markText(mark, of, plan.display) + " turns the ring back beside " + beside +
         ": values and degrees have to go one way. Look at these.";
}

base::Result<plan::Plan> markAdded(const plan::Plan& plan, ScaleOf of, const RingMark& mark) {
  return changed(plan, of, [&](auto& marks) {
    const auto at = static_cast<std::ptrdiff_t>(placeFor(ringMarks(plan, of), of, mark.value));
    using Mark = typename std::decay_t<decltype(marks)>::value_type;
    fill(*marks.insert(marks.begin() + at, Mark{}), mark);
  });
}

base::Result<plan::Plan> markRemoved(const plan::Plan& plan, ScaleOf of, std::size_t row) {
  return changed(plan, of, [&](auto& marks) {
    WEND_CHECK(row < marks.size());
    marks.erase(marks.begin() + static_cast<std::ptrdiff_t>(row));
  });
}

base::Result<double> markValueFrom(ScaleOf of, const std::string& typed, plan::LengthUnit unit) {
  const std::string text(base::trimmed(typed));
  if (of == ScaleOf::stop) return units::stopFrom(text);
  if (of == ScaleOf::distance)
    return text == "inf" || text == "infinity" || text == "\u221e" ? std::numeric_limits<double>::infinity()
                                                                   : units::lengthFrom(text, unit);
  const auto number = units::typedNumber(text.ends_with("mm") ? text.substr(0, text.size() - 2) : text);
  if (number) return *number;
  return base::Problem{"bad-number", "", units::asTyped(text), "a focal length in millimetres", "Type it like 35."};
}

std::string markValueText(ScaleOf of, double value, plan::LengthUnit unit) {
  if (std::isinf(value)) return "\u221e";
  return of == ScaleOf::distance && unit == plan::LengthUnit::feet ? units::lengthText(value, unit)
                                                                   : base::shortest(value);
}

}  // namespace wend::ui
