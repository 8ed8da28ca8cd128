/// How much a plan may hold. Beyond a limit a file is refused with the limit's name; nothing is cut off silently.
#pragma once

#include <cstddef>

namespace wend::file {

inline constexpr std::size_t kMostBytes = std::size_t{64} << 20;  ///< of a file
inline constexpr std::size_t kMostDepth = 64;                     ///< objects and lists inside each other
inline constexpr std::size_t kMostItems = 100'000;                ///< of one list, members of one object
inline constexpr std::size_t kMostValues = 4'000'000;             ///< of a file, lists and objects counted too
inline constexpr std::size_t kMostVertices = 1'000'000;           ///< of a plan's outlines and lines together
inline constexpr std::size_t kMostCharacters = 4096;              ///< of one string
inline constexpr std::size_t kMostThresholds = 1000;              ///< rules that a plan changes
inline constexpr std::size_t kMostProblems = 100;                 ///< that are told one by one

}  // namespace wend::file
