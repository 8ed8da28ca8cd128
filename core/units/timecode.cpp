#include "core/units/timecode.h"

#include <array>
#include <cmath>
#include <optional>

#include "core/base/text.h"
#include "core/units/typed.h"

namespace wend::units {

namespace {

std::string padded(std::int64_t value, std::size_t width) {
  const std::string digits = std::to_string(value);
  return std::string(width > digits.size() ? width - digits.size() : 0, '0') + digits;
}

std::size_t frameDigits(FrameRate rate) {
  return rate.labelsPerSecond() > 100 ? 3 : 2;
}

int dropped(TimecodeKind kind) {
  return kind.dropFrame ? kind.rate.droppedPerMinute() : 0;
}

std::int64_t wrapped(std::int64_t value, std::int64_t period) {
  const std::int64_t rest = value % period;
  return rest < 0 ? rest + period : rest;
}

/// The number among all labels, left-out ones included, of the label that frame carries.
std::int64_t labelNumber(std::int64_t frame, TimecodeKind kind) {
  const std::int64_t drop = dropped(kind);
  const std::int64_t minute = 60 * std::int64_t{kind.rate.labelsPerSecond()};
  const std::int64_t tenMinutes = 10 * minute - 9 * drop;
  const std::int64_t rest = frame % tenMinutes;
  const std::int64_t minutesIn = rest < minute ? 0 : 1 + (rest - minute) / (minute - drop);
  return frame + drop * (9 * (frame / tenMinutes) + minutesIn);
}

struct Label {
  std::array<std::int64_t, 4> parts{};  ///< hours, minutes, seconds, frames
  bool semicolon = false;
};

/// "HH:MM:SS:FF" or "HH:MM:SS;FF" cut into its four numbers.
std::optional<Label> labelParts(std::string_view text) {
  std::string plain(text);
  Label label;
  const std::size_t mark = plain.rfind(';');
  if (mark != std::string::npos) {
    label.semicolon = true;
    plain[mark] = ':';
  }
  const auto parts = base::split(plain, ':');
  if (parts.size() != 4 || (label.semicolon && plain.rfind(':') != mark)) return std::nullopt;
  for (std::size_t i = 0; i < 4; ++i) {
    const bool digits = parts[i].find_first_not_of("0123456789") == std::string::npos;
    if (!digits || parts[i].size() < 2 || parts[i].size() > 3) return std::nullopt;
    label.parts[i] = std::int64_t(*base::readNumber(parts[i]));
  }
  return label;
}

base::Problem badTimecode(std::string_view text, const std::string& expected, const std::string& remedy) {
  return {"bad-timecode", "", asTyped(text), expected, remedy};
}

}  // namespace

int FrameRate::droppedPerMinute() const {
  if (denominator != 1001) return 0;
  return numerator == 30000 ? 2 : numerator == 60000 ? 4 : 0;
}

std::int64_t frameAt(double t, FrameRate rate) {
  return std::int64_t(std::floor(t * rate.numerator / rate.denominator + 0.05));
}

double secondsAt(std::int64_t frame, FrameRate rate) {
  return double(frame) * rate.denominator / rate.numerator;
}

std::int64_t labelsPerDay(TimecodeKind kind) {
  const std::int64_t tenMinutes = 600 * std::int64_t{kind.rate.labelsPerSecond()} - 9 * dropped(kind);
  return 144 * tenMinutes;
}

std::string timecodeText(std::int64_t frame, TimecodeKind kind) {
  const std::int64_t number = labelNumber(wrapped(frame, labelsPerDay(kind)), kind);
  const std::int64_t perSecond = kind.rate.labelsPerSecond();
  const std::int64_t seconds = number / perSecond;
  return padded(seconds / 3600, 2) + ":" + padded(seconds / 60 % 60, 2) + ":" + padded(seconds % 60, 2) +
         (kind.dropFrame ? ";" : ":") + padded(number % perSecond, frameDigits(kind.rate));
}

base::Result<std::int64_t> framesFrom(std::string_view typed, TimecodeKind kind) {
  const std::string_view text = base::trimmed(typed);
  const auto label = labelParts(text);
  const std::int64_t perSecond = kind.rate.labelsPerSecond();
  if (!label) return badTimecode(text, "HH:MM:SS:FF", "write four numbers with colons between them");
  const auto [hours, minutes, seconds, frames] = label->parts;
  if (frames >= perSecond)
    return badTimecode(text, "frames from 00 to " + padded(perSecond - 1, 2) + " in a second",
                       "check the last part against the frame rate");
  if (hours > 23 || minutes > 59 || seconds > 59)
    return badTimecode(text, "at most 23:59:59:" + padded(perSecond - 1, 2), "check each part against the frame rate");
  if (label->semicolon && !kind.dropFrame)
    return badTimecode(text, "no \";\"", "use \":\" or set the clock to drop frame at 29.97 or 59.94");
  const std::int64_t drop = dropped(kind);
  const std::int64_t minute = 60 * hours + minutes;
  if (seconds == 0 && frames < drop && minute % 10 != 0)
    return badTimecode(text, "a label that drop frame has", "use frame " + padded(drop, 2) + " of that second");
  return ((minute * 60 + seconds) * perSecond + frames) - drop * (minute - minute / 10);
}

base::Result<double> secondsFrom(std::string_view timecode, TimecodeKind kind, std::int64_t start) {
  const auto frames = framesFrom(timecode, kind);
  if (!frames) return frames.problems();
  const std::int64_t day = labelsPerDay(kind);
  const std::int64_t ahead = wrapped(*frames - start, day);
  return secondsAt(ahead > day / 2 ? ahead - day : ahead, kind.rate);
}

}  // namespace wend::units
