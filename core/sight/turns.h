/// The cells that turn seen or unseen from step to step of a stretch of the take, in the order they are found.
#pragma once

#include <algorithm>
#include <memory>
#include <optional>
#include <vector>

#include "core/base/cancel.h"
#include "core/sight/region_raster.h"
#include "core/sight/step_ground.h"
#include "core/sight/step_parts.h"

namespace wend::sight {

/// A long list of rising numbers that starts anew now and then, and grows without moving what it holds. Cost: two
/// bytes a number where they lie nearer together than kFar, as the cells that turn in one step do.
class RisingList {
 public:
  /// Requires  no number of a run below the one before it.
  void push(std::uint32_t number) {
    std::uint32_t by = number - last_;
    last_ = number;
    for (; by >= kFar; by -= kFar) store(kFar);
    store(static_cast<std::uint16_t>(by));
  }
  void startAnew() { last_ = 0; }
  /// Of what is stored; marks the end of a run.
  std::size_t size() const { return chunks_.size() * kChunk - static_cast<std::size_t>(end_ - next_); }

  /// Calls visit(number) for the run stored in [from, until).
  template <class Visit>
  void eachOf(std::size_t from, std::size_t until, Visit visit) const {
    std::uint32_t number = 0;
    while (from < until) {
      const std::uint16_t* at = chunks_[from / kChunk].get() + from % kChunk;
      const std::uint16_t* end = at + std::min(until - from, kChunk - from % kChunk);
      from += static_cast<std::size_t>(end - at);
      for (; at != end; ++at) {
        number += *at;
        if (*at != kFar) visit(number);
      }
    }
  }

 private:
  static constexpr std::uint16_t kFar = 0xffff;  ///< stands for a way of its length that no number ends
  static constexpr std::size_t kChunk = 1u << 15;
  void store(std::uint16_t by) {
    if (next_ == end_) {
      chunks_.push_back(std::make_unique_for_overwrite<std::uint16_t[]>(kChunk));
      next_ = chunks_.back().get(), end_ = next_ + kChunk;
    }
    *next_++ = by;
  }
  std::vector<std::unique_ptr<std::uint16_t[]>> chunks_;
  std::uint16_t *next_ = nullptr, *end_ = nullptr;
  std::uint32_t last_ = 0;
};

/// Requires  range not empty.
struct Turns {
  StepRange range;
  CellBits first, last;           ///< the cells seen in its first and in its last step
  RisingList bits;                ///< `bitNumber` of those that turn at the second step, then at the third, ...
  std::vector<std::size_t> ends;  ///< where in `bits` each step's end, the first step's (0) included
};

/// Calls visit(cell) for every cell at which the two differ. Requires equal grids.
template <class Visit>
void eachDifference(const CellBits& a, const CellBits& b, Visit visit) {
  const WordBox all = a.box();
  for (int word = 0; word < all.wordUntil; ++word)
    for (int row = 0; row < all.rowUntil; ++row)
      eachCell(a.column(word)[row] ^ b.column(word)[row], a.grid(), word, row, visit);
}

/// Numbers the bits of a set in the order in which they lie in memory, which is that in which turns are found.
inline std::uint32_t bitNumber(const CellBits& bits, int word, int row, int bit) {
  return (static_cast<std::uint32_t>(word) * static_cast<std::uint32_t>(bits.stride()) +
          static_cast<std::uint32_t>(row)) *
             64 +
         static_cast<std::uint32_t>(bit);
}

/// Calls visit(cell, step) for every turn, in order.
template <class Visit>
void eachTurn(const Turns& turns, Visit visit) {
  const auto stride = static_cast<std::uint32_t>(turns.first.stride());
  const auto columns = static_cast<std::uint32_t>(turns.first.grid().nx);
  std::size_t from = 0;
  auto step = turns.range.from;
  for (const std::size_t end : turns.ends) {
    std::uint32_t word = 0, begins = 0;  // where the column of words begins
    turns.bits.eachOf(from, end, [&](std::uint32_t bit) {
      while (bit / 64 - begins >= stride) ++word, begins += stride;
      visit((bit / 64 - begins) * columns + 64 * word + bit % 64, step);
    });
    from = end;
    ++step;
  }
}

/// Draws step after step and keeps its memory.
class TurnFinder {
 public:
  TurnFinder(const geometry::Grid& grid, double radius, Bodies bodies);
  /// Polled once a step. Fails when cancelled: nothing.
  std::optional<Turns> over(StepRange range, GroundOfSteps& ground, const base::Cancel& cancel);

 private:
  void draw(const StepGround& ground);
  void note(Turns& turns);

  RegionRaster raster_;
  const RowKernels* kernels_;
  StepGround ground_;
  CellBits now_, before_, layer_;
  WordBox nowBox_, beforeBox_;
  std::vector<int> differing_;
};

/// The turns of each of the parts, on so many threads. Fails when cancelled: nothing.
std::optional<std::vector<Turns>> turnsOf(const geometry::Grid& grid, double radius, Bodies bodies, StepRange steps,
                                          const GroundMaker& ground, int threads, const base::Cancel& cancel);

}  // namespace wend::sight
