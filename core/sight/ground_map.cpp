#include "core/sight/ground_map.h"

#include <algorithm>
#include <atomic>
#include <cmath>

#include "core/base/check.h"

namespace wend::sight {

using geometry::BitGrid;

namespace {

std::uint32_t stepsOf(const GroundMapSpec& spec) {
  return static_cast<std::uint32_t>(std::max(1.0, std::ceil(spec.take.length() / spec.step - 1e-6)));
}

/// The last step ends with the take.
Span timeOf(const GroundMapSpec& spec, std::size_t step) {
  const auto at = [&](std::size_t k) { return spec.take.from + static_cast<double>(k) * spec.step; };
  return {at(step), std::max(std::min(at(step + 1), spec.take.until), at(step) + 1e-6)};
}

/// Nothing when cancelled.
std::optional<EyeSteps> eyesOver(const EyeAt& eye, const GroundMapSpec& spec, int threads, const base::Cancel& cancel) {
  EyeSteps eyes(stepsOf(spec));
  const std::vector<StepRange> parts = partsOf({0, static_cast<std::uint32_t>(eyes.size())}, threads);
  std::atomic<bool> whole = true;
  const auto find = [&](std::size_t part) {
    std::optional<Eye> last = eye(timeOf(spec, parts[part].from).from);
    for (std::uint32_t k = parts[part].from; k < parts[part].until && whole; ++k) {
      if (cancel.fired()) whole = false;
      const Span time = timeOf(spec, k);
      const std::optional<Eye> next = eye(time.until);
      eyes[k] = eyeStep(eye, time, last, next);
      last = next;
    }
  };
  shareOut(parts.size(), threads, [&] { return find; });
  if (!whole) return std::nullopt;
  return eyes;
}

/// Where the eyes differ, as few stretches: between two that lie nearer together than sorting a stretch costs the steps
/// are found with them.
std::vector<StepRange> differing(const EyeSteps& a, const EyeSteps& b) {
  constexpr std::uint32_t kNear = 256;
  std::vector<StepRange> ranges;
  for (std::uint32_t k = 0; k < a.size(); ++k) {
    if (a[k] == b[k]) continue;
    if (ranges.empty() || k - ranges.back().until > kNear) ranges.push_back({k, k});
    ranges.back().until = k + 1;
  }
  return ranges;
}

/// The ground seen of a set, as layers to draw. One for each thread.
class GroundOfSet : public GroundOfSteps {
 public:
  GroundOfSet(const Scene& scene, const GroundMapSpec& spec, const EyeSteps& eyes, geometry::Extent box)
      : spec_(spec),
        eyes_(eyes),
        changes_(scene.changes()),
        reach_(geometry::distance(box.low, box.high)),
        view_(scene, {spec.floor, spec.top}, box) {}

  void find(std::size_t step, StepGround& ground) override {
    if (!eyes_[step]) return;
    view_.look(timeOf(spec_, step), *eyes_[step], {}, look_);
    for (SetLayer& layer : look_.layers) {
      GroundLayer& drawn = ground.addLayer();
      shadows_.clear();
      appendShadows(look_, layer, {spec_.floor, spec_.top}, reach_, shadows_);
      for (const geometry::Convex& shadow : shadows_) drawn.hidden.push_back(sliceOf(shadow));
      std::swap(drawn.region, layer.region);
    }
  }

  /// What the joined step sees, low things left out: they hide from some of its places only.
  bool findOver(StepRange steps, StepGround& ground) override {
    const auto eye = joined(std::span(eyes_).subspan(steps.from, steps.until - steps.from));
    if (!eye) return true;
    view_.look({timeOf(spec_, steps.from).from, timeOf(spec_, steps.until - 1).until}, *eye, {}, look_);
    for (SetLayer& layer : look_.layers) std::swap(ground.addLayer().region, layer.region);
    return true;
  }

