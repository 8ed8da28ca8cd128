/// Spans over which a ramp could run, each with the fastest change that is covered all through it.
#pragma once

#include <vector>

#include "core/pulls/cover.h"

namespace wend::pulls {

struct RampQuestion {
  Hidden axis = Hidden::iris;
  geometry::Span starts, ends;  ///< between which it may start, and end
  double shortest = 0.5;        ///< seconds; a hand does no less
  double longest = 6;           ///< seconds
  double step = 0.25;           ///< seconds between two starts, and two ends, that are tried; both limits are, too
  double frame = 1.0 / 24;      ///< seconds between two instants at which cover is looked at
};

struct RampSpan {
  geometry::Span span;
  double allowed = 0;  ///< the least that is allowed at any frame between its ends
};

/// All that are tried, by start, then by end.
///
/// Requires  0 < shortest <= longest, step and frame more than 0
/// Cost      starts times ends, plus their length in frames times covers
std::vector<RampSpan> rampSpans(const std::vector<CoverSpan>& covers, const RampQuestion& question);

}  // namespace wend::pulls
