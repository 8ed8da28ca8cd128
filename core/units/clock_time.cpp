#include "core/units/clock_time.h"

#include <cmath>
#include <cstdint>
#include <optional>

#include "core/base/text.h"
#include "core/units/typed.h"

namespace wend::units {

namespace {

std::string twoDigits(std::int64_t value) {
  return (value < 10 ? "0" : "") + std::to_string(value);
}

/// Two digits below `limit`.
std::optional<int> part(std::string_view text, int limit) {
  if (text.size() != 2 || text.find_first_not_of("0123456789") != std::string_view::npos) return std::nullopt;
  const int value = (text[0] - '0') * 10 + (text[1] - '0');
  return value < limit ? std::optional(value) : std::nullopt;
}

/// "05" or "05.250", in milliseconds below a minute.
std::optional<int> millisecondsFrom(std::string_view text) {
  const auto whole = part(text.substr(0, 2), 60);
  if (!whole) return std::nullopt;
  if (text.size() == 2) return *whole * 1000;
  if (text[2] != '.' || text.size() == 3 || text.size() > 6) return std::nullopt;
  int thousandths = 0;
  for (std::size_t i = 3; i < 6; ++i) {
    const char digit = i < text.size() ? text[i] : '0';
    if (digit < '0' || digit > '9') return std::nullopt;
    thousandths = thousandths * 10 + (digit - '0');
  }
  return *whole * 1000 + thousandths;
}

}  // namespace

std::string takeTimeText(double seconds) {
  const auto tenths = std::llround(std::abs(seconds) * 10);
  const std::string sign = seconds < 0 && tenths > 0 ? "-" : "";
  return sign + std::to_string(tenths / 600) + ":" + twoDigits(tenths / 10 % 60) + "." + std::to_string(tenths % 10);
}

std::string secondsText(double seconds) {
  return base::fixed(seconds, 1);
}

std::string timeOfDayText(double seconds) {
  const auto all = std::llround(seconds * 1000);
  WEND_CHECK(all >= 0 && all < 86400000);
  const std::string text =
      twoDigits(all / 3600000) + ":" + twoDigits(all / 60000 % 60) + ":" + twoDigits(all / 1000 % 60);
  if (all % 1000 == 0) return text;
  return text + base::fixed(double(all % 1000) / 1000, 3).substr(1);
}

base::Result<double> timeOfDayFrom(std::string_view typed) {
  const std::string_view text = base::trimmed(typed);
  const auto parts = base::split(text, ':');
  const bool plausible = parts.size() == 2 || parts.size() == 3;
  const auto hours = plausible ? part(parts[0], 24) : std::nullopt;
  const auto minutes = plausible ? part(parts[1], 60) : std::nullopt;
  const auto rest = parts.size() == 3 ? millisecondsFrom(parts[2]) : std::optional(0);
  if (!hours || !minutes || !rest)
    return base::Problem{"bad-time-of-day", "", asTyped(text), "HH:MM or HH:MM:SS from 00:00 to 23:59:59",
                         "write two digits for each part"};
  return double((std::int64_t{*hours} * 60 + *minutes) * 60000 + *rest) / 1000;
}

}  // namespace wend::units
