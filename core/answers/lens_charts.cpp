#include "core/answers/lens_charts.h"

#include <limits>

namespace wend::answers {

std::vector<ChartScale> chartScales(const plan::Lens& lens) {
  std::vector<ChartScale> scales;
  const auto add = [&](optics::ScaleOf of, std::vector<optics::ScaleMark> marks, optics::ScaleReach reach) {
    if (marks.size() < 2) return;
    optics::ScaleTrust trust = optics::trustOf(of, marks, reach);
    scales.push_back({of, std::move(marks), std::move(trust)});
  };
  add(optics::ScaleOf::distance, scaleMarks(lens.focusMarks),
      {lens.closeFocus, std::numeric_limits<double>::infinity()});
  add(optics::ScaleOf::stop, scaleMarks(lens.irisMarks), {lens.stop[0], lens.stop[1]});
  add(optics::ScaleOf::focal, scaleMarks(lens.zoomMarks), {lens.focal[0], lens.focal[1]});
  return scales;
}

}  // namespace wend::answers
