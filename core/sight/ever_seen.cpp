#include "core/sight/ever_seen.h"

#include "core/base/check.h"
#include "core/base/team.h"
#include "core/sight/cell_growth.h"
#include "core/sight/known_ground.h"

namespace wend::sight {

namespace {

/// The ground of so many steps is kept at a time.
constexpr std::size_t kBatch = 512;

/// Cells drawn, and a box around them.
struct Drawn {
  explicit Drawn(const geometry::Grid& grid) : cells(grid) {}
  CellBits cells;
  WordBox box;
  /// Adds them to others, and is empty then.
  void moveTo(CellBits& others) {
    others.add(cells, box);
    cells.clear(box);
    box = {};
  }
};

/// What one thread draws.
class Painter {
 public:
  Painter(const geometry::Grid& grid, double radius, Bodies bodies)
      : raster_(grid, radius, rowKernels(), bodies), inside_(grid), drawn_(grid), layer_(grid) {}

  /// What lies in the rings of the ground, not grown by the radius.
  Drawn& inside() { return inside_; }
  Drawn& drawn() { return drawn_; }

  /// Of layers in which low pieces hide somebody, all goes to what is drawn; of the others their insides.
  void addInsides(const StepGround& ground, const KnownGround& known);
  /// The widened edges and the slices of the other layers.
  void addBorders(const StepGround& ground, const KnownGround& known);
  /// Whether all cells near the ground are among `seen`. Requires that `known` looked at some of these.
  bool holds(const StepGround& ground, const CellBits& seen, const KnownGround& known);

 private:
  void addHidden(const GroundLayer& layer);
  /// Whether a cell not seen when looked lies in the ring's box, or nearer than the radius.
  bool mayAdd(std::span<const RegionEdge> ring, const KnownGround& known) const {
    return known.unseen.any(raster_.boxAround(ring));
  }
  WordBox addBorders(const SweptRegion& region, const KnownGround& known, CellBits& out);

