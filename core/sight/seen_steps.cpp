#include "core/sight/seen_steps.h"

#include <algorithm>

#include "core/base/check.h"
#include "core/sight/turns.h"

namespace wend::sight {

namespace {

/// All turns of parts that follow each other, from the step before the first part, which sees `before`, to the one
/// after the last, which sees `after`.
template <class Visit>
void eachTurn(const std::vector<Turns>& parts, const CellBits& before, const CellBits& after, Visit visit) {
  const CellBits* last = &before;
  const auto seam = [&](const CellBits& next, std::uint32_t step) {
    eachDifference(*last, next, [&](std::uint32_t cell) { visit(cell, step); });
  };
  for (const Turns& part : parts) {
    seam(part.first, part.range.from);
    eachTurn(part, visit);
    last = &part.last;
  }
  seam(after, parts.back().range.until);
}

/// Calls visit(cell, step) for the turns of every run for which `wanted(step)`, cell by cell.
template <class Wanted, class Visit>
void eachTurn(const SeenSteps& seen, Wanted wanted, Visit visit) {
  for (std::size_t cell = 0; cell < seen.spec().grid.cells(); ++cell)
    for (const StepRange run : seen.runs(cell)) {
      if (wanted(run.from)) visit(static_cast<std::uint32_t>(cell), run.from);
      if (wanted(run.until)) visit(static_cast<std::uint32_t>(cell), run.until);
    }
}

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

/// `eachTurn(visit)` visits every turn, those of one cell in the order of their steps, and the same when called again;
/// from several threads at once. Each of them passes by all turns and minds those of its own stretch of cells, because
/// what takes time is to put them in their places, which lie all over the memory.
template <class EachTurn>
void SeenSteps::sort(EachTurn eachTurnOf, int threads) {
  const auto share = [&](auto boundOf, auto visit) {
    shareOut(static_cast<std::size_t>(threads), threads, [&] {
      return [&](std::size_t part) {
        const std::uint32_t from = boundOf(part), cells = boundOf(part + 1) - from;
        eachTurnOf([&](std::uint32_t cell, std::uint32_t step) {
          if (cell - from < cells) visit(cell, step);
        });
      };
    });
  };
  const std::size_t cells = spec_.grid.cells(), parts = static_cast<std::size_t>(threads);
  // Counted two places further on, so that placing moves each cell's start to where the next cell's is wanted.
  starts_.assign(cells + 2, 0);
  share([&](std::size_t part) { return static_cast<std::uint32_t>(cells * part / parts); },
        [&](std::uint32_t cell, std::uint32_t) { ++starts_[cell + 2]; });
  for (std::size_t i = 2; i < starts_.size(); ++i) starts_[i] += starts_[i - 1];
  const bool wide = spec_.steps > 65535;
  runs_.resize(starts_.back() / 2), upper_.resize(wide ? runs_.size() : 0);
  std::vector<std::uint32_t> bounds;  // with as many turns in each part
  for (std::size_t part = 0; part < parts; ++part) {
    const auto turns = static_cast<std::uint32_t>(std::uint64_t{starts_.back()} * part / parts);
    bounds.push_back(static_cast<std::uint32_t>(std::lower_bound(starts_.begin() + 1, starts_.end(), turns) -
                                                (starts_.begin() + 1)));
  }
  bounds.front() = 0, bounds.push_back(static_cast<std::uint32_t>(cells));
  share([&](std::size_t part) { return bounds[part]; },
        [&](std::uint32_t cell, std::uint32_t step) {
          const std::uint32_t turn = starts_[cell + 1]++;
          const auto place = [&](std::vector<Halves>& halves, std::uint32_t bits) {
            Halves& run = halves[turn / 2];
            (turn % 2 == 0 ? run.from : run.until) = static_cast<std::uint16_t>(bits);
          };
          place(runs_, step & 0xffff);
          if (wide) place(upper_, step >> 16);
        });
  // Every cell ends unseen, so its turns pair up.
  starts_.pop_back();
  for (std::uint32_t& start : starts_) start /= 2;
}

std::optional<SeenSteps> SeenSteps::over(const SeenSpec& spec, const GroundMaker& ground, int threads,
                                         const base::Cancel& cancel) {
  WEND_CHECK(spec.step > 0 && spec.radius >= 0 && threads >= 1);
  SeenSteps seen;
  seen.spec_ = spec;
  seen.starts_.assign(spec.grid.cells() + 1, 0);
  return seen.withFound({0, spec.steps}, ground, threads, cancel);
}

std::optional<SeenSteps> SeenSteps::withFound(StepRange range, const GroundMaker& ground, int threads,
                                              const base::Cancel& cancel) const {
  WEND_CHECK(range.until <= spec_.steps && threads >= 1);
  if (range.from >= range.until) return *this;
  const auto parts = turnsOf(spec_.grid, spec_.radius, spec_.bodies, range, ground, threads, cancel);
  if (!parts) return std::nullopt;
  const bool any = !runs_.empty();
  const CellBits nothing(spec_.grid);
  const CellBits before = any && range.from > 0 ? seenDuring(*this, range.from - 1) : nothing;
  const CellBits after = any && range.until < spec_.steps ? seenDuring(*this, range.until) : nothing;
  SeenSteps found;
  found.spec_ = spec_;
  found.sort(
      [&](auto visit) {
        if (any)
          eachTurn(
              *this, [&](std::uint32_t step) { return step < range.from; }, visit);
        eachTurn(*parts, before, after, visit);
        if (any)
          eachTurn(
              *this, [&](std::uint32_t step) { return step > range.until; }, visit);
      },
      threads);
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
  std::size_t cell = 0;
  for (int row = 0; row < spec_.grid.ny; ++row)
    for (int column = 0; column < spec_.grid.nx; ++column)
      if (std::ranges::none_of(runs(cell++), bars)) clear.set(column, row);
  return clear;
}

UntilSeen::UntilSeen(const SeenSteps& seen)
    : seen_(seen),
      passed_(seen.spec().grid.cells(), 0),
      seconds_(seen.spec().grid.cells(), std::numeric_limits<float>::infinity()) {}

std::span<const float> UntilSeen::secondsFrom(double t) {
  for (std::size_t cell = 0; cell < seconds_.size(); ++cell) {
    const auto runs = seen_.runs(cell);
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
