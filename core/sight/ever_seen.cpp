#include "core/sight/ever_seen.h"

#include <cmath>
#include <mutex>

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

class EverSeen {
 public:
  EverSeen(const geometry::Grid& grid, double radius, Bodies bodies, const CellBits* settled)
      : raster_(grid, radius, rowKernels(), bodies), deep_(grid, radius), seen_(grid), inside_(grid), layer_(grid) {
    batch_.resize(kBatch);
    if (settled != nullptr) seen_.add(*settled, settled->box());
  }

  StepGround& next() { return batch_[used_]; }
  void took() {
    if (++used_ == kBatch) settle();
  }
  void settle();
  const CellBits& seen() const { return seen_; }

 private:
  void addHidden(const GroundLayer& layer);
  void addBorders(const SweptRegion& region);
  bool mayAdd(std::span<const RegionEdge> ring) const;

  RegionRaster raster_;
  DeepGround deep_;
  UnseenWords unseen_;
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
  if (mayAdd(region.ring))
    for (const RegionEdge& edge : region.ring)
      if (raster_.widens(edge) && !deep_.holds(edge)) raster_.addNear(edge, seen_);
  for (const RegionSlice& slice : region.slices)
    if (slice.corners > 0 && !deep_.holds(slice)) raster_.addNear(slice, seen_);
}

/// Whether a cell not seen at the batch's start lies in the ring's box, or nearer than the radius.
bool EverSeen::mayAdd(std::span<const RegionEdge> ring) const {
  return unseen_.any(raster_.boxAround(ring));
}

void EverSeen::settle() {
  const std::span<const StepGround> batch(batch_.data(), used_);
  WordBox box;
  unseen_.look(seen_);
  for (const StepGround& ground : batch)
    for (const GroundLayer& layer : ground.layers()) {
      if (!layer.hidden.empty())
        addHidden(layer);
      else if (mayAdd(layer.region.ring))
        box.take(raster_.addInterior(layer.region.ring, inside_));
    }
  const WordBox grown = addGrown(inside_, box, raster_.radius() / raster_.grid().cell, seen_);
  inside_.clear(box);
  deep_.look(seen_, grown);
  for (const StepGround& ground : batch)
    for (const GroundLayer& layer : ground.layers())
      if (layer.hidden.empty()) addBorders(layer.region);
  used_ = 0;
}

bool addSteps(EverSeen& ever, StepRange steps, GroundOfSteps& ground, const base::Cancel& cancel) {
  for (std::uint32_t step = steps.from; step < steps.until; ++step) {
    if (cancel.fired()) return false;
    if (step > steps.from && ground.asBefore(step)) continue;
    ever.next().clear();
    ground.find(step, ever.next());
    ever.took();
  }
  ever.settle();
  return true;
}

}  // namespace

std::optional<CellBits> everSeen(const geometry::Grid& grid, double radius, StepRange steps, const GroundMaker& ground,
                                 int threads, const base::Cancel& cancel, Bodies bodies, const CellBits* settled) {
  WEND_CHECK(threads >= 1);
  const std::vector<StepRange> parts = partsOf(steps, threads);
  CellBits all(grid);
  std::mutex joining;
  std::atomic<bool> whole = true;
  shareOut(parts.size(), threads, [&] {
    return [&, ever = std::make_unique<EverSeen>(grid, radius, bodies, settled), mine = ground()](std::size_t part) {
      if (!whole || !addSteps(*ever, parts[part], *mine, cancel)) whole = false;
      const std::lock_guard lock(joining);
      all.add(ever->seen(), all.box());
    };
  });
  if (!whole) return std::nullopt;
  return all;
}

}  // namespace wend::sight
