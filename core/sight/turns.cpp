#include "core/sight/turns.h"

#include "core/base/check.h"

namespace wend::sight {

TurnFinder::TurnFinder(const geometry::Grid& grid, double radius, Bodies bodies)
    : raster_(grid, radius, rowKernels(), bodies),
      kernels_(&rowKernels()),
      now_(grid),
      before_(grid),
      layer_(grid),
      differing_(static_cast<std::size_t>(grid.ny) + 8) {
  WEND_CHECK(grid.ny <= ColumnTurns::kMostRows);
}

void TurnFinder::draw(const StepGround& ground) {
  now_.clear(nowBox_);
  nowBox_ = {};
  for (const GroundLayer& layer : ground.layers()) {
    if (layer.hidden.empty()) {
      nowBox_.take(raster_.add(layer.region, now_));
      continue;
    }
    const WordBox box = raster_.add(layer.region, layer_);
    for (const RegionSlice& area : layer.hidden) raster_.erase(area, layer_);
    now_.add(layer_, box);
    layer_.clear(box);
    nowBox_.take(box);
  }
}

void TurnFinder::note(std::uint32_t step, Turns& turns) {
  WordBox box = nowBox_;
  box.take(beforeBox_);
  const int rows = box.rowUntil - box.rowFrom;
  for (int word = box.wordFrom; word < box.wordUntil; ++word) {
    const std::uint64_t* now = now_.column(word) + box.rowFrom;
    const std::uint64_t* before = before_.column(word) + box.rowFrom;
    const int differ = kernels_->differences(now, before, rows, differing_.data());
    ColumnTurns& column = turns.columns[static_cast<std::size_t>(word)];
    for (int i = 0; i < differ; ++i) {
      const int row = differing_[static_cast<std::size_t>(i)];
      column.push(box.rowFrom + row, now[row] ^ before[row]);
    }
    column.endStep(step);
  }
}

std::optional<Turns> TurnFinder::over(StepRange range, GroundOfSteps& ground, const base::Cancel& cancel) {
  Turns turns;
  turns.range = range;
  turns.columns.resize(static_cast<std::size_t>(now_.box().wordUntil));
  for (std::uint32_t step = range.from; step < range.until; ++step) {
    if (cancel.fired()) return std::nullopt;
    if (step == range.from || !ground.asBefore(step)) {
      std::swap(now_, before_), std::swap(nowBox_, beforeBox_);
      ground_.clear();
      ground.find(step, ground_);
      draw(ground_);
      if (step == range.from)
        turns.first = now_;
      else
        note(step, turns);
    }
  }
  turns.last = now_;
  return turns;
}

std::optional<std::vector<Turns>> turnsOf(const geometry::Grid& grid, double radius, Bodies bodies, StepRange steps,
                                          const GroundMaker& ground, int threads, const base::Cancel& cancel) {
  const std::vector<StepRange> parts = partsOf(steps, threads);
  std::vector<std::optional<Turns>> found(parts.size());
  shareOut(parts.size(), threads, [&] {
    return [&, finder = std::make_unique<TurnFinder>(grid, radius, bodies), mine = ground()](std::size_t part) {
      found[part] = finder->over(parts[part], *mine, cancel);
    };
  });
  std::vector<Turns> turns;
  for (std::optional<Turns>& part : found) {
    if (!part) return std::nullopt;
    turns.push_back(*std::move(part));
  }
  return turns;
}

}  // namespace wend::sight