  /// An eye at rest before a set at rest.
  bool asBefore(std::size_t step) override {
    if (eyes_[step] != eyes_[step - 1]) return false;
    const auto change = std::lower_bound(changes_.begin(), changes_.end(), timeOf(spec_, step - 1).from);
    return change == changes_.end() || *change > timeOf(spec_, step).until;
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
  std::vector<double> changes_;
  double reach_;
  SetView view_;
  SetLook look_;
  std::vector<geometry::Convex> shadows_;
};

SeenSpec seenSpecOf(const GroundMapSpec& spec) {
  SeenSpec seen;
  seen.grid = spec.grid;
  seen.radius = spec.radius + spec.grid.reach();
  seen.from = spec.take.from;
  seen.step = spec.step;
  seen.steps = stepsOf(spec);
  return seen;
}

}  // namespace

std::optional<GroundMap> GroundMap::over(const Scene& scene, const EyeAt& eye, const GroundMapSpec& spec, int threads,
                                         const base::Cancel& cancel, const GroundMap* earlier) {
  WEND_CHECK(spec.step > 0 && spec.radius > 0 && spec.top > spec.floor && threads >= 1);
  auto eyes = eyesOver(eye, spec, threads, cancel);
  if (!eyes) return std::nullopt;
  GroundMap map(spec);
  map.eyes_ = *std::move(eyes);
  const geometry::Extent box = withEyes(spec.grid.extent(), map.eyes_);
  const auto make = [&] { return std::make_unique<GroundOfSet>(scene, spec, map.eyes_, box); };
  const bool alike = earlier != nullptr && earlier->spec_ == spec && *earlier->scene_ == scene &&
                     withEyes(spec.grid.extent(), earlier->eyes_) == box;
  if (!alike) {
    auto found = SeenSteps::over(seenSpecOf(spec), make, threads, cancel);
    if (!found) return std::nullopt;
    map.scene_ = std::make_shared<const Scene>(scene);
    map.seen_ = *std::move(found);
    map.stepsFound_ = map.seen_.spec().steps;
    return map;
  }
  map.scene_ = earlier->scene_;
  map.seen_ = earlier->seen_;
  for (const StepRange& range : differing(map.eyes_, earlier->eyes_)) {
    auto found = map.seen_.withFound(range, make, threads, cancel);
    if (!found) return std::nullopt;
    map.seen_ = *std::move(found);
    map.stepsFound_ += range.until - range.from;
  }
  return map;
}

std::optional<CellBits> clearGround(const Scene& scene, const EyeAt& eye, const GroundMapSpec& spec, Span span,
                                    double early, double late, int threads, const base::Cancel& cancel) {
  WEND_CHECK(spec.step > 0 && spec.radius > 0 && spec.top > spec.floor && threads >= 1 && early >= 0 && late >= 0);
  const auto eyes = eyesOver(eye, spec, threads, cancel);
  if (!eyes) return std::nullopt;
  const SeenSpec seen = seenSpecOf(spec);
  // As SeenSteps::clearOver bars: a step's own ends, grown, against the span, both with their ends.
  StepRange barring{0, seen.steps};
  const auto at = [&](std::uint32_t step) { return seen.from + static_cast<double>(step) * seen.step; };
  while (barring.from < barring.until && at(barring.from + 1) + late < span.from) ++barring.from;
  while (barring.from < barring.until && at(barring.until - 1) - early > span.until) --barring.until;
  CellBits clear(spec.grid);
  const geometry::Extent box = withEyes(spec.grid.extent(), *eyes);
  const auto make = [&] { return std::make_unique<GroundOfSet>(scene, spec, *eyes, box); };
  const auto ever = everSeen(spec.grid, seen.radius, barring, make, threads, cancel);
  if (!ever) return std::nullopt;
  for (int row = 0; row < spec.grid.ny; ++row)
    for (int column = 0; column < spec.grid.nx; ++column)
      if (!ever->at(column, row)) clear.set(column, row);
  return clear;
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
  std::size_t cell = 0;
  for (int row = 0; row < spec_.grid.ny; ++row)
    for (int column = 0; column < spec_.grid.nx; ++column, ++cell) {
      const auto runs = seen_.runs(column, row);
      const auto next = std::ranges::partition_point(runs, [step](const StepRange& run) { return run.until < step; });
      if (next != runs.end()) seconds[cell] = static_cast<float>(std::max(0.0, seen_.timeOf((*next).from) - t));
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
