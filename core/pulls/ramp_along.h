/// A straight ramp that stays inside the tube while the tube slopes: which two values it may lead between.
///
/// Frame     that of the tube.
#pragma once

#include <cmath>
#include <optional>

#include "core/pulls/choice.h"
#include "core/pulls/tube.h"

namespace wend::pulls {

/// The values before and after a ramp.
struct Ends {
  double before = 0, after = 0;
  double rateOver(geometry::Span span) const { return std::abs(after - before) / span.length(); }
};

/// Of all pairs from the two choices whose straight line over `span` stays inside the tube, one in their middle; where
/// that is faster than `atMost`, the nearest to it on the way to the slowest pair that is not.
///
/// Method    the pairs are a convex polygon: the rectangle of the two choices, cut at every sample by the two lines that
///           its bounds are in the pairs' plane. Middle: the mean of its corners. Slowest: one of its corners.
/// Requires  span.from < span.until; choices bounded, not empty; atMost > 0
/// Ensures   inside the tube at every sample in the span and at its ends, to 2 kTubeRounding
/// Fails     with nothing where no pair stays inside, or none is that slow
/// Cost      samples in the span times corners, which are few
std::optional<Ends> rampAlong(const Tube& tube, geometry::Span span, Choice before, Choice after, double atMost);

}  // namespace wend::pulls
