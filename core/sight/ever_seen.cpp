#include "core/sight/ever_seen.h"

#include <cmath>

#include "core/base/check.h"
#include "core/sight/cell_growth.h"

namespace wend::sight {

namespace {

constexpr std::size_t kBatch = 512;

/// Which cells are so deep in seen ground that nothing drawn through them could add to it.
class DeepGround {
 public:
  DeepGround(const geometry::Grid& grid, double radius)
      : grid_(grid), unseen_(grid), nearUnseen_(grid), radius_(radius / grid.cell), spacing_(2 * radius_ + 1) {}

  /// Looks at the box of `seen`, and takes ground outside it as not deep.
  void look(const CellBits& seen, const WordBox& box);
  bool holds(const RegionEdge& edge) const { return usable_ && holdsLine(cellsOf(edge.a), cellsOf(edge.b)); }
  bool holds(const RegionSlice& slice) const;

 private:
  struct Cells {
    double x, y;
  };
  Cells cellsOf(Point p) const {
    return {(p.x - grid_.origin.x) / grid_.cell - 0.5, (p.y - grid_.origin.y) / grid_.cell - 0.5};
  }
  /// Whether all that lies nearer than the radius to places along the line, or than that to their neighbours', is seen.
  bool holdsLine(Cells a, Cells b) const;

  geometry::Grid grid_;
  CellBits unseen_, nearUnseen_;
  WordBox box_, near_;
  const std::uint64_t* nearFirst_ = nullptr;  ///< of `nearUnseen_`, where the box begins
  std::size_t nearStride_ = 0;
  double radius_, spacing_;
  bool usable_ = true;
};

void DeepGround::look(const CellBits& seen, const WordBox& box) {
  nearUnseen_.clear(near_);
  box_ = box, near_ = {};
  // A place is sampled every `spacing`, and stands for the cell it lies in.
  const double reach = radius_ + 0.01 + spacing_ / 2 + 0.7072;
  usable_ = reach < 63 && !box.empty();
  if (!usable_) return;
  const int rows = static_cast<int>(reach) + 1;
  const WordBox all = seen.box();
  const WordBox around{std::max(0, box.rowFrom - rows), std::min(all.rowUntil, box.rowUntil + rows),
                       std::max(0, box.wordFrom - 1), std::min(all.wordUntil, box.wordUntil + 1)};
  for (int word = around.wordFrom; word < around.wordUntil; ++word) {
    const std::uint64_t inGrid = word == grid_.nx / 64 ? (std::uint64_t{1} << (grid_.nx % 64)) - 1 : ~std::uint64_t{0};
    for (int row = around.rowFrom; row < around.rowUntil; ++row)
      unseen_.column(word)[row] = ~seen.column(word)[row] & inGrid;
  }
  near_ = addGrown(unseen_, around, reach, nearUnseen_);
  nearFirst_ = nearUnseen_.column(box.wordFrom) + box.rowFrom;
  nearStride_ = static_cast<std::size_t>(nearUnseen_.view().stride);
}

bool DeepGround::holdsLine(Cells a, Cells b) const {
  const double dx = b.x - a.x, dy = b.y - a.y;
  const int pieces = 1 + static_cast<int>(std::max(std::abs(dx), std::abs(dy)) * (1.4143 / spacing_));
  const double share = 1.0 / pieces, east = grid_.nx - 1.0, north = grid_.ny - 1.0;
  const auto rows = static_cast<unsigned>(box_.rowUntil - box_.rowFrom);
  const auto words = static_cast<unsigned>(box_.wordUntil - box_.wordFrom);
  for (int i = 0; i <= pieces; ++i) {
    // Of places outside the grid the nearest one inside is no further from any cell.
    const double x = std::min(std::max(a.x + dx * (share * i), 0.0), east);
    const double y = std::min(std::max(a.y + dy * (share * i), 0.0), north);
    const auto column = static_cast<unsigned>(static_cast<int>(x + 0.5));
    const auto row = static_cast<unsigned>(static_cast<int>(y + 0.5)) - static_cast<unsigned>(box_.rowFrom);
    const unsigned word = column / 64 - static_cast<unsigned>(box_.wordFrom);
    if (row >= rows || word >= words) return false;
    if ((nearFirst_[word * nearStride_ + row] >> (column % 64)) & 1) return false;
  }
  return true;
}

bool DeepGround::holds(const RegionSlice& slice) const {
  if (!usable_) return false;
  const auto count = static_cast<std::size_t>(slice.corners);
  double twiceArea = 0, around = 0;
  Cells a = cellsOf(slice.corner[count - 1]);
  const Cells first = a;
  for (std::size_t i = 0; i < count; ++i) {
    const Cells b = cellsOf(slice.corner[i]);
    if (!holdsLine(a, b)) return false;
    twiceArea += (a.x - first.x) * (b.y - first.y) - (a.y - first.y) * (b.x - first.x);
    around += std::max(std::abs(b.x - a.x), std::abs(b.y - a.y));
    a = b;
  }
  // No place of a convex area lies deeper in it than twice its area over its outline.
  return std::abs(twiceArea) <= radius_ * around;
}

/// Where the cells not yet seen are, by words.
class UnseenWords {
 public:
  void look(const CellBits& seen);
  bool any(const WordBox& box) const;

