#include "core/sight/seen_steps.h"

#include <algorithm>

#include "core/base/check.h"
#include "core/sight/turns.h"

namespace wend::sight {

namespace {

CellBits seenDuring(const SeenSteps& seen, std::uint32_t step) {
  const geometry::Grid& grid = seen.spec().grid;
  CellBits bits(grid);
  for (int row = 0; row < grid.ny; ++row)
    for (int column = 0; column < grid.nx; ++column)
      if (seen.seenIn(
              static_cast<std::size_t>(row) * static_cast<std::size_t>(grid.nx) + static_cast<std::size_t>(column),
              step))
        bits.set(column, row);
  return bits;
}

}  // namespace

std::optional<SeenSteps> SeenSteps::over(const SeenSpec& spec, const GroundMaker& ground, int threads,
                                         const base::Cancel& cancel) {
  WEND_CHECK(spec.step > 0 && spec.radius >= 0 && threads >= 1);
  SeenSteps seen;
  seen.spec_ = spec;
  seen.store_ = RunStore(spec.grid, spec.steps);
  return seen.withFound({0, spec.steps}, ground, threads, cancel);
}

std::optional<SeenSteps> SeenSteps::withFound(StepRange range, const GroundMaker& ground, int threads,
                                              const base::Cancel& cancel) const {
  WEND_CHECK(range.until <= spec_.steps && threads >= 1);
  if (range.from >= range.until) return *this;
  auto parts = turnsOf(spec_.grid, spec_.radius, spec_.bodies, range, ground, threads, cancel);
  if (!parts) return std::nullopt;
  const CellBits nothing(spec_.grid);
  const bool any = store_.size() > 0;
  RunStore::Anew anew{range, *std::move(parts), nothing, nothing};
  if (any && range.from > 0) anew.before = seenDuring(*this, range.from - 1);
  if (any && range.until < spec_.steps) anew.after = seenDuring(*this, range.until);
  SeenSteps found;
  found.spec_ = spec_;
  found.store_ = store_.with(std::move(anew), threads);
  return found;
}

bool SeenSteps::seenIn(std::size_t cell, std::uint32_t step) const {
  const auto all = runs(cell);
  const auto next = std::ranges::upper_bound(all, step, {}, &StepRange::until);
  return next != all.end() && (*next).from <= step;
}

CellBits SeenSteps::clearOver(Span span, double early, double late) const {
  WEND_CHECK(early >= 0 && late >= 0);
  CellBits clear(spec_.grid);
  const auto bars = [&](const StepRange& run) {
    const Span time = timeOf(run);
    return time.from - early <= span.until && time.until + late >= span.from;
  };
  for (int row = 0; row < spec_.grid.ny; ++row)
    for (int column = 0; column < spec_.grid.nx; ++column)
      if (std::ranges::none_of(runs(column, row), bars)) clear.set(column, row);
  return clear;
}

UntilSeen::UntilSeen(const SeenSteps& seen)
    : seen_(seen),
      passed_(seen.spec().grid.cells(), 0),
      seconds_(seen.spec().grid.cells(), std::numeric_limits<float>::infinity()) {}

std::span<const float> UntilSeen::secondsFrom(double t) {
  const geometry::Grid& grid = seen_.spec().grid;
  std::size_t cell = 0;
  for (int row = 0; row < grid.ny; ++row)
    for (int column = 0; column < grid.nx; ++column, ++cell) {
      const auto runs = seen_.runs(column, row);
      if (runs.empty()) continue;
      std::uint32_t passed = passed_[cell];
      while (passed < runs.size() && seen_.timeOf(runs[passed].until) < t) ++passed;
      while (passed > 0 && seen_.timeOf(runs[passed - 1].until) >= t) --passed;
      passed_[cell] = passed;
      seconds_[cell] = passed == runs.size() ? std::numeric_limits<float>::infinity()
                                             : static_cast<float>(std::max(0.0, seen_.timeOf(runs[passed].from) - t));
    }
  return seconds_;
}

}  // namespace wend::sight
