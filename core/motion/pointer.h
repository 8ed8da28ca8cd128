/// Where in a list of marks or aims a problem lies.
#pragma once

#include <string>

namespace wend::motion {

/// "/3/leg/sweep" for entry 3 and "/leg/sweep". Who holds the list puts its own pointer in front.
inline std::string pointer(std::size_t entry, const char* key) {
  return "/" + std::to_string(entry) + key;
}

}  // namespace wend::motion
