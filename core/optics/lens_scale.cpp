#include "core/optics/lens_scale.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>

#include "core/base/check.h"
#include "core/base/text.h"
#include "core/units/stop.h"

namespace wend::optics {

double measureOf(ScaleOf of, double value) {
  WEND_CHECK(value > 0 && (of == ScaleOf::distance || std::isfinite(value)));
  switch (of) {
    case ScaleOf::distance:
      return 1 / value;
    case ScaleOf::stop:
      return units::stopsOf(value);
    case ScaleOf::focal:
      return std::log2(value);
  }
  WEND_CHECK(false);
}

double valueOf(ScaleOf of, double measure) {
  switch (of) {
    case ScaleOf::distance:
      return measure > 0 ? 1 / measure : std::numeric_limits<double>::infinity();
    case ScaleOf::stop:
      return units::tNumberOf(measure);
    case ScaleOf::focal:
      return std::exp2(measure);
  }
  WEND_CHECK(false);
}

namespace {

base::Problem rowProblem(const char* code, std::size_t row, std::string found, const char* expected,
                         const char* remedy) {
  return {code, "/" + std::to_string(row), std::move(found), expected, remedy};
}

std::string printed(double value) {
  return std::isfinite(value) ? base::shortest(value) : std::isnan(value) ? "not a number" : base::fixed(value, 0);
}

std::optional<base::Problem> unusable(ScaleOf of, const ScaleMark& mark, std::size_t row) {
  const bool endless = of == ScaleOf::distance && mark.value == std::numeric_limits<double>::infinity();
  if (!(mark.value > 0) || (std::isinf(mark.value) && !endless))
    return rowProblem("scale-value", row, printed(mark.value), "a number above 0", "Type the number engraved there.");
  if (!std::isfinite(mark.degrees))
    return rowProblem("scale-value", row, printed(mark.degrees), "degrees of barrel", "Measure the mark again.");
  return std::nullopt;
}

/// The first row whose value or degrees do not go on the way the first two rows go.
std::optional<base::Problem> turnsBack(const std::vector<ScaleMark>& marks, const std::vector<double>& x) {
  const bool up = x[1] > x[0], turnsUp = marks[1].degrees > marks[0].degrees;
  for (std::size_t i = 1; i < marks.size(); ++i) {
    if (up ? x[i] <= x[i - 1] : x[i] >= x[i - 1])
      return rowProblem("scale-not-monotone", i, printed(marks[i].value), "values that keep going one way",
                        "Put the marks in the order they have on the barrel.");
    if (turnsUp ? marks[i].degrees <= marks[i - 1].degrees : marks[i].degrees >= marks[i - 1].degrees)
      return rowProblem("scale-not-monotone", i, printed(marks[i].degrees) + " degrees",
                        "degrees that keep going one way", "Measure this mark again: a barrel does not turn back.");
  }
  return std::nullopt;
}

}  // namespace

base::Result<LensScale> LensScale::through(ScaleOf of, const std::vector<ScaleMark>& marks) {
  if (marks.size() < 2)
    return base::Problem{"scale-too-short", "", std::to_string(marks.size()) + " marks", "two marks or more",
                         "Add marks, or leave the scale out."};
  std::vector<double> x, y;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (auto problem = unusable(of, marks[i], i)) return *problem;
    x.push_back(measureOf(of, marks[i].value));
    y.push_back(marks[i].degrees);
  }
  if (auto problem = turnsBack(marks, x)) return *problem;
  if (x.front() > x.back()) {
    std::reverse(x.begin(), x.end());
    std::reverse(y.begin(), y.end());
  }
  return LensScale(of, std::move(x), std::move(y));
}

LensScale LensScale::uncharted(double closeFocus) {
  WEND_CHECK(closeFocus > 0);
  return LensScale(ScaleOf::distance, {0, 1 / closeFocus}, {0, kUnchartedThrow});
}

LensScale::LensScale(ScaleOf of, std::vector<double> x, std::vector<double> y)
    : of_(of), curve_(x, y), rising_(y.back() > y.front()) {}

double LensScale::degreesAt(double value) const {
  const double m = measureOf(of_, value), end = std::clamp(m, curve_.firstX(), curve_.lastX());
  return m == end ? curve_(m) : curve_(end) + curve_.slope(end) * (m - end);
}

double LensScale::valueAt(double degrees) const {
  const double m = curve_.inverse(degrees), reached = curve_(m);
  if (m > curve_.firstX() && m < curve_.lastX()) return valueOf(of_, m);
  return valueOf(of_, m + (degrees - reached) / curve_.slope(m));
}

}  // namespace wend::optics
