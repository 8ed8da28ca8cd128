/// Times, keys and targets: the small words every part of a plan is written in.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/id.h"
#include "core/geometry/point.h"

namespace wend::plan {

using geometry::Point;

/// A key of the file that this version does not know: kept with its text, written back after the known ones.
struct Extra {
  std::string key;   ///< as a JSON pointer below the object that has it: "hue", or "on/hue" inside a small one
  std::string text;  ///< its JSON, numbers as they were written
  bool operator==(const Extra&) const = default;
};
using Extras = std::vector<Extra>;

/// The reserved beat: the take's length.
inline const std::string kEndBeat = "end";

/// A time of the plan: seconds from the take's start, or an offset from a beat, so that moving the beat moves it.
struct Moment {
  std::string beat;    ///< a beat's id, "end", or empty for seconds from the start
  double seconds = 0;  ///< from the start, or after the beat (negative: before it)
  bool operator==(const Moment&) const = default;
};

enum class Pace { even, eased };

/// What every key of an axis has: it starts at `at` and is done at `at + over`.
struct KeyTime {
  Moment at;
  double over = 0;  ///< seconds
  Pace pace = Pace::even;
  bool operator==(const KeyTime&) const = default;
};

struct OnPerformer {
  std::string performer;
  bool operator==(const OnPerformer&) const = default;
};
struct OnProp {
  std::string prop;
  bool operator==(const OnProp&) const = default;
};
struct OnPoint {
  Point pos;
  double height = 0;  ///< metres above the set's datum
  bool operator==(const OnPoint&) const = default;
};
struct OnBearing {
  double bearing = 0;  ///< degrees clockwise from plan north, unwrapped
  double tilt = 0;     ///< degrees, up positive
  bool operator==(const OnBearing&) const = default;
};
struct OnTravel {
  double offset = 0;  ///< degrees clockwise from the direction of travel; 180 looks back
  double tilt = 0;    ///< degrees, up positive
  bool operator==(const OnTravel&) const = default;
};
struct OnSplit {
  std::vector<std::string> who;  ///< two or more performers or props
  bool operator==(const OnSplit&) const = default;
};
struct OnDistance {
  double metres = 0;
  bool operator==(const OnDistance&) const = default;
};

/// What an aim (the first five) or the focus (performer, prop, point, split, distance) is on.
using Target = std::variant<OnPerformer, OnProp, OnPoint, OnBearing, OnTravel, OnSplit, OnDistance>;

}  // namespace wend::plan
