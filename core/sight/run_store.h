/// The runs of steps of every cell of a grid, and how they are put in order from what turns.
///
/// Tests     tests/core/sight/seen_steps_test.cpp
#pragma once

#include <cstdint>
#include <ranges>
#include <vector>

#include "core/sight/step_parts.h"
#include "core/sight/turns.h"

namespace wend::sight {

/// Cost      4 bytes a cell, rows filled up to whole words of 64, and 4 a run, or 8 where steps pass 65,535.
class RunStore {
 public:
  RunStore() = default;
  /// No cell has a run. `steps` is the largest number that a run may name.
  RunStore(const geometry::Grid& grid, std::uint32_t steps);

  /// Steps found anew, as parts that follow each other, between what is seen in the step before them and in the one
  /// after. After the take's last step nothing is.
  struct Anew {
    StepRange range;
    std::vector<Turns> parts;
    CellBits before, after;
  };
  /// These runs with the steps of a range found anew. Gives the memory of `anew` back as it goes.
  ///
  /// Ensures   (1) the same bytes on any number of threads.
  RunStore with(Anew anew, int threads) const;

  /// Ranges of `StepRange`, in order and apart, to be asked at random.
  auto of(int column, int row) const {
    const Column& cells = columns_[static_cast<std::size_t>(column / 64)];
    const std::size_t cell = static_cast<std::size_t>(row) * 64 + static_cast<std::size_t>(column % 64);
    return std::views::iota(cells.starts[cell], cells.starts[cell + 1]) |
           std::views::transform([&cells](std::uint32_t run) { return cells.at(run); });
  }
  /// Of all cells together.
  std::size_t size() const;
  std::size_t bytes() const;
  bool operator==(const RunStore&) const = default;

 private:
  /// The cells of one column of words, row by row.
  struct Column {
    std::vector<std::uint32_t> starts;  ///< of each cell's runs, and the last one's end
    std::vector<std::uint16_t> ends;    ///< from and until of each run: the lower bits
    std::vector<std::uint16_t> upper;   ///< the upper ones, where the take is long enough for any
    StepRange at(std::uint32_t run) const {
      StepRange range{ends[2 * run], ends[2 * run + 1]};
      if (!upper.empty()) range.from += upper[2 * run] * 65536u, range.until += upper[2 * run + 1] * 65536u;
      return range;
    }
    bool operator==(const Column&) const = default;
  };
  friend class ColumnWriter;

  int rows_ = 0;
  bool wide_ = false;
  std::vector<Column> columns_;
};

}  // namespace wend::sight
