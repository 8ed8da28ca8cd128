/// Frames and the labels they carry: SMPTE ST 12-1 time and control code, drop frame included.
///
/// Source    SMPTE ST 12-1 (labels; the standard's own text was not at hand). Counting as in D. Heidelberger,
///           "Drop Frame Timecode", davidheidelberger.com, 10 June 2010: at 29.97 the labels ;00 and ;01 are left out
///           at every minute but each tenth, at 59.94 ;00 to ;03. Frames are never left out, only labels.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace wend::units {

/// Frames a second as a fraction: 24/1, 25/1, 30000/1001 ...
struct FrameRate {
  int numerator = 24, denominator = 1;
  bool operator==(const FrameRate&) const = default;

  double perSecond() const { return double(numerator) / denominator; }
  /// Labels to a second: the rate rounded up to a whole number.
  int labelsPerSecond() const { return (numerator + denominator - 1) / denominator; }
  /// Labels that drop frame leaves out at a minute: 2 at 30000/1001, 4 at 60000/1001, 0 where it has no meaning.
  int droppedPerMinute() const;
};

/// A way to label frames. Requires dropFrame only where the rate drops any.
struct TimecodeKind {
  FrameRate rate;
  bool dropFrame = false;
  bool operator==(const TimecodeKind&) const = default;
};

/// The frame shown at t seconds: floor(t x rate + 0.05). The twentieth of a frame lets a time that was printed to the
/// millisecond fall on its own frame. Requires |t| within a day.
std::int64_t frameAt(double t, FrameRate rate);

/// When that frame starts: frame / rate.
double secondsAt(std::int64_t frame, FrameRate rate);

/// How many labels a day has; the label after the last is 00:00:00:00 again.
std::int64_t labelsPerDay(TimecodeKind kind);

/// "HH:MM:SS:FF", with ";" before the frames in drop frame. Frames wrap at a day, negative ones too.
std::string timecodeText(std::int64_t frame, TimecodeKind kind);

/// The frame that carries the label, counted from 00:00:00:00.
///
/// Ensures   (1) framesFrom(timecodeText(n)) == n for every n of a day
///           (2) in drop frame both separators are taken; elsewhere ";" is refused
/// Fails     bad-timecode: no label, parts out of range, or a label that drop frame leaves out
base::Result<std::int64_t> framesFrom(std::string_view text, TimecodeKind kind);

/// A typed timecode as seconds from the start of a take that starts at frame `start`: the nearest such label, before or
/// after, so that a take may run over midnight.
base::Result<double> secondsFrom(std::string_view timecode, TimecodeKind kind, std::int64_t start);

}  // namespace wend::units
