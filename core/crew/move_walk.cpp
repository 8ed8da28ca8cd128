#include "core/crew/move_walk.h"

#include <cstdlib>

namespace wend::crew {

void MovedMaps::set(const std::uint64_t* map) {
  for (int by = -reach_; by <= reach_; ++by) {
    const auto shift = static_cast<unsigned>(std::abs(by));
    std::vector<std::uint64_t>& moved = by_[static_cast<std::size_t>(reach_ + by)];
    // A row's neighbours bring nothing in: its first and last bits are border.
    const std::size_t words = moved.size();
    for (std::size_t w = 0; w < words; ++w) {
      const std::uint64_t next = by > 0 && w + 1 < words ? map[w + 1] << (64 - shift) : 0;
      const std::uint64_t past = by < 0 && w > 0 ? map[w - 1] >> (64 - shift) : 0;
      moved[w] = by == 0 ? map[w] : by > 0 ? (map[w] >> shift) | next : (map[w] << shift) | past;
    }
  }
}

}  // namespace wend::crew
