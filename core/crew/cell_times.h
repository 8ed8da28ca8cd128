/// Yes or no for every cell of a grid at every step of a take, kept cell by cell as bits over time.
///
/// Frame     step k of n reaches from instant k to instant k + 1; there are n + 1 instants.
#pragma once

#include <algorithm>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace wend::crew {

/// Steps [from, until).
struct Steps {
  std::size_t from = 0, until = 0;
  std::size_t count() const { return until > from ? until - from : 0; }
  bool operator==(const Steps&) const = default;
};

/// Ensures   bits past the last step are 0 whatever is asked for.
/// Cost      memory: a bit for every cell and step, rounded up to eight bytes a cell.
class CellTimes {
 public:
  CellTimes() = default;
  CellTimes(std::size_t cells, std::size_t steps, bool value);

  std::size_t cells() const { return words_ == 0 ? 0 : bits_.size() / words_; }
  std::size_t steps() const { return steps_; }
  /// Words for each cell.
  std::size_t words() const { return words_; }

  bool at(std::size_t cell, std::size_t step) const { return (bits_[cell * words_ + step / 64] >> (step % 64)) & 1; }
  /// What lies outside the take is left out.
  void set(std::size_t cell, Steps range, bool value);
  /// Step k is bit k % 64 of word k / 64.
  std::span<const std::uint64_t> of(std::size_t cell) const { return {bits_.data() + cell * words_, words_}; }

  /// Yes where both are. Requires equal sizes.
  void keepOnly(const CellTimes& other);
  /// Yes where either is. Requires equal sizes.
  void addFrom(const CellTimes& other);

  /// No Yes but where the other has one. Requires equal sizes.
  bool isWithin(const CellTimes& other) const;

  /// Every maximal run of `value` at a cell, in order of time.
  std::vector<Steps> runs(std::size_t cell, bool value) const;

  /// The same with every run of No starting `sooner` steps sooner and ending `later` steps later; negative numbers
  /// shrink a run, which may leave nothing of it.
  ///
  /// Ensures   (1) a run that starts with the take starts with it still, and one that ends with it ends with it;
  ///           (2) what lies outside the take is taken for Yes.
  CellTimes withBarsMoved(long sooner, long later) const;

  /// The most steps by which all runs of No at a cell may start sooner and end later with the step still Yes; without
  /// end where there is no such run, nothing where the step is No.
  std::optional<std::size_t> roomAt(std::size_t cell, std::size_t step) const;

  bool operator==(const CellTimes&) const = default;

 private:
  /// The first step from `from` on whose bit is `value`, or the number of steps.
  std::size_t next(std::size_t cell, std::size_t from, bool value) const;

  std::size_t steps_ = 0, words_ = 0;
  std::vector<std::uint64_t> bits_;
};

}  // namespace wend::crew
