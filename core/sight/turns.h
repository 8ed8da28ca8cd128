/// The cells that turn seen or unseen from step to step of a stretch of the take, in the order they are found.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/base/cancel.h"
#include "core/sight/region_raster.h"
#include "core/sight/step_ground.h"
#include "core/sight/step_parts.h"

namespace wend::sight {

/// A long list of cells that grows without moving what it holds. Cost: four bytes a cell.
class CellList {
 public:
  void push(std::uint32_t cell) {
    if (size_ % kChunk == 0) chunks_.push_back(std::make_unique_for_overwrite<std::uint32_t[]>(kChunk));
    chunks_.back()[size_++ % kChunk] = cell;
  }
  std::size_t size() const { return size_; }
  std::uint32_t operator[](std::size_t i) const { return chunks_[i / kChunk][i % kChunk]; }

 private:
  static constexpr std::size_t kChunk = 1u << 14;
  std::vector<std::unique_ptr<std::uint32_t[]>> chunks_;
  std::size_t size_ = 0;
};

/// Requires  range not empty.
struct Turns {
  StepRange range;
  CellBits first, last;           ///< the cells seen in its first and in its last step
  CellList cells;                 ///< those that turn at the second step, then at the third, ...
  std::vector<std::size_t> ends;  ///< where in `cells` each step's end, the first step's (0) included
};

/// Calls visit(cell) for every cell at which the two differ. Requires equal grids.
template <class Visit>
void eachDifference(const CellBits& a, const CellBits& b, Visit visit) {
  const WordBox all = a.box();
  for (int word = 0; word < all.wordUntil; ++word)
    for (int row = 0; row < all.rowUntil; ++row)
      eachCell(a.column(word)[row] ^ b.column(word)[row], a.grid(), word, row, visit);
}

/// Calls visit(cell, step) for every turn, in order.
template <class Visit>
void eachTurn(const Turns& turns, Visit visit) {
  std::size_t i = 0;
  for (std::size_t step = 0; step < turns.ends.size(); ++step)
    for (; i < turns.ends[step]; ++i) visit(turns.cells[i], turns.range.from + static_cast<std::uint32_t>(step));
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
