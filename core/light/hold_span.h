/// How long a plan keeps up with the daylight: when a take may start so that every face stays within tolerance, and how
/// many goes fit.
///
/// Frame     times of day in seconds after midnight; differences in stops, positive over.
/// Stops holding where the sky does not follow its readings; clouds come unannounced.
#pragma once

#include <vector>

#include "core/geometry/spans.h"
#include "core/light/area.h"

namespace wend::light {

/// A face in light that is read by the clock, at one instant of the take.
struct ClockNeed {
  std::vector<ClockReading> readings;  ///< times of day increasing, stops positive
  double t = 0;                        ///< seconds into the take
  /// The reading that would be exposed exactly right then: the stop the lens is set to x 2^(density / 2).
  double wanted = 1;
};

/// How far off a face may be. A third of a stop either way is common practice, no source.
struct StopTolerance {
  double over = 1.0 / 3, under = 1.0 / 3;
};

/// Times of day at which a take may start so that every need stays within tolerance.
/// Ensures   (1) exact, since readings go linearly in stops between their times: at both ends of a span some face is at
///           its tolerance or some list of readings ends; (2) a list that does not reach to an instant of the take
///           bars the starts that would need it: what is unknown does not hold; (3) more needs never give more time.
/// Requires  at least one need, tolerances 0 or more.
/// Cost      linear in all readings, times the spans they fall into.
geometry::Spans holdSpans(const std::vector<ClockNeed>& needs, const StopTolerance& tolerance = {});

/// How many goes fit into a span of light, the whole take inside it each time and a start every `cycle` seconds:
/// 1 + floor((light - take) / cycle), none when the light is shorter than the take.
/// Requires  take >= 0, cycle > 0.
int goesWithin(geometry::Span light, double take, double cycle);

/// The same from a span of possible starts, as holdSpans gives them: 1 + floor(starts / cycle).
int goesFrom(geometry::Span starts, double cycle);

}  // namespace wend::light
