/// How a way fails what somebody of the crew needs.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace wend::snags {

enum class NeedFails {
  far,    ///< from the camera
  away,   ///< from the shelter
  blind,  ///< to who has to be seen
  link,   ///< over its budget
  reach,  ///< the pole is too short, or its way blocked
  gap,    ///< the microphone too far off the mouth
};

/// Their words in sheets and JSON, in the order of the enum.
inline constexpr std::array<const char*, 6> kNeedFailsWords{"far", "away", "blind", "link", "reach", "gap"};

constexpr const char* wordOf(NeedFails why) {
  return kNeedFailsWords[static_cast<std::size_t>(why)];
}

/// Whether it is the one of that word.
constexpr bool operator==(NeedFails why, std::string_view word) {
  return word == wordOf(why);
}

}  // namespace wend::snags
