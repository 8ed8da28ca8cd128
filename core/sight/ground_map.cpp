#include "core/sight/ground_map.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"
#include "core/sight/fan.h"
#include "core/sight/mirror_leg.h"

namespace wend::sight {

using geometry::BitGrid;

namespace {

/// What bounds seen ground along a ray: the straight part of a wall that this prism is, the mirror itself, or something
/// that a person could lean past.
constexpr int kOpenEnd = -1;
constexpr int kAtMirror = -2;

/// The seen stretches of one sector and, end by end, the wall each ends at.
struct Sector {
  std::vector<double> ends;  ///< from, until, from, until, ... in metres along the ray
  std::vector<int> walls;    ///< for each end: the prism of a wall, kAtMirror or kOpenEnd
  void clear() { ends.clear(), walls.clear(); }
};

/// From a distance along a ray to the plan, straight or folded at a mirror.
struct Fold {
  Point foot;
  const Mirror* mirror = nullptr;
  Point at(Vec direction, double r) const {
    const Point p = foot + direction * r;
    return mirror ? geometry::reflected(p, mirror->face) : p;
  }
};

}  // namespace

/// One instant's ground: draws sector by sector into a grid of bits.
struct SeenGround::Work {
  explicit Work(const GroundMapSpec& s) : spec(s), bits(s.grid), grow(s.radius + s.grid.reach()) {}

  const BitGrid& ground(const SceneAt& now, const Eye& eye);
  void drawStraight();
  void drawMirror(const Mirror& mirror);
  void straightSector(std::size_t ray);
  bool mirrorSector(std::size_t ray, const Mirror& mirror);
  void take(Slopes window, Span range, int fromWall);
  int wallAt(double r) const;
  void next(const Fold& fold, std::size_t ray);
  void drawArcs(const Fold& fold, std::size_t ray);
  void drawSides(const Fold& fold, std::size_t border);

