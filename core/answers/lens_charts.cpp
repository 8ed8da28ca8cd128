#include "core/answers/lens_charts.h"

#include <limits>

namespace wend::answers {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

template <class Mark, class Value>
std::vector<optics::ScaleMark> marksOf(const std::vector<Mark>& rows, Value value) {
  std::vector<optics::ScaleMark> marks;
  for (const Mark& row : rows) marks.push_back({value(row), row.deg});
  return marks;
}

}  // namespace

std::vector<optics::ScaleMark> scaleMarks(const std::vector<plan::FocusMark>& marks) {
  return marksOf(marks, [](const plan::FocusMark& mark) { return mark.distance.value_or(kInfinity); });
}

std::vector<optics::ScaleMark> scaleMarks(const std::vector<plan::IrisMark>& marks) {
  return marksOf(marks, [](const plan::IrisMark& mark) { return mark.stop; });
}

std::vector<optics::ScaleMark> scaleMarks(const std::vector<plan::ZoomMark>& marks) {
  return marksOf(marks, [](const plan::ZoomMark& mark) { return mark.focal; });
}

std::vector<ChartScale> chartScales(const plan::Lens& lens) {
  std::vector<ChartScale> scales;
  const auto add = [&](optics::ScaleOf of, std::vector<optics::ScaleMark> marks, optics::ScaleReach reach) {
    if (marks.size() < 2) return;
    optics::ScaleTrust trust = optics::trustOf(of, marks, reach);
    scales.push_back({of, std::move(marks), std::move(trust)});
  };
  add(optics::ScaleOf::distance, scaleMarks(lens.focusMarks), {lens.closeFocus, kInfinity});
  add(optics::ScaleOf::stop, scaleMarks(lens.irisMarks), {lens.stop[0], lens.stop[1]});
  add(optics::ScaleOf::focal, scaleMarks(lens.zoomMarks), {lens.focal[0], lens.focal[1]});
  return scales;
}

}  // namespace wend::answers
