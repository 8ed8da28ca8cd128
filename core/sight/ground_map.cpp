#include "core/sight/ground_map.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"

namespace wend::sight {

using geometry::BitGrid;

namespace {

using EyeSteps = std::vector<std::optional<EyeStep>>;

/// The ground seen of a set, as layers to draw. One for each thread.
class GroundOfSet : public GroundOfSteps {
 public:
  GroundOfSet(const Scene& scene, const GroundMapSpec& spec, const EyeSteps& eyes, geometry::Extent box)
      : spec_(spec),
        eyes_(eyes),
        reach_(geometry::distance(box.low, box.high)),
        view_(scene, {spec.floor, spec.top}, box) {}

  void find(std::size_t step, StepGround& ground) override {
    if (!eyes_[step]) return;
    const double from = spec_.take.from + static_cast<double>(step) * spec_.step;
    view_.look({from, std::min(from + spec_.step, spec_.take.until)}, *eyes_[step], {}, look_);
    for (SetLayer& layer : look_.layers) {
      GroundLayer& drawn = ground.addLayer();
      shadows_.clear();
      appendShadows(look_, layer, {spec_.floor, spec_.top}, reach_, shadows_);
      for (const geometry::Convex& shadow : shadows_) drawn.hidden.push_back(sliceOf(shadow));
      std::swap(drawn.region, layer.region);
    }
  }

 private:
  static RegionSlice sliceOf(const geometry::Convex& area) {
    RegionSlice slice;
    slice.corners = static_cast<int>(area.size());
    std::copy(area.begin(), area.end(), slice.corner.begin());
    return slice;
  }
  const GroundMapSpec& spec_;
  const EyeSteps& eyes_;
  double reach_;
  SetView view_;
  SetLook look_;
  std::vector<geometry::Convex> shadows_;
};

}  // namespace

std::optional<GroundMap> GroundMap::over(const Scene& scene, const EyeAt& eye, const GroundMapSpec& spec, int threads,
                                         const base::Cancel& cancel) {
  WEND_CHECK(spec.step > 0 && spec.radius > 0 && spec.top > spec.floor && threads >= 1);
  const auto steps = static_cast<std::uint32_t>(std::max(1.0, std::ceil(spec.take.length() / spec.step - 1e-6)));
  EyeSteps eyes;
  for (std::uint32_t k = 0; k < steps; ++k) {
    if (cancel.fired()) return std::nullopt;
    const double from = spec.take.from + k * spec.step;
    eyes.push_back(eyeStep(eye, {from, std::max(std::min(from + spec.step, spec.take.until), from + 1e-6)}));
  }
  const geometry::Extent box = withEyes(spec.grid.extent(), eyes);
  const auto make = [&] { return std::make_unique<GroundOfSet>(scene, spec, eyes, box); };
  SeenSpec seen;
  seen.grid = spec.grid;
  seen.radius = spec.radius + spec.grid.reach();
  seen.from = spec.take.from;
  seen.step = spec.step;
  seen.steps = steps;
  auto found = SeenSteps::over(seen, make, threads, cancel);
  if (!found) return std::nullopt;
  return GroundMap(spec, std::move(*found));
}

bool GroundMap::seenAt(std::size_t cell, double t) const {
  const double step = (t - spec_.take.from) / spec_.step;
  for (const StepRange& run : seen_.runs(cell))
    if (step >= run.from && step <= run.until) return true;
  return false;
}

std::vector<std::uint8_t> GroundMap::clearOver(Span span, double early, double late) const {
  const CellBits clear = seen_.clearOver(span, early, late);
  std::vector<std::uint8_t> cells(spec_.grid.cells());
  for (std::size_t cell = 0; cell < cells.size(); ++cell) cells[cell] = clear.at(cell);
  return cells;
}

std::vector<float> GroundMap::secondsUntilSeen(double t) const {
  std::vector<float> seconds(spec_.grid.cells(), std::numeric_limits<float>::infinity());
  const double step = (t - spec_.take.from) / spec_.step;
  for (std::size_t cell = 0; cell < seconds.size(); ++cell) {
    const auto runs = seen_.runs(cell);
    const auto next =
        std::partition_point(runs.begin(), runs.end(), [step](const StepRange& run) { return run.until < step; });
    if (next != runs.end()) seconds[cell] = static_cast<float>(std::max(0.0, seen_.timeOf(next->from) - t));
  }
  return seconds;
}

namespace {

void addPrism(BitGrid& bits, const Prism& prism, std::span<const Point> corners, double radius) {
  if (prism.form == Prism::Form::disc) {
    bits.addNear({prism.centre, prism.centre}, prism.radius + radius);
  } else if (prism.form == Prism::Form::sheet) {
    bits.addNear(prism.sheet, radius);
  } else {
    bits.toggleRing(corners);
    bits.fill();
    for (std::size_t i = 0, j = corners.size() - 1; i < corners.size(); j = i++)
      bits.addNear({corners[j], corners[i]}, radius);
  }
}

void addMoving(BitGrid& bits, const MovingPiece& piece, const GroundMapSpec& spec, double stepOver) {
  if (piece.top <= spec.floor + stepOver || piece.bottom >= spec.top) return;
  if (piece.closed) {
    bits.toggleRing(piece.points);
    bits.fill();
  }
  const std::size_t ends = piece.points.size();
  for (std::size_t i = piece.closed || ends == 1 ? 0 : 1; i < ends; ++i)
    bits.addNear({piece.points[(i + ends - 1) % ends], piece.points[i]}, piece.radius + spec.radius);
}

}  // namespace

BitGrid takenGround(const SceneAt& now, const GroundMapSpec& spec, double stepOver) {
  BitGrid bits(spec.grid);
  const Scene& scene = now.scene();
  const auto add = [&](const Prism& prism) {
    if (prism.top > spec.floor + stepOver && prism.bottom < spec.top)
      addPrism(bits, prism, scene.corners(prism), spec.radius);
  };
  for (const Prism& prism : scene.prisms()) add(prism);
  for (const Prism& prism : scene.glass()) add(prism);
  for (const Prism& prism : now.parked()) add(prism);
  for (const MovingPiece& piece : now.moving()) addMoving(bits, piece, spec, stepOver);
  for (const Leaf& leaf : now.leaves())
    if (leaf.inWay && leaf.top > spec.floor + stepOver && leaf.bottom < spec.top) bits.addNear(leaf.panel, spec.radius);
  return bits;
}

}  // namespace wend::sight
