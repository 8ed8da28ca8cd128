/// Times of the take and of the day as text.
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"

namespace wend::units {

/// No time of a plan lies further from the take's start: 24 h.
inline constexpr double kDaySeconds = 86400;

/// "1:00.0": minutes, seconds and tenths of the take; "-0:02.5" before its start. Requires finite.
std::string takeTimeText(double seconds);

/// "34.0": seconds and tenths. Requires finite.
std::string secondsText(double seconds);

/// "06:14:00", with ".250" behind it where the second is not whole; to the millisecond.
/// Requires 0 <= seconds < 86400 - 0.0005.
std::string timeOfDayText(double seconds);

/// Seconds after midnight of "06:14", "06:14:00" or "06:14:00.25".
///
/// Ensures   (1) reads back what timeOfDayText printed, to the bit, for every whole millisecond of a day
/// Fails     bad-time-of-day for anything else, 24:00 included
base::Result<double> timeOfDayFrom(std::string_view text);

}  // namespace wend::units
