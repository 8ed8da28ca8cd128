#include "core/units/time_text.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/base/id.h"
#include "core/base/text.h"
#include "core/units/clock_time.h"
#include "core/units/typed.h"

namespace wend::units {

namespace {

/// "1:34.5", minutes and seconds below 60.
std::optional<double> minutesAndSeconds(std::string_view text) {
  const auto parts = base::split(text, ':');
  if (parts.size() != 2 || parts[0].empty() || parts[1].empty()) return std::nullopt;
  if (parts[0].find_first_not_of("0123456789") != std::string::npos || parts[1].front() == '-') return std::nullopt;
  const auto minutes = base::readNumber(parts[0]);
  const auto seconds = base::readNumber(parts[1]);
  if (!minutes || !seconds || *seconds >= 60) return std::nullopt;
  return *minutes * 60 + *seconds;
}

/// "b12", "b12+1.5", "b12-0.5".
std::optional<TypedTime> beatAndOffset(std::string_view text) {
  const std::size_t sign = text.find_first_of("+-");
  TypedTime time;
  time.beat = std::string(base::trimmed(text.substr(0, sign)));
  if (!base::isId(time.beat)) return std::nullopt;
  if (sign == std::string_view::npos) return time;
  const auto offset = base::readNumber(base::trimmed(text.substr(sign + 1)));
  if (!offset || text.substr(sign + 1).find_first_of("+-") != std::string_view::npos) return std::nullopt;
  time.seconds = text[sign] == '-' ? -*offset : *offset;
  return time;
}

std::optional<TypedTime> plainTime(std::string_view text) {
  if (const auto seconds = base::readNumber(text)) return TypedTime{"", *seconds};
  if (const auto seconds = minutesAndSeconds(text)) return TypedTime{"", *seconds};
  return beatAndOffset(text);
}

}  // namespace

base::Result<TypedTime> timeFrom(std::string_view typed, const TakeTimecode& timecode) {
  const std::string_view text = base::trimmed(typed);
  const std::string found = asTyped(text);
  if (std::count(text.begin(), text.end(), ':') + std::count(text.begin(), text.end(), ';') >= 2) {
    const auto seconds = secondsFrom(text, timecode.kind, timecode.start);
    if (!seconds) return seconds.problems();
    return TypedTime{"", *seconds};
  }
  const auto time = plainTime(text);
  if (!time)
    return base::Problem{"bad-time", "", found, "seconds, HH:MM:SS:FF, or a beat such as b4+1.5",
                         "type one of these forms"};
  if (std::abs(time->seconds) > kDaySeconds)
    return base::Problem{"out-of-range", "", found, "a time within 24 h", "check the number"};
  return *time;
}

}  // namespace wend::units
