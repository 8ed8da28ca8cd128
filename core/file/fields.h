/// The words in which a plan's parts are described, once for reading and writing.
///
/// For every struct of the plan there is one function `describe(fields, Of<Struct>)` that names its keys in the order
/// of the file. Given an ObjectReader it reads an object, given an ObjectWriter it writes one; so no key can be read
/// and not written, or written and not read. Defaults stand in the structs alone: a key that holds its default is left
/// out unless it is needed.
#pragma once

#include <array>
#include <string_view>

namespace wend::file {

template <class T>
struct Of {};

/// Whether the file must have the key.
enum class Presence { may, must };

/// How a list of objects is laid out: one object a line, or all on the line of their owner.
enum class Layout { lines, inlined };

/// Whose marks: each has keys of its own.
enum class MarkOf { performer, camera, crew };

/// What an id may name. The words are how problems call them.
enum class IdKind {
  beat,
  room,
  wall,
  opening,
  piece,
  area,
  prop,
  performer,
  mark,  ///< of the camera or of crew
  fixture,
  crew,
  shelter,
  gear,
  cable,
  pole,
  link
};

/// What a target may be, by the key that says so.
inline constexpr std::array<std::string_view, 5> kAimTargets{"performer", "prop", "point", "bearing", "travel"};
inline constexpr std::array<std::string_view, 5> kFocusTargets{"performer", "prop", "point", "split", "distance"};
inline constexpr std::array<std::string_view, 1> kSizeTargets{"performer"};

}  // namespace wend::file
