/// When each cell of a grid is seen over a take: for every cell the runs of steps in which a body on it would be seen.
///
/// Found step by step and kept cell by cell: only what turns from one step to the next is written down, and sorted by
/// counting. No map of cells by steps is ever held.
///
/// Frame     step k stands for all the time from `from + k * step` to `from + (k + 1) * step`, both included.
#pragma once

#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "core/base/cancel.h"
#include "core/sight/ever_seen.h"
#include "core/sight/run_store.h"

namespace wend::sight {

using geometry::Span;

struct SeenSpec {
  geometry::Grid grid;
  double radius = 0.25;     ///< of the body; and half a cell's diagonal more, to hold for one anywhere in the cell
  double from = 0;          ///< seconds, of the first step's start
  double step = 1.0 / 24;   ///< seconds
  std::uint32_t steps = 0;  ///< of the take
  Bodies bodies = Bodies::anywhere;
};

/// Cost      memory: as RunStore says; while being found ten bytes more for every word of 64 cells of which some turn
///           at a step, given back as the runs are written.
class SeenSteps {
 public:
  /// No cells.
  SeenSteps() = default;
  /// Requires  step > 0, radius >= 0, threads >= 1; at most 65,536 rows.
  /// Ensures   (1) a cell's runs hold exactly the steps in which `RegionRaster` sets it and the hidden areas leave it,
  ///           in order and apart; (2) the same bytes on any number of threads.
  /// Fails     when cancelled: nothing.
  static std::optional<SeenSteps> over(const SeenSpec& spec, const GroundMaker& ground, int threads = 1,
                                       const base::Cancel& cancel = {});
  /// The same with the steps of `range` found anew: what an edit leaves alone is not looked at again.
  ///
  /// Requires  range within the take.
  /// Ensures   (1) equal to `over` when the ground outside the range is as it was.
  std::optional<SeenSteps> withFound(StepRange range, const GroundMaker& ground, int threads = 1,
                                     const base::Cancel& cancel = {}) const;

  const SeenSpec& spec() const { return spec_; }
  /// Ranges of `StepRange`, to be asked at random.
  auto runs(int column, int row) const { return store_.of(column, row); }
  auto runs(std::size_t cell) const {
    const auto wide = static_cast<std::uint32_t>(spec_.grid.nx), number = static_cast<std::uint32_t>(cell);
    return store_.of(static_cast<int>(number % wide), static_cast<int>(number / wide));
  }
  std::size_t runs() const { return store_.size(); }
  std::size_t bytes() const { return store_.bytes(); }

  double timeOf(std::uint32_t step) const { return spec_.from + static_cast<double>(step) * spec_.step; }
  Span timeOf(StepRange run) const { return {timeOf(run.from), timeOf(run.until)}; }
  bool seenIn(std::size_t cell, std::uint32_t step) const;

  /// The cells that no run, begun `early` seconds before and kept up `late` seconds after it, meets within the span.
  ///
  /// Requires  early >= 0, late >= 0.
  CellBits clearOver(Span span, double early = 0, double late = 0) const;

  bool operator==(const SeenSteps& other) const { return store_ == other.store_; }

 private:
  SeenSpec spec_;
  RunStore store_;
};

/// Seconds until each cell is next seen, from a time that moves to and fro.
///
/// Requires  the steps outlive it.
class UntilSeen {
 public:
  explicit UntilSeen(const SeenSteps& seen);
  /// For every cell the seconds from t to the start of its next run, 0 during one, infinite after the last; valid until
  /// asked again.
  ///
  /// Cost      a look at one run a cell, and one more for every run passed since last asked.
  std::span<const float> secondsFrom(double t);

 private:
  const SeenSteps& seen_;
  std::vector<std::uint32_t> passed_;
  std::vector<float> seconds_;
};

}  // namespace wend::sight
