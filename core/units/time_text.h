/// A time that somebody typed: seconds, minutes and seconds, timecode, or a beat with an offset.
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/units/timecode.h"

namespace wend::units {

/// `seconds` from the take's start, or after the beat when one is named.
struct TypedTime {
  std::string beat;
  double seconds = 0;
  bool operator==(const TypedTime&) const = default;
};

/// How the plan labels its frames: the kind of timecode and the frame at which the take starts.
struct TakeTimecode {
  TimecodeKind kind;
  std::int64_t start = 0;
};

/// Reads "34", "34.5", "1:34.5", "00:00:34:00", "01:00:00;02", "b12", "b12+1.5", "b12-0.5".
///
/// Ensures   (1) text that is a number is seconds, also when a beat has it for a name
///           (2) whether the beat exists is the caller's question
/// Fails     bad-time for text that is none of these; bad-timecode from the label; out-of-range beyond 24 h
base::Result<TypedTime> timeFrom(std::string_view text, const TakeTimecode& timecode);

}  // namespace wend::units