  GroundMapSpec spec;
  BitGrid bits;
  double grow;
  Fan fan;
  const SceneAt* now = nullptr;
  std::optional<Frame> frame;
  double reach = 0;
  SeenDistances distances;
  std::vector<Upright> boxes;
  std::vector<MirrorHit> hits;  ///< the boxes' prisms, for naming walls
  std::vector<Span> spans;
  Sector last, current;
  std::vector<std::pair<double, int>> sideEnds;
};

/// The wall whose near face stands at r, if that is what stops the ray there.
int SeenGround::Work::wallAt(double r) const {
  for (const MirrorHit& hit : hits) {
    const Prism& prism = now->prism(hit.prism);
    if (hit.box.near == r && prism.jamb) return static_cast<int>(hit.prism);
  }
  return kOpenEnd;
}

void SeenGround::Work::take(Slopes window, Span range, int fromWall) {
  boxes.clear();
  for (const MirrorHit& hit : hits) boxes.push_back(hit.box);
  spans.clear();
  distances.append(frame->height(), boxes, spec.floor, spec.top, window, range, spans);
  for (const Span& span : spans) {
    current.ends.insert(current.ends.end(), {span.from, span.until});
    current.walls.push_back(span.from == range.from ? fromWall : kOpenEnd);
    current.walls.push_back(wallAt(span.until));
  }
}

void SeenGround::Work::straightSector(std::size_t ray) {
  hits.clear();
  for (const FanHit& hit : fan.hits(ray)) hits.push_back({hit.box, hit.prism});
  take(frame->slopes(fan.direction(ray)), {0, reach}, kOpenEnd);
}

bool SeenGround::Work::mirrorSector(std::size_t ray, const Mirror& mirror) {
  const Vec direction = fan.direction(ray);
  const auto r = geometry::whereRayMeets(frame->foot(), direction, mirror.face);
  if (!r) return false;
  hits.clear();
  for (const FanHit& hit : fan.hits(ray)) appendFirstLeg({hit.box, hit.prism}, mirror, direction, *r, hits);
  appendSecondLeg(*now, mirror, frame->foot(), direction, *r, hits);
  const Slopes window = meet(frame->slopes(direction), slopesOf(frame->height(), {*r, *r, mirror.bottom, mirror.top}));
  take(window, {*r, *r + reach}, kAtMirror);
  return true;
}

void SeenGround::Work::drawArcs(const Fold& fold, std::size_t ray) {
  const Vec right = fan.border(ray), left = fan.border(ray + 1);
  for (std::size_t i = 0; i < current.ends.size(); ++i) {
    const double r = current.ends[i];
    if (r == 0) continue;
    const Segment arc{fold.at(right, r), fold.at(left, r)};
    bits.toggle(arc);
    if (current.walls[i] == kOpenEnd) bits.addNear(arc, grow);
  }
}

/// Between two sectors the ends pair up into the stretches that only one of them sees.
void SeenGround::Work::drawSides(const Fold& fold, std::size_t border) {
  sideEnds.clear();
  for (const Sector* sector : {&last, &current})
    for (std::size_t i = 0; i < sector->ends.size(); ++i) sideEnds.push_back({sector->ends[i], sector->walls[i]});
  std::sort(sideEnds.begin(), sideEnds.end());
  for (std::size_t i = 0; i + 1 < sideEnds.size(); i += 2) {
    const auto& [from, wallFrom] = sideEnds[i];
    const auto& [until, wallUntil] = sideEnds[i + 1];
    if (from == until) continue;
    const Segment side{fold.at(fan.border(border), from), fold.at(fan.border(border), until)};
    bits.toggle(side);
    // The face of one straight wall runs on from sector to sector: behind it is no ground to lean into.
    if (wallFrom == kOpenEnd || wallFrom != wallUntil) bits.addNear(side, grow);
  }
}

void SeenGround::Work::next(const Fold& fold, std::size_t ray) {
  drawArcs(fold, ray);
  drawSides(fold, ray);
  std::swap(last, current);
  current.clear();
}

void SeenGround::Work::drawStraight() {
  const Fold fold{frame->foot(), nullptr};
  last.clear(), current.clear();
  for (std::size_t ray = 0; ray < fan.size(); ++ray) {
    straightSector(ray);
    next(fold, ray);
  }
  drawSides(fold, fan.size());
  bits.fill();
}

void SeenGround::Work::drawMirror(const Mirror& mirror) {
  const Fold fold{frame->foot(), &mirror};
  last.clear(), current.clear();
  bool any = false;
  for (std::size_t ray = 0; ray < fan.size(); ++ray) {
    const bool there = mirrorSector(ray, mirror);
    if (there || any) next(fold, ray);
    any = there;
  }
  if (any) drawSides(fold, fan.size());
  bits.fill();
}

const BitGrid& SeenGround::Work::ground(const SceneAt& scene, const Eye& eye) {
  now = &scene;
  frame.emplace(eye);
  const geometry::Extent box = spec.grid.extent();
  const Point foot = frame->foot();
  reach = std::hypot(std::max(std::abs(foot.x - box.low.x), std::abs(foot.x - box.high.x)),
                     std::max(std::abs(foot.y - box.low.y), std::abs(foot.y - box.high.y))) +
          2 * grow;
  bits.clear();
  fan.spread(scene, *frame, geometry::radians(spec.sectorDegrees), reach);
  drawStraight();
  for (const Mirror& mirror : scene.mirrors())
    if (shows(mirror, foot)) drawMirror(mirror);
  return bits;
}

SeenGround::SeenGround(const GroundMapSpec& spec) : work_(std::make_unique<Work>(spec)) {
  WEND_CHECK(spec.step > 0 && spec.radius > 0 && spec.top > spec.floor && spec.sectorDegrees > 0);
}
SeenGround::~SeenGround() = default;

const BitGrid& SeenGround::at(const SceneAt& now, const Eye& eye) {
  return work_->ground(now, eye);
}

namespace {

/// A cell that turned seen or unseen at a step.
struct Toggle {
  std::uint32_t cell, step;
};

std::vector<std::uint32_t> startsOf(const std::vector<Toggle>& toggles, std::size_t cells) {
  std::vector<std::uint32_t> starts(cells + 1, 0);
  for (const Toggle& toggle : toggles) ++starts[toggle.cell + 1];
  for (std::size_t i = 1; i < starts.size(); ++i) starts[i] += starts[i - 1];
  return starts;
}

}  // namespace

std::optional<GroundMap> GroundMap::sampled(const Scene& scene, const EyeAt& eye, const GroundMapSpec& spec,
                                            const base::Cancel& cancel) {
  GroundMap map;
  map.spec_ = spec;
  map.steps_ = static_cast<std::size_t>(std::floor(spec.take.length() / spec.step + 1e-6)) + 1;
  SeenGround ground(spec);
  BitGrid before(spec.grid);
  const BitGrid nothing(spec.grid);
  std::vector<Toggle> toggles;
  const auto turnTo = [&](const BitGrid& after, std::size_t step) {
    BitGrid::eachDifference(before, after, [&](std::size_t cell) {
      toggles.push_back({static_cast<std::uint32_t>(cell), static_cast<std::uint32_t>(step)});
    });
    before = after;
  };
  for (std::size_t step = 0; step < map.steps_; ++step) {
    if (cancel.fired()) return std::nullopt;
    const double t = map.timeOf(step);
    const auto lens = eye(t);
    turnTo(lens ? ground.at(scene.at(t), *lens) : nothing, step);
  }
  turnTo(nothing, map.steps_);
  // Every cell ends unseen, so its toggles come in pairs: a run each.
  map.starts_ = startsOf(toggles, spec.grid.cells());
  std::vector<std::uint32_t> steps(toggles.size()), next(map.starts_.begin(), map.starts_.end());
  for (const Toggle& toggle : toggles) steps[next[toggle.cell]++] = toggle.step;
  for (std::size_t i = 0; i + 1 < steps.size(); i += 2) map.runs_.push_back({steps[i], steps[i + 1]});
  for (std::uint32_t& start : map.starts_) start /= 2;
  return map;
}

Span GroundMap::timeOf(StepRun run) const {
  const double from = run.from == 0 ? spec_.take.from : timeOf(static_cast<std::size_t>(run.from - 1));
  const double until = run.until >= steps_ ? spec_.take.until : timeOf(static_cast<std::size_t>(run.until));
  return {from, std::min(until, spec_.take.until)};
}

bool GroundMap::seenAt(std::size_t cell, double t) const {
  const double step = std::round((t - spec_.take.from) / spec_.step);
  for (const StepRun& run : seenRuns(cell))
    if (step >= run.from && step < run.until) return true;
  return false;
}

std::vector<std::uint8_t> GroundMap::clearOver(Span span, double early, double late) const {
  std::vector<std::uint8_t> clear(spec_.grid.cells(), 1);
  for (std::size_t cell = 0; cell < clear.size(); ++cell)
    for (const StepRun& run : seenRuns(cell)) {
      const Span time = timeOf(run);
      if (time.from - early <= span.until && time.until + late >= span.from) clear[cell] = 0;
    }
  return clear;
}

std::vector<float> GroundMap::secondsUntilSeen(double t) const {
  std::vector<float> seconds(spec_.grid.cells(), std::numeric_limits<float>::infinity());
  const double step = (t - spec_.take.from) / spec_.step;
  for (std::size_t cell = 0; cell < seconds.size(); ++cell)
    for (const StepRun& run : seenRuns(cell)) {
      if (run.until <= step) continue;
      seconds[cell] = static_cast<float>(std::max(0.0, timeOf(static_cast<std::size_t>(run.from)) - t));
      break;
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
