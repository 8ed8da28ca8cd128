/// How long a plan keeps up with the daylight: when a take may start so that every face stays within tolerance, and how
/// many goes fit.
///
/// Frame     times of day in seconds after midnight; differences in stops, positive over.
/// Stops holding where the sky does not follow its readings; clouds come unannounced.
#pragma once

#include <vector>

#include "core/geometry/spans.h"
#include "core/light/area.h"
#include "core/light/exposure.h"

namespace wend::light {

/// A face in light that is read by the clock, at one instant of the take.
struct ClockNeed {
  std::vector<ClockReading> readings;  ///< times of day increasing, stops positive
  double t = 0;                        ///< seconds into the take
  geometry::Span allowed;              ///< readings at which it is exposed well enough, T-numbers, from above 0
};

/// How far off a face may be. A third of a stop either way is common practice, no source.
struct StopTolerance {
  double over = 1.0 / 3, under = 1.0 / 3;
};

/// The readings at which a face's need stays within tolerance of what it is at `reading`, with the lux of lamps on it
/// that keep no hours: the more of those, the more the daylight may change.
/// Ensures   (1) without lamps, `reading` less the stops under to `reading` and the stops over; (2) never less than
/// that. Requires  reading positive, lampLux and tolerances 0 or more.
geometry::Span allowedReadings(double reading, double lampLux, const Exposure& exposure,
                               const StopTolerance& tolerance = {});

/// Times of day at which a take may start so that every need is met.
/// Ensures   (1) exact, since readings go linearly in stops between their times: at both ends of a span some face is at
///           the edge of what is allowed or some list of readings ends; (2) a list that does not reach to an instant of
///           the take bars the starts that would need it: what is unknown does not hold; (3) more needs never give more
///           time.
/// Requires  at least one need.
/// Cost      linear in all readings, times the spans they fall into.
geometry::Spans holdSpans(const std::vector<ClockNeed>& needs);

/// How many goes fit into a span of light, the whole take inside it each time and a start every `cycle` seconds:
/// 1 + floor((light - take) / cycle), none when the light is shorter than the take.
/// Requires  take >= 0, cycle > 0.
int goesWithin(geometry::Span light, double take, double cycle);

/// The same from a span of possible starts, as holdSpans gives them: 1 + floor(starts / cycle).
int goesFrom(geometry::Span starts, double cycle);

}  // namespace wend::light