 private:
  std::size_t slot(int word, int row) const {
    return static_cast<std::size_t>(row) * stride_ + static_cast<std::size_t>(word);
  }
  std::vector<std::uint32_t> before_;  ///< words with an unseen cell, south and west of here
  std::size_t stride_ = 0;
};

void UnseenWords::look(const CellBits& seen) {
  const WordBox all = seen.box();
  const int columns = seen.grid().nx;
  stride_ = static_cast<std::size_t>(all.wordUntil) + 1;
  before_.assign(stride_ * (static_cast<std::size_t>(all.rowUntil) + 1), 0);
  for (int word = 0; word < all.wordUntil; ++word) {
    const std::uint64_t inGrid = word == columns / 64 ? (std::uint64_t{1} << (columns % 64)) - 1 : ~std::uint64_t{0};
    std::uint32_t inColumn = 0;
    for (int row = 0; row < all.rowUntil; ++row) {
      inColumn += (~seen.column(word)[row] & inGrid) != 0;
      before_[slot(word + 1, row + 1)] = before_[slot(word, row + 1)] + inColumn;
    }
  }
}

bool UnseenWords::any(const WordBox& box) const {
  return !box.empty() && before_[slot(box.wordUntil, box.rowUntil)] - before_[slot(box.wordFrom, box.rowUntil)] !=
                             before_[slot(box.wordUntil, box.rowFrom)] - before_[slot(box.wordFrom, box.rowFrom)];
}

/// What is known of the ground seen so far.
struct Looked {
  DeepGround deep;
  UnseenWords unseen;
};

/// What one thread draws, and what it knows to be seen.
class EverSeen {
 public:
  EverSeen(const geometry::Grid& grid, double radius, Bodies bodies)
      : raster_(grid, radius, rowKernels(), bodies),
        own_{DeepGround(grid, radius), {}},
        seen_(grid),
        inside_(grid),
        layer_(grid) {}

  StepGround& next() {
    if (used_ == batch_.size()) batch_.emplace_back();
    batch_[used_].clear();
    return batch_[used_];
  }
  void took() {
    if (++used_ == kBatch) settle();
  }
  void settle();
  const CellBits& seen() const { return seen_; }

  void take(const CellBits& seen) { seen_.add(seen, seen.box()); }
  /// Whether all cells near the ground were seen when last looked.
  bool holds(const StepGround& ground, const Looked& looked);

 private:
  void addHidden(const GroundLayer& layer);
  void addBorders(const SweptRegion& region);
  /// Whether a cell not seen when looked lies in the ring's box, or nearer than the radius.
  bool mayAdd(std::span<const RegionEdge> ring, const Looked& looked) const {
    return looked.unseen.any(raster_.boxAround(ring));
  }
  bool holds(const SweptRegion& region, const Looked& looked);

