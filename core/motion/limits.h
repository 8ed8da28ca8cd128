/// What makes a move hard to carry: how fast it is, and walking backwards.
///
/// The limits themselves (metres a second for a rig, degrees a second for a pan) belong to who judges; here is what is
/// held against them. Whether a move can be carried at all is for the people who carry it.
#pragma once

#include <functional>

#include "core/geometry/spans.h"
#include "core/motion/track.h"

namespace wend::motion {

/// Travel more than this many degrees off the lens' bearing is walking backwards (common practice, no source).
inline constexpr double kBackwards = 120;

/// Slower than this, m/s, somebody counts as standing (common practice, no source).
inline constexpr double kMoving = 0.05;

/// Degrees in [0, 180] between the way travelled and where the lens looks. Requires velocity not zero.
double offAxis(Vec velocity, double bearing);

/// The spans of `within` in which the track goes faster than `limit`, in closed form: ends are off by rounding only.
/// Ensures   a span at the limit itself does not count; a leg at constant speed counts whole or not at all.
geometry::Spans fasterThan(const Track& track, double limit, Span within);

/// The spans of `within` in which the track moves (kMoving) backwards as seen from the lens' `bearing`.
/// Error     as geometry::spansWhere with a step of 0.05 s.
geometry::Spans backwards(const Track& track, const std::function<double(double)>& bearing, Span within);

}  // namespace wend::motion