  RegionRaster raster_;
  Drawn inside_, drawn_;
  CellBits layer_;
};

void Painter::addHidden(const GroundLayer& layer) {
  const WordBox box = raster_.add(layer.region, layer_);
  for (const RegionSlice& area : layer.hidden) raster_.erase(area, layer_);
  drawn_.cells.add(layer_, box);
  drawn_.box.take(box);
  layer_.clear(box);
}

void Painter::addInsides(const StepGround& ground, const KnownGround& known) {
  for (const GroundLayer& layer : ground.layers()) {
    if (!layer.hidden.empty())
      addHidden(layer);
    else if (mayAdd(layer.region.ring, known))
      inside_.box.take(raster_.addInterior(layer.region.ring, inside_.cells));
  }
}

WordBox Painter::addBorders(const SweptRegion& region, const KnownGround& known, CellBits& out) {
  WordBox box;
  if (mayAdd(region.ring, known))
    for (const RegionEdge& edge : region.ring)
      if (raster_.widens(edge) && !known.deep.holds(edge)) box.take(raster_.addNear(edge, out));
  for (const RegionSlice& slice : region.slices)
    if (slice.corners > 0 && !known.deep.holds(slice)) box.take(raster_.addNear(slice, out));
  return box;
}

void Painter::addBorders(const StepGround& ground, const KnownGround& known) {
  for (const GroundLayer& layer : ground.layers())
    if (layer.hidden.empty()) drawn_.box.take(addBorders(layer.region, known, drawn_.cells));
}

bool Painter::holds(const StepGround& ground, const CellBits& seen, const KnownGround& known) {
  return std::ranges::all_of(ground.layers(), [&](const GroundLayer& layer) {
    WordBox box;
    if (mayAdd(layer.region.ring, known)) box = raster_.addInterior(layer.region.ring, layer_);
    box.take(addBorders(layer.region, known, layer_));
    const bool held = seen.holds(layer_, box);
    layer_.clear(box);
    return held;
  });
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
      : radius_(radius / grid.cell),
        makeWorker_([&grid, radius, bodies, &ground] {
          return std::make_unique<Worker>(Worker{Painter(grid, radius, bodies), ground(), StepGround{}});
        }),
        cancel_(cancel),
        workers_(static_cast<std::size_t>(threads)),
        team_(workers_.size()),
        known_{DeepGround(grid, radius), {}},
        inside_(grid),
        seen_(grid) {}

  /// False when cancelled.
  bool run(StepRange steps);
  void take(const CellBits& settled) { seen_.add(settled, settled.box()); }
  const CellBits& seen() const { return seen_; }

 private:
  struct Worker {
    Painter painter;
    std::unique_ptr<GroundOfSteps> ground;
    StepGround over;
  };
  Worker& workerAt(std::size_t i);
  template <class Work>
  bool share(std::size_t count, Work work);
  void look(const WordBox& box);
  bool findRound();
  bool findBatch(std::span<const std::uint32_t> numbers);
  void growInsides();
  bool closeGaps();
  void open(Gap gap);

  double radius_;  ///< in cells
  std::function<std::unique_ptr<Worker>()> makeWorker_;
  const base::Cancel& cancel_;
  std::vector<std::unique_ptr<Worker>> workers_;
  base::Team team_;
  KnownGround known_;
  Drawn inside_;
  CellBits seen_;
  std::vector<StepGround> batch_;
  StepRange steps_;
  std::vector<std::uint32_t> list_;   ///< the steps that do not see what the one before them did
  std::vector<std::uint32_t> round_;  ///< numbers of the list to be found
  std::vector<Gap> gaps_;
};

Rounds::Worker& Rounds::workerAt(std::size_t i) {
  if (!workers_[i]) workers_[i] = makeWorker_();
  return *workers_[i];
}

/// Calls `work(worker, i)` for each number below `count`, on all threads. False when cancelled.
template <class Work>
bool Rounds::share(std::size_t count, Work work) {
  // Few at a time: one that takes long must not leave a thread waiting.
  constexpr std::size_t kTaken = 4;
  alignas(64) std::atomic<std::size_t> next{0};
  alignas(64) std::atomic<bool> whole = true;
  team_.run(std::min(workers_.size(), count / kTaken + 1), [&](std::size_t number) {
    Worker& worker = workerAt(number);
    for (std::size_t from = next.fetch_add(kTaken); from < count && whole; from = next.fetch_add(kTaken)) {
      if (cancel_.fired()) whole = false;
      for (std::size_t i = from; i < std::min(from + kTaken, count); ++i) work(worker, i);
    }
  });
  return whole;
}

void Rounds::look(const WordBox& box) {
  known_.unseen.look(seen_);
  known_.deep.look(seen_, box, team_);
}

/// Insides are joined first and grown together, once.
void Rounds::growInsides() {
  for (const auto& worker : workers_) {
    if (!worker) continue;
    inside_.box.take(worker->painter.inside().box);
    worker->painter.inside().moveTo(inside_.cells);
  }
  addGrown(inside_.cells, inside_.box, radius_, seen_, team_);
  inside_.cells.clear(inside_.box);
  inside_.box = {};
  look(seen_.box());
}

bool Rounds::findBatch(std::span<const std::uint32_t> numbers) {
  if (batch_.size() < numbers.size()) batch_.resize(numbers.size());
  const bool found = share(numbers.size(), [&](Worker& worker, std::size_t i) {
    batch_[i].clear();
    worker.ground->find(list_[numbers[i]], batch_[i]);
    worker.painter.addInsides(batch_[i], known_);
  });
  if (!found) return false;
  growInsides();
  const bool drawn =
      share(numbers.size(), [&](Worker& worker, std::size_t i) { worker.painter.addBorders(batch_[i], known_); });
  for (const auto& worker : workers_)
    if (worker) worker->painter.drawn().moveTo(seen_);
  return drawn;
}

bool Rounds::findRound() {
  const std::span<const std::uint32_t> all(round_);
  for (std::size_t from = 0; from < all.size(); from += kBatch)
    if (!findBatch(all.subspan(from, std::min(kBatch, all.size() - from)))) return false;
  return true;
}

bool Rounds::closeGaps() {
  std::vector<char> held(gaps_.size());
  const bool whole = share(gaps_.size(), [&](Worker& worker, std::size_t i) {
    const std::uint32_t until = gaps_[i].until < list_.size() ? list_[gaps_[i].until] : steps_.until;
    worker.over.clear();
    held[i] = worker.ground->findOver({list_[gaps_[i].from], until}, worker.over) &&
              worker.painter.holds(worker.over, seen_, known_);
  });
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
  look(seen_.box());
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
