#include "core/optics/scale_trust.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"

namespace wend::optics {
namespace {

MarkMiss missAt(ScaleOf of, std::vector<ScaleMark> marks, std::size_t row) {
  const ScaleMark left = marks[row];
  marks.erase(marks.begin() + static_cast<std::ptrdiff_t>(row));
  const LensScale others = LensScale::through(of, marks).value();  // marks that go one way still do
  return {others.degreesAt(left.value) - left.degrees, others.valueAt(left.degrees) - left.value};
}

/// Between two marks: how far the marks at its ends were missed at most, and how wide it is.
struct Gap {
  double missed = 0, width = 0, middle = 0;
  bool before(const Gap& other) const { return missed != other.missed ? missed < other.missed : width < other.width; }
};

double missedBy(const std::optional<MarkMiss>& miss) {
  return miss ? std::abs(miss->degrees) : 0;
}

Gap worstGap(const std::vector<double>& measures, const std::vector<std::optional<MarkMiss>>& rows) {
  Gap worst;
  for (std::size_t i = 0; i + 1 < measures.size(); ++i) {
    const Gap gap{std::max(missedBy(rows[i]), missedBy(rows[i + 1])), std::abs(measures[i + 1] - measures[i]),
                  (measures[i] + measures[i + 1]) / 2};
    if (worst.before(gap)) worst = gap;
  }
  return worst;
}

}  // namespace

ScaleTrust trustOf(ScaleOf of, const std::vector<ScaleMark>& marks, ScaleReach reach) {
  WEND_CHECK(marks.size() >= 2);
  ScaleTrust trust;
  std::vector<double> measures;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    measures.push_back(measureOf(of, marks[i].value));
    const bool inner = i > 0 && i + 1 < marks.size();
    trust.rows.push_back(inner ? std::optional(missAt(of, marks, i)) : std::nullopt);
    trust.worstDegrees = std::max(trust.worstDegrees, missedBy(trust.rows.back()));
  }
  // Ends of the reach are engraved numbers: a millionth of the measure is the same mark.
  constexpr double kSame = 1e-6;
  const auto [least, most] = std::minmax_element(measures.begin(), measures.end());
  const auto beyond = [&](double value) {
    const double m = measureOf(of, value);
    return m < *least - kSame || m > *most + kSame;
  };
  trust.markNext = beyond(reach.far)    ? reach.far
                   : beyond(reach.near) ? reach.near
                                        : valueOf(of, worstGap(measures, trust.rows).middle);
  return trust;
}

}  // namespace wend::optics
