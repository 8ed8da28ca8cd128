/// How edits name the parts of a plan that have no id of their own: marks by owner and index, keys by axis and index.
#pragma once

#include <cstddef>
#include <string>
#include <variant>

namespace wend::plan {

/// Whose track. The camera has one and needs no id.
enum class Owner { camera, performer, crew };

struct TrackRef {
  Owner owner = Owner::camera;
  std::string id;
  bool operator==(const TrackRef&) const = default;
};

struct MarkRef {
  Owner owner = Owner::camera;
  std::string id;
  std::size_t index = 0;
  bool operator==(const MarkRef&) const = default;
};

/// The keyed axes. The first five are the camera's and need no id (nd: its variable density); the others name an
/// opening, area, fixture or piece.
enum class Axis { aim, focus, zoom, iris, nd, door, light, level, piece };

struct KeyRef {
  Axis axis = Axis::aim;
  std::size_t index = 0;
  std::string id = {};
  bool operator==(const KeyRef&) const = default;
};

struct BeatRef {
  std::string id;
  bool operator==(const BeatRef&) const = default;
};

/// Every time of a plan that can hang on a beat.
struct Arrival {
  MarkRef mark;
  bool operator==(const Arrival&) const = default;
};
struct Leaving {
  MarkRef mark;
  bool operator==(const Leaving&) const = default;
};
struct KeyStart {
  KeyRef key;
  bool operator==(const KeyStart&) const = default;
};
struct PropEntryStart {
  std::string prop;
  std::size_t index = 0;
  bool operator==(const PropEntryStart&) const = default;
};
struct PullStart {
  std::size_t index = 0;
  bool operator==(const PullStart&) const = default;
};
struct SpeechFrom {
  std::size_t index = 0;
  bool operator==(const SpeechFrom&) const = default;
};
struct SpeechUntil {
  std::size_t index = 0;
  bool operator==(const SpeechUntil&) const = default;
};
struct HandoverStart {
  std::size_t index = 0;
  bool operator==(const HandoverStart&) const = default;
};
using MomentRef =
    std::variant<Arrival, Leaving, KeyStart, PropEntryStart, PullStart, SpeechFrom, SpeechUntil, HandoverStart>;

}  // namespace wend::plan
