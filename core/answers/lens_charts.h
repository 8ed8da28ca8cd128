/// What the tables of a lens are worth: its marks as scales, each with what leaving it out shows.
#pragma once

#include <vector>

#include "core/optics/scale_trust.h"
#include "core/plan/lens_marks.h"

namespace wend::answers {

/// The marks of one of a lens' tables, as the optics take them.
template <class Mark>
std::vector<optics::ScaleMark> scaleMarks(const std::vector<Mark>& rows) {
  std::vector<optics::ScaleMark> marks;
  for (const Mark& row : rows) marks.push_back({plan::markValue(row), row.deg});
  return marks;
}

struct ChartScale {
  optics::ScaleOf of = optics::ScaleOf::distance;
  std::vector<optics::ScaleMark> marks;
  optics::ScaleTrust trust;
};

/// Focus, iris and zoom, those that have two marks or more. What they have to reach is the lens' own range: closest
/// focus to infinity, widest to smallest stop, shortest to longest focal length.
/// Requires  tables that run one way, as a reader or an edit leaves them
std::vector<ChartScale> chartScales(const plan::Lens& lens);

}  // namespace wend::answers
