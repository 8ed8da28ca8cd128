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

class EverSeen {
 public:
  EverSeen(const geometry::Grid& grid, double radius, Bodies bodies)
      : raster_(grid, radius, rowKernels(), bodies), deep_(grid, radius), seen_(grid), inside_(grid), layer_(grid) {
    batch_.resize(kBatch);
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

  RegionRaster raster_;
  DeepGround deep_;
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
  for (const RegionEdge& edge : region.ring)
    if (raster_.widens(edge) && !deep_.holds(edge)) raster_.addNear(edge, seen_);
  for (const RegionSlice& slice : region.slices)
    if (slice.corners > 0 && !deep_.holds(slice)) raster_.addNear(slice, seen_);
}

void EverSeen::settle() {
  const std::span<const StepGround> batch(batch_.data(), used_);
  WordBox box;
  for (const StepGround& ground : batch)
    for (const GroundLayer& layer : ground.layers()) {
      if (layer.hidden.empty())
        box.take(raster_.addInterior(layer.region.ring, inside_));
      else
        addHidden(layer);
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
                                 int threads, const base::Cancel& cancel, Bodies bodies) {
  WEND_CHECK(threads >= 1);
  const std::vector<StepRange> parts = partsOf(steps, threads);
  CellBits all(grid);
  std::mutex joining;
  std::atomic<bool> whole = true;
  shareOut(parts.size(), threads, [&] {
    return [&, ever = std::make_unique<EverSeen>(grid, radius, bodies), mine = ground()](std::size_t part) {
      if (!whole || !addSteps(*ever, parts[part], *mine, cancel)) whole = false;
      const std::lock_guard lock(joining);
      all.add(ever->seen(), all.box());
    };
  });
  if (!whole) return std::nullopt;
  return all;
}

}  // namespace wend::sight