  RegionRaster raster_;
  Looked own_;
  CellBits seen_, inside_, layer_;
  std::vector<StepGround> batch_;
  std::size_t used_ = 0;
};

void EverSeen::addHidden(const GroundLayer& layer) {
  const WordBox box = raster_.add(layer.region, layer_);
  for (const RegionSlice& area : layer.hidden) raster_.erase(area, layer_);
  seen_.add(layer_, box);
  layer_.clear(box);
}

void EverSeen::addBorders(const SweptRegion& region) {
  if (mayAdd(region.ring, own_))
    for (const RegionEdge& edge : region.ring)
      if (raster_.widens(edge) && !own_.deep.holds(edge)) raster_.addNear(edge, seen_);
  for (const RegionSlice& slice : region.slices)
    if (slice.corners > 0 && !own_.deep.holds(slice)) raster_.addNear(slice, seen_);
}

void EverSeen::settle() {
  const std::span<const StepGround> batch(batch_.data(), used_);
  WordBox box;
  own_.unseen.look(seen_);
  for (const StepGround& ground : batch)
    for (const GroundLayer& layer : ground.layers()) {
      if (!layer.hidden.empty())
        addHidden(layer);
      else if (mayAdd(layer.region.ring, own_))
        box.take(raster_.addInterior(layer.region.ring, inside_));
    }
  const WordBox grown = addGrown(inside_, box, raster_.radius() / raster_.grid().cell, seen_);
  inside_.clear(box);
  own_.deep.look(seen_, grown);
  for (const StepGround& ground : batch)
    for (const GroundLayer& layer : ground.layers())
      if (layer.hidden.empty()) addBorders(layer.region);
  used_ = 0;
}

bool EverSeen::holds(const SweptRegion& region, const Looked& looked) {
  WordBox box;
  if (mayAdd(region.ring, looked)) {
    box = raster_.addInterior(region.ring, layer_);
    for (const RegionEdge& edge : region.ring)
      if (raster_.widens(edge) && !looked.deep.holds(edge)) box.take(raster_.addNear(edge, layer_));
  }
  for (const RegionSlice& slice : region.slices)
    if (slice.corners > 0 && !looked.deep.holds(slice)) box.take(raster_.addNear(slice, layer_));
  const bool held = seen_.holds(layer_, box);
  layer_.clear(box);
  return held;
}

bool EverSeen::holds(const StepGround& ground, const Looked& looked) {
  return std::ranges::all_of(ground.layers(), [&](const GroundLayer& layer) { return holds(layer.region, looked); });
}

/// Steps of which it is not yet known whether they see more, as numbers of a list.
struct Gap {
  std::uint32_t from, until;
};

/// The steps so far apart are found first; then those halfway, where what lies between may see more; and so on.
constexpr std::uint32_t kStride = 16;
/// A gap of so few steps is found step by step.
constexpr std::uint32_t kLeast = 2;

/// Finds round by round, and looks in each at what the rounds before it saw and nothing else: so the threads do not
/// matter, and neither does who does what.
class Rounds {
 public:
  Rounds(const geometry::Grid& grid, double radius, Bodies bodies, const GroundMaker& ground, int threads,
         const base::Cancel& cancel)
      : grid_(grid),
        radius_(radius),
        bodies_(bodies),
        maker_(ground),
        cancel_(cancel),
        workers_(static_cast<std::size_t>(threads)),
        looked_{DeepGround(grid, radius), {}},
        seen_(grid) {}

  /// False when cancelled.
  bool run(StepRange steps);
  void take(const CellBits& settled) { seen_.add(settled, settled.box()); }
  const CellBits& seen() const { return seen_; }

 private:
  struct Worker {
    EverSeen ever;
    std::unique_ptr<GroundOfSteps> ground;
    StepGround over;
  };
  Worker& workerAt(std::size_t i);
  template <class Work, class End>
  bool share(std::size_t count, Work work, End end);
  bool findRound();
  bool closeGaps();
  void open(Gap gap);

