/// The cells that turn seen or unseen from step to step of a stretch of the take.
///
/// Kept by columns of words (see CellBits), so that one column's turns are few enough to be put in order near the
/// processor; and by stretches, because cells that lie side by side turn together.
#pragma once

#include <bit>
#include <memory>
#include <optional>
#include <vector>

#include "core/base/cancel.h"
#include "core/sight/region_raster.h"
#include "core/sight/step_ground.h"
#include "core/sight/step_parts.h"

namespace wend::sight {

/// A list that grows without moving what it holds, in pieces small enough to be used again and again.
template <class T>
class PieceList {
 public:
  void push(T item) {
    if (next_ == end_) {
      pieces_.push_back(std::make_unique_for_overwrite<T[]>(kPiece));
      next_ = pieces_.back().get(), end_ = next_ + kPiece;
    }
    *next_++ = item;
  }
  std::size_t size() const { return pieces_.size() * kPiece - static_cast<std::size_t>(end_ - next_); }
  T operator[](std::size_t i) const { return pieces_[i / kPiece][i % kPiece]; }

 private:
  static constexpr std::size_t kPiece = 2048;
  std::vector<std::unique_ptr<T[]>> pieces_;
  T *next_ = nullptr, *end_ = nullptr;
};

/// Cells that lie side by side in one word: bits [from, until) of the word in `row`.
struct TurnedCells {
  std::uint16_t row;
  std::uint8_t from, until;
};

/// The turns of one column of words. Cost: four bytes a stretch of cells, eight a step with any.
class ColumnTurns {
 public:
  /// Most rows a grid may have.
  static constexpr int kMostRows = 65536;

  /// `cells` are the bits of the word in which it differs.
  void push(int row, std::uint64_t cells) {
    while (cells != 0) {
      // A stretch plus its lowest bit carries into the place behind it, or out of the word.
      const std::uint64_t behind = cells + (cells & -cells);
      stretches_.push({static_cast<std::uint16_t>(row), static_cast<std::uint8_t>(std::countr_zero(cells)),
                       static_cast<std::uint8_t>(std::countr_zero(behind))});
      cells &= behind;
    }
  }
  /// All that was pushed since the last call turns at `step`.
  void endStep(std::uint32_t step) {
    const auto until = static_cast<std::uint32_t>(stretches_.size());
    if (until > (ends_.empty() ? 0 : ends_.back().until)) ends_.push_back({step, until});
  }
  /// Calls visit(stretch, step) for every stretch, step by step.
  template <class Visit>
  void each(Visit visit) const {
    std::uint32_t i = 0;
    for (const StepEnd& end : ends_)
      for (; i < end.until; ++i) visit(stretches_[i], end.step);
  }

 private:
  struct StepEnd {
    std::uint32_t step, until;
  };
  PieceList<TurnedCells> stretches_;
  std::vector<StepEnd> ends_;
};

/// Requires  range not empty.
struct Turns {
  StepRange range;
  CellBits first, last;              ///< the cells seen in its first and in its last step
  std::vector<ColumnTurns> columns;  ///< what turns at the second step and later, by columns of words
};

/// Draws step after step and keeps its memory.
class TurnFinder {
 public:
  /// Requires  at most ColumnTurns::kMostRows rows.
  TurnFinder(const geometry::Grid& grid, double radius, Bodies bodies);
  /// Polled once a step. Fails when cancelled: nothing.
  std::optional<Turns> over(StepRange range, GroundOfSteps& ground, const base::Cancel& cancel);

 private:
  void draw(const StepGround& ground);
  void note(std::uint32_t step, Turns& turns);

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
