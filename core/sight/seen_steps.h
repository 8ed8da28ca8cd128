/// When each cell of a grid is seen over a take: for every cell the runs of steps in which a body on it would be seen.
///
/// Found step by step and kept cell by cell: only the cells that turn from one step to the next are written down, and
/// sorted by counting. No map of cells by steps is ever held.
///
/// Frame     step k stands for all the time from `from + k * step` to `from + (k + 1) * step`, both included.
#pragma once

#include <limits>
#include <optional>
#include <ranges>
#include <span>
#include <vector>

#include "core/base/cancel.h"
#include "core/sight/ever_seen.h"

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

/// Cost      memory: 4 bytes a cell and 4 a run, 8 in takes of 65,536 steps and more; 4 more a run while being found.
///           600,000 cells with 6 runs each: 17 MB, and 31 MB while being found.
class SeenSteps {
 public:
  /// No cells.
  SeenSteps() = default;
  /// Requires  step > 0, radius >= 0, threads >= 1.
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
  /// A range of `StepRange`, to be asked at random.
  auto runs(std::size_t cell) const {
    return std::views::iota(starts_[cell], starts_[cell + 1]) |
           std::views::transform([this](std::uint32_t run) { return runAt(run); });
  }
  std::size_t runs() const { return runs_.size(); }
  std::size_t bytes() const {
    return (runs_.size() + upper_.size()) * sizeof(Halves) + starts_.size() * sizeof(std::uint32_t);
  }

  double timeOf(std::uint32_t step) const { return spec_.from + static_cast<double>(step) * spec_.step; }
  Span timeOf(StepRange run) const { return {timeOf(run.from), timeOf(run.until)}; }
  bool seenIn(std::size_t cell, std::uint32_t step) const;

  /// The cells that no run, begun `early` seconds before and kept up `late` seconds after it, meets within the span.
  ///
  /// Requires  early >= 0, late >= 0.
  CellBits clearOver(Span span, double early = 0, double late = 0) const;

  bool operator==(const SeenSteps& other) const {
    return starts_ == other.starts_ && runs_ == other.runs_ && upper_ == other.upper_;
  }

 private:
  /// Of the two ends of a run 16 bits each.
  struct Halves {
    std::uint16_t from = 0, until = 0;
    bool operator==(const Halves&) const = default;
  };
  StepRange runAt(std::uint32_t run) const {
    StepRange range{runs_[run].from, runs_[run].until};
    if (!upper_.empty()) range.from += upper_[run].from * 65536u, range.until += upper_[run].until * 65536u;
    return range;
  }
  template <class EachTurn>
  void sort(EachTurn eachTurn, int threads);

  SeenSpec spec_;
  std::vector<std::uint32_t> starts_;
  std::vector<Halves> runs_;   ///< the lower bits
  std::vector<Halves> upper_;  ///< the upper ones, where there are any
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