  geometry::Grid grid_;
  double radius_;
  Bodies bodies_;
  const GroundMaker& maker_;
  const base::Cancel& cancel_;
  std::vector<std::unique_ptr<Worker>> workers_;
  Looked looked_;  ///< at `seen_`
  CellBits seen_;
  StepRange steps_;
  std::vector<std::uint32_t> list_;   ///< the steps that do not see what the one before them did
  std::vector<std::uint32_t> round_;  ///< numbers of the list to be found
  std::vector<Gap> gaps_;
};

Rounds::Worker& Rounds::workerAt(std::size_t i) {
  if (!workers_[i])
    workers_[i] = std::make_unique<Worker>(Worker{EverSeen(grid_, radius_, bodies_), maker_(), StepGround{}});
  workers_[i]->ever.take(seen_);
  return *workers_[i];
}

/// Calls `work(worker, i)` for each number below `count`, on all threads, and `end(worker)` for each worker that took
/// part. False when cancelled.
template <class Work, class End>
bool Rounds::share(std::size_t count, Work work, End end) {
  // Few at a time: one that takes long must not leave a thread waiting.
  constexpr std::size_t kTaken = 8;
  std::atomic<std::size_t> next{0};
  std::atomic<bool> whole = true;
  const auto run = [&](std::size_t number) {
    Worker& worker = workerAt(number);
    for (std::size_t from = next.fetch_add(kTaken); from < count; from = next.fetch_add(kTaken))
      for (std::size_t i = from; i < std::min(from + kTaken, count) && whole; ++i) {
        if (cancel_.fired()) whole = false;
        if (whole) work(worker, i);
      }
    end(worker);
  };
  std::vector<std::jthread> others;
  const std::size_t threads = std::min(workers_.size(), count / kTaken + 1);
  for (std::size_t i = 1; i < threads; ++i) others.emplace_back(run, i);
  run(0);
  others.clear();  // waits for them
  return whole;
}

bool Rounds::findRound() {
  const bool whole = share(
      round_.size(),
      [this](Worker& worker, std::size_t i) {
        worker.ground->find(list_[round_[i]], worker.ever.next());
        worker.ever.took();
      },
      [](Worker& worker) { worker.ever.settle(); });
  for (const auto& worker : workers_)
    if (worker) take(worker->ever.seen());
  return whole;
}

bool Rounds::closeGaps() {
  looked_.unseen.look(seen_);
  looked_.deep.look(seen_, seen_.box());
  std::vector<char> held(gaps_.size());
  const bool whole = share(
      gaps_.size(),
      [&](Worker& worker, std::size_t i) {
        const std::uint32_t until = gaps_[i].until < list_.size() ? list_[gaps_[i].until] : steps_.until;
        worker.over.clear();
        held[i] = worker.ground->findOver({list_[gaps_[i].from], until}, worker.over) &&
                  worker.ever.holds(worker.over, looked_);
      },
      [](Worker&) {});
  round_.clear();
  std::vector<Gap> gaps;
  std::swap(gaps, gaps_);
  for (std::size_t i = 0; i < gaps.size(); ++i) {
    if (held[i]) continue;
    const std::uint32_t middle = (gaps[i].from + gaps[i].until) / 2;
    round_.push_back(middle);
    open({gaps[i].from, middle});
    open({middle + 1, gaps[i].until});
  }
  return whole;
}

void Rounds::open(Gap gap) {
  if (gap.until - gap.from > kLeast) return gaps_.push_back(gap);
  for (; gap.from < gap.until; ++gap.from) round_.push_back(gap.from);
}

bool Rounds::run(StepRange steps) {
  steps_ = steps;
  GroundOfSteps& ground = *workerAt(0).ground;
  for (std::uint32_t step = steps.from; step < steps.until; ++step)
    if (step == steps.from || !ground.asBefore(step)) list_.push_back(step);
  const auto count = static_cast<std::uint32_t>(list_.size());
  for (std::uint32_t i = 0; i < count; i += kStride) {
    round_.push_back(i);
    open({i + 1, std::min(i + kStride, count)});
  }
  while (!round_.empty())
    if (!findRound() || !closeGaps()) return false;
  return true;
}

}  // namespace

std::optional<CellBits> everSeen(const geometry::Grid& grid, double radius, StepRange steps, const GroundMaker& ground,
                                 int threads, const base::Cancel& cancel, Bodies bodies, const CellBits* settled) {
  WEND_CHECK(threads >= 1);
  Rounds rounds(grid, radius, bodies, ground, threads, cancel);
  if (settled != nullptr) rounds.take(*settled);
  if (!rounds.run(steps)) return std::nullopt;
  return rounds.seen();
}

}  // namespace wend::sight
