#include "core/crew/cell_times.h"

#include <bit>
#include <limits>

#include "core/base/check.h"

namespace wend::crew {
namespace {

constexpr std::uint64_t kAll = ~std::uint64_t{0};

/// The bits [from, until) of the word that starts at bit `first`.
std::uint64_t mask(std::size_t first, Steps range) {
  const std::size_t from = std::max(range.from, first) - first, until = std::min(range.until, first + 64) - first;
  return (kAll << from) & (kAll >> (64 - until));
}

}  // namespace

CellTimes::CellTimes(std::size_t cells, std::size_t steps, bool value) : steps_(steps), words_((steps + 63) / 64) {
  WEND_CHECK(steps > 0);
  bits_.assign(cells * words_, value ? kAll : 0);
  if (value && steps % 64 != 0)
    for (std::size_t cell = 1; cell <= cells; ++cell) bits_[cell * words_ - 1] = kAll >> (64 - steps % 64);
}

void CellTimes::set(std::size_t cell, Steps range, bool value) {
  range.until = std::min(range.until, steps_);
  if (range.from >= range.until) return;
  for (std::size_t w = range.from / 64; w * 64 < range.until; ++w) {
    std::uint64_t& word = bits_[cell * words_ + w];
    word = value ? word | mask(w * 64, range) : word & ~mask(w * 64, range);
  }
}

void CellTimes::keepOnly(const CellTimes& other) {
  WEND_CHECK(other.bits_.size() == bits_.size() && other.steps_ == steps_);
  for (std::size_t i = 0; i < bits_.size(); ++i) bits_[i] &= other.bits_[i];
}

void CellTimes::addFrom(const CellTimes& other) {
  WEND_CHECK(other.bits_.size() == bits_.size() && other.steps_ == steps_);
  for (std::size_t i = 0; i < bits_.size(); ++i) bits_[i] |= other.bits_[i];
}

bool CellTimes::isWithin(const CellTimes& other) const {
  WEND_CHECK(other.bits_.size() == bits_.size() && other.steps_ == steps_);
  for (std::size_t i = 0; i < bits_.size(); ++i)
    if ((bits_[i] & ~other.bits_[i]) != 0) return false;
  return true;
}

std::size_t CellTimes::next(std::size_t cell, std::size_t from, bool value) const {
  for (std::size_t w = from / 64; w < words_; ++w) {
    std::uint64_t word = bits_[cell * words_ + w] ^ (value ? 0 : kAll);
    if (w == from / 64) word &= kAll << (from % 64);
    if (word != 0) return std::min(steps_, w * 64 + static_cast<std::size_t>(std::countr_zero(word)));
  }
  return steps_;
}

std::vector<Steps> CellTimes::runs(std::size_t cell, bool value) const {
  std::vector<Steps> found;
  for (std::size_t from = next(cell, 0, value); from < steps_;) {
    const std::size_t until = next(cell, from, !value);
    found.push_back({from, until});
    from = until < steps_ ? next(cell, until, value) : steps_;
  }
  return found;
}

std::optional<std::size_t> CellTimes::roomAt(std::size_t cell, std::size_t step) const {
  std::size_t room = std::numeric_limits<std::size_t>::max();
  for (const Steps& run : runs(cell, false)) {
    if (run.from <= step && step < run.until) return std::nullopt;
    room = std::min(room, run.until <= step ? step - run.until : run.from - step - 1);
  }
  return room;
}

CellTimes CellTimes::withBarsMoved(long sooner, long later) const {
  CellTimes moved(cells(), steps_, true);
  const long end = static_cast<long>(steps_);
  for (std::size_t cell = 0; cell < cells(); ++cell) {
    for (const Steps& run : runs(cell, false)) {
      const long from = run.from == 0 ? 0 : std::max(0L, static_cast<long>(run.from) - sooner);
      const long until = run.until == steps_ ? end : std::clamp(static_cast<long>(run.until) + later, 0L, end);
      if (from < until) moved.set(cell, {static_cast<std::size_t>(from), static_cast<std::size_t>(until)}, false);
    }
  }
  return moved;
}

}  // namespace wend::crew
