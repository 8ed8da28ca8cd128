#include "core/sheets/chart_text.h"

#include <cmath>

#include "core/base/text.h"
#include "core/sheets/text_tables.h"
#include "core/units/stop.h"

namespace wend::sheets {

using base::fixed;
using optics::ScaleOf;

namespace {

const char* titleOf(ScaleOf of) {
  return of == ScaleOf::distance ? "Focus marks" : of == ScaleOf::stop ? "Iris marks" : "Zoom marks";
}

std::string signedDegrees(double degrees) {
  return (degrees < 0 ? "" : "+") + fixed(degrees, 1) + "°";
}

std::string scaleText(const plan::Lens& lens, const answers::ChartScale& scale, units::LengthUnit unit) {
  TextTable table({">#", ">mark", ">barrel", "witness", "left out, the others say"});
  for (std::size_t i = 0; i < scale.marks.size(); ++i)
    table.add({std::to_string(i + 1), scaleValueText(scale.of, scale.marks[i].value, unit),
               fixed(scale.marks[i].degrees, 1) + "°",
               scale.of == ScaleOf::distance && !lens.focusMarks[i].witness.empty() ? lens.focusMarks[i].witness : "–",
               markMissText(scale, i, unit)});
  return std::string("\n") + titleOf(scale.of) + "\n" + table.text() + scaleAdvice(scale, unit) + "\n";
}

std::string rangeText(const std::array<double, 2>& range, int digits) {
  const std::string least = fixed(range[0], digits), most = fixed(range[1], digits);
  return least == most ? least : least + " to " + most;
}

}  // namespace

std::string scaleValueText(ScaleOf of, double value, units::LengthUnit unit) {
  switch (of) {
    case ScaleOf::distance:
      return units::lengthText(value, unit);
    case ScaleOf::stop:
      return units::stopText(value);
    case ScaleOf::focal:
      return fixed(value, 1) + " mm";
  }
  return {};
}

std::string markMissText(const answers::ChartScale& scale, std::size_t row, units::LengthUnit unit) {
  const auto& miss = scale.trust.rows[row];
  if (!miss) return "–";
  return signedDegrees(miss->degrees) + ", " + scaleValueText(scale.of, scale.marks[row].value + miss->value, unit);
}

std::string scaleAdvice(const answers::ChartScale& scale, units::LengthUnit unit) {
  const std::string off = scale.marks.size() < 3
                              ? "too few marks to tell how far off they are between"
                              : "between marks off by at most about " + fixed(scale.trust.worstDegrees, 1) + "°";
  return off + "; mark next: " + scaleValueText(scale.of, scale.trust.markNext, unit);
}

std::string chartText(const plan::LensChart& chart, units::LengthUnit unit) {
  const plan::Lens& lens = chart.lens;
  std::string text = (lens.name.empty() ? "a lens without a name" : lens.name) + "\n" + rangeText(lens.focal, 0) +
                     " mm, T" + base::shortest(lens.stop[0]) + " to T" + base::shortest(lens.stop[1]) +
                     ", closest focus " + units::lengthText(lens.closeFocus, unit) + "\n";
  if (!chart.notes.empty())
    for (const std::string& line : wrapped(chart.notes, 98)) text += line + "\n";
  if (lens.focusMarks.size() < 2)
    text += std::string(lens.focusMarks.empty() ? "no focus marks" : "one focus mark alone says nothing") +
            ": the barrel counts as " + fixed(optics::kUnchartedThrow, 0) +
            "° from infinity to closest focus, even in 1/distance\n";
  for (const answers::ChartScale& scale : answers::chartScales(lens)) text += scaleText(lens, scale, unit);
  return text;
}

}  // namespace wend::sheets
