#include "core/crew/step_maps.h"

#include <array>

namespace wend::crew {
namespace {

using Square = std::array<std::uint64_t, 64>;

/// Bit j of word i becomes bit i of word j, by exchanging ever smaller quarters.
void transpose(Square& s) {
  std::uint64_t mask = 0xffffffff;
  for (std::size_t half = 32; half > 0; half /= 2, mask ^= mask << half) {
    for (std::size_t i = 0; i < 64; i = ((i | half) + 1) & ~half) {
      const std::uint64_t swapped = ((s[i] >> half) ^ s[i | half]) & mask;
      s[i] ^= swapped << half;
      s[i | half] ^= swapped;
    }
  }
}

}  // namespace

BorderedGrid::BorderedGrid(const geometry::Grid& grid, int border)
    : border_(static_cast<std::size_t>(border)),
      nx_(static_cast<std::size_t>(grid.nx)),
      ny_(static_cast<std::size_t>(grid.ny)),
      words_((nx_ + 2 * border_ + 63) / 64) {}

StepMaps::StepMaps(const CellTimes& times, const BorderedGrid& grid)
    : words_(grid.allWords()), bits_(words_ * times.steps()) {
  Square square;
  for (std::size_t word = grid.border() * grid.words(); word < (grid.border() + grid.ny()) * grid.words(); ++word) {
    const std::size_t row = word / grid.words() - grid.border();
    for (std::size_t t = 0; t < times.words(); ++t) {
      for (std::size_t i = 0; i < 64; ++i) {
        const std::size_t column = word % grid.words() * 64 + i;
        const bool inside = column >= grid.border() && column < grid.border() + grid.nx();
        square[i] = inside ? times.of(row * grid.nx() + column - grid.border())[t] : 0;
      }
      transpose(square);
      for (std::size_t i = 0; i < 64 && t * 64 + i < times.steps(); ++i)
        bits_[(t * 64 + i) * words_ + word] = square[i];
    }
  }
}

}  // namespace wend::crew
