#include "core/sight/swept_view.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

namespace wend::sight {

namespace {

using geometry::radians;
using Side = Triangulation::Side;

constexpr double kTurn = 2 * std::numbers::pi;
/// A frame narrower than this is widened to it, so that its sides meet at no great distance behind it.
constexpr double kNarrowest = 1e-3;
/// A fan wider than this is seen in parts.
constexpr double kWidest = 2.6;
/// A lens nearer to a side than this is on it, in metres.
constexpr double kOn = 1e-9;
/// What rounding makes of a straight way, in metres: no sight it opens is wider than kSliver a millimetre away.
constexpr double kNoSway = 1e-12;
/// A smaller sway is widened to this, so that the ends of the near side, which it parts, are told apart from rounding.
constexpr double kLeastSway = 1e-6;

Vec along(double angle) {
  return {std::cos(angle), std::sin(angle)};
}

/// The outermost directions of a step, radians counter-clockwise from +x, `left` no less than `right`.
struct Sweep {
  double right, left;
  double width() const { return left - right; }
};

Sweep sweepOf(const SweptStep& step) {
  Sweep sweep{HUGE_VAL, -HUGE_VAL};
  for (const SweptPose& pose : {step.from, step.until}) {
    const double axis = std::numbers::pi / 2 - radians(pose.bearing), half = radians(std::max(0.0, pose.halfAngle));
    sweep.right = std::min(sweep.right, axis - half);
    sweep.left = std::max(sweep.left, axis + half);
  }
  const double more = std::max(radians(step.turn), (kNarrowest - sweep.width()) / 2);
  return {sweep.right - std::max(0.0, more), std::min(sweep.left + std::max(0.0, more), sweep.right - more + kTurn)};
}

/// Moves from `at` back along the ray by so much that the near side lies `sway` behind the chord, not past the apex.
Point drawnBack(Point at, Vec ray, Vec chord, Point apex, double sway) {
  const double lean = std::abs(cross(ray, chord)) / std::max(length(chord), 1e-300);
  const double room = dot(at - apex, ray);
  return lean * room <= sway ? apex : at - ray * (sway / lean);
}

double swayOf(const SweptStep& step) {
  return step.sway > kNoSway ? std::max(step.sway, kLeastSway) : 0;
}

SightWalk::Source sourceOf(const SweptStep& step, Sweep part) {
  SightWalk::Source source{
      step.from.pupil, step.until.pupil, swayOf(step), along(part.right), along(part.left), {}, {}, {}, {}, {}, false};
  source.still = source.from == source.until && source.sway == 0;
  const auto rightmost = [&](Vec ray) {
    return cross(ray, source.until - source.from) < 0 ? source.until : source.from;
  };
  const auto leftmost = [&](Vec ray) {
    return cross(ray, source.until - source.from) > 0 ? source.until : source.from;
  };
  const Point right = source.chordRight = rightmost(source.right) - geometry::left(source.right) * source.sway;
  const Point left = source.chordLeft = leftmost(source.left) + geometry::left(source.left) * source.sway;
  source.apex = source.nearRight = source.nearLeft = right;
  if (right == left) return source;
  const double back = cross(left - right, source.left) / cross(source.right, source.left);
  source.apex = right + source.right * std::min(0.0, back);
  source.nearRight = source.sway > 0 ? drawnBack(right, source.right, left - right, source.apex, source.sway) : right;
  source.nearLeft = source.sway > 0 ? drawnBack(left, source.left, left - right, source.apex, source.sway) : left;
  return source;
}

/// Whether p lies beyond the lens' way as seen from the apex.
bool beyondWay(const SightWalk::Source& source, Point p) {
  return source.chordRight == source.chordLeft ||
         cross(source.chordLeft - source.chordRight, p - source.chordRight) < 0;
}

/// Whether two segments come as near as `reach`.
bool touches(geometry::Segment s, geometry::Segment t, double reach) {
  return geometry::distance(s.a, t) <= reach || geometry::distance(s.b, t) <= reach ||
         geometry::distance(t.a, s) <= reach || geometry::distance(t.b, s) <= reach || geometry::whereMeet(s, t);
}

RegionSlice whole(const geometry::Extent& box) {
  return {{box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}}, 4};
}

/// The part of a convex area to the left of the line through p along v, in place. All of it where that has more corners
/// than a slice holds: ground may be added, never lost.
void cut(RegionSlice& area, Point p, Vec v) {
  RegionSlice kept;
  bool fits = true;
  const auto add = [&](Point q) {
    fits = fits && kept.corners < static_cast<int>(kept.corner.size());
    if (fits) kept.corner[static_cast<std::size_t>(kept.corners++)] = q;
  };
  for (int i = 0; i < area.corners; ++i) {
    const Point a = area.corner[static_cast<std::size_t>(i)];
    const Point b = area.corner[static_cast<std::size_t>((i + 1) % area.corners)];
    const double here = cross(v, a - p), there = cross(v, b - p);
    if (here >= 0) add(a);
    if ((here < 0) != (there < 0)) add(lerp(a, b, here / (here - there)));
  }
  if (fits) area = kept;
}

}  // namespace

SweptStep stepOver(std::span<const SweptPose> poses) {
  SweptStep step{poses.front(), poses.back()};
  const auto right = [](const SweptPose& p) { return p.bearing + std::max(0.0, p.halfAngle); };
  const auto left = [](const SweptPose& p) { return p.bearing - std::max(0.0, p.halfAngle); };
  const double rightmost = std::max(right(step.from), right(step.until));
  const double leftmost = std::min(left(step.from), left(step.until));
  for (const SweptPose& pose : poses) {
    step.sway = std::max(step.sway, geometry::distance(pose.pupil, {step.from.pupil, step.until.pupil}));
    step.turn = std::max({step.turn, right(pose) - rightmost, leftmost - left(pose)});
  }
  return step;
}

SweptView::SweptView(const Triangulation& triangles) : triangles_(&triangles), walk_(triangles) {}

/// Finds the triangles the lens is in, and their outer sides. False outside the box.
bool SweptView::stay(const SightWalk::Source& source) {
  const Side* sides = triangles_->sides();
  const Point* corners = triangles_->corners();
  const double reach = source.sway + kOn;
  const auto inside = [&](Point p) {
    return p.x - reach >= triangles_->box().low.x && p.x + reach <= triangles_->box().high.x &&
           p.y - reach >= triangles_->box().low.y && p.y + reach <= triangles_->box().high.y;
  };
  if (!inside(source.from) || !inside(source.until)) return false;
  last_ = std::max(0, triangles_->triangleAt(source.from, last_));
  stay_.assign(1, last_);
  border_.clear();
  const geometry::Segment way{source.from, source.until};
  for (std::size_t i = 0; i < stay_.size(); ++i) {
    for (std::int32_t s = 3 * stay_[i]; s < 3 * stay_[i] + 3; ++s) {
      const Point a = corners[sides[s].origin], b = corners[sides[s].end];
      const Vec d = b - a;
      const double clear = reach * reach * dot(d, d);
      const double from = cross(d, way.a - a), until = cross(d, way.b - a);
      const bool free = from > 0 && until > 0 && from * from > clear && until * until > clear;
      if (free || !touches(way, {a, b}, reach)) {
        border_.push_back(s);
      } else if (const std::int32_t other = sides[s].twin / 3;
                 std::find(stay_.begin(), stay_.end(), other) == stay_.end()) {
        stay_.push_back(other);
      }
    }
  }
  if (stay_.size() > 1) {
    // However the first was come by.
    std::sort(stay_.begin(), stay_.end());
    std::sort(border_.begin(), border_.end());
  }
  return true;
}

/// What the base sees of the outer sides, and which of their ends lie within its directions.
void SweptView::rootsOf(const SightWalk::Source& source) {
  const Side* sides = triangles_->sides();
  const Point* corners = triangles_->corners();
  const auto within = [&](Vec d) { return cross(source.right, d) > 0 && cross(d, source.left) > 0; };
  roots_.clear();
  for (const std::int32_t s : border_) {
    const Point a = corners[sides[s].origin], b = corners[sides[s].end];
    const Vec right = a - source.apex, left = b - source.apex;
    const bool rightEnd = within(right), leftEnd = within(left);
    const bool outward = cross(right, left) > 0;
    const bool crossed =
        outward && (rightEnd || leftEnd || (cross(right, source.right) >= 0 && cross(source.right, left) > 0));
    if (!crossed && !rightEnd && !leftEnd) continue;
    const bool rightBeyond = beyondWay(source, a), leftBeyond = beyondWay(source, b);
    if (!rightBeyond && !leftBeyond) continue;
    Root root{s, rightEnd ? right : source.right, leftEnd ? left : source.left, crossed, rightEnd, leftEnd};
    if (crossed && rightBeyond != leftBeyond) {
      const Vec middle = root.right / length(root.right) + root.left / length(root.left);
      const double r = -cross(middle, right), l = cross(middle, left);
      root.base = r + l > 0 && beyondWay(source, a + (b - a) * std::clamp(r / (r + l), 0.0, 1.0));
    }
    roots_.push_back(root);
  }
}

/// Puts the roots in order from right to left. False when they do not follow each other without gap or overlap.
bool SweptView::inLine() {
  const Side* sides = triangles_->sides();
  const auto first = std::find_if(roots_.begin(), roots_.end(), [](const Root& r) { return r.base && !r.rightEnd; });
  if (first == roots_.end()) return false;
  std::iter_swap(roots_.begin(), first);
  for (std::size_t i = 0; i + 1 < roots_.size(); ++i) {
    if (!roots_[i].leftEnd) return false;
    const auto next = std::find_if(
        roots_.begin() + static_cast<std::ptrdiff_t>(i) + 1, roots_.end(),
        [&](const Root& r) { return r.base && r.rightEnd && sides[r.side].origin == sides[roots_[i].side].end; });
    if (next == roots_.end()) return false;
    std::iter_swap(roots_.begin() + static_cast<std::ptrdiff_t>(i) + 1, next);
  }
  return !roots_.back().leftEnd;
}

void SweptView::addSlices(const SightWalk::Source& source, SweptRegion& out) {
  const Side* sides = triangles_->sides();
  const Point* corners = triangles_->corners();
  rootsOf(source);
  walk_.begin(source, out);
  for (const std::int32_t t : stay_) {
    RegionSlice piece;
    piece.corners = 3;
    for (int i = 0; i < 3; ++i) piece.corner[static_cast<std::size_t>(i)] = corners[sides[3 * t + i].origin];
    cut(piece, source.apex, source.right);
    cut(piece, source.apex, -source.left);
    if (source.nearRight != source.nearLeft) cut(piece, source.nearRight, source.nearRight - source.nearLeft);
    walk_.addPiece({piece.corner.data(), static_cast<std::size_t>(piece.corners)});
  }
  for (const Root& root : roots_) {
    if (root.base)
      walk_.addAsSlices(root.side, root.right, root.left, root.rightEnd, root.leftEnd);
    else
      walk_.noteEnds(root.side, root.rightEnd, root.leftEnd);
  }
  walk_.addSlices();
}

void SweptView::of(const SweptStep& step, SweptRegion& out) {
  out.clear();
  const Sweep sweep = sweepOf(step);
  const int parts = static_cast<int>(std::ceil(sweep.width() / kWidest));
  const auto part = [&](int i) {
    const double share = sweep.width() / parts;
    return sourceOf(step, {sweep.right + i * share, sweep.right + (i + 1) * share});
  };
  if (!stay(part(0))) return out.slices.push_back(whole(triangles_->box()));
  if (parts > 1 && !part(0).still) {
    for (int i = 0; i < parts; ++i) addSlices(part(i), out);
    return;
  }
  // Parts seen from one place make one ring.
  for (int i = 0; i < parts; ++i) {
    const SightWalk::Source source = part(i);
    if (i == 0) walk_.begin(source, out);
    rootsOf(source);
    if (!inLine()) {
      out.clear();
      for (i = 0; i < parts; ++i) addSlices(part(i), out);
      return;
    }
    for (const Root& root : roots_) walk_.addToRing(root.side, root.right, root.left, root.rightEnd, root.leftEnd);
  }
  walk_.closeRing(sweep.width() > kTurn - 1e-12);
  walk_.addSlices();
}

void keepFront(SweptRegion& region, geometry::Segment line) {
  const Vec along = line.b - line.a;
  std::vector<RegionEdge> kept;
  // Where a ring leaves the front and comes back, an edge on the line joins it.
  std::optional<Point> wayOut, wayIn;
  const auto endRing = [&] {
    if (wayOut && wayIn) kept.push_back({*wayOut, *wayIn});
    wayOut = wayIn = std::nullopt;
  };
  for (std::size_t i = 0; i < region.ring.size(); ++i) {
    const RegionEdge edge = region.ring[i];
    if (i > 0 && edge.a != region.ring[i - 1].b) endRing();
    const double a = cross(along, edge.a - line.a), b = cross(along, edge.b - line.a);
    if (a < 0 && b < 0) continue;
    const Point on = (a < 0) == (b < 0) ? edge.b : lerp(edge.a, edge.b, a / (a - b));
    if (a < 0) {
      if (wayOut) {
        kept.push_back({*wayOut, on});
        wayOut = std::nullopt;
      } else {
        wayIn = on;
      }
    }
    const bool onWall = edge.onWall && std::max(a, b) > Triangulation::kJoin * length(along);
    kept.push_back({a < 0 ? on : edge.a, b < 0 ? on : edge.b, edge.widened, onWall});
    if (b < 0) wayOut = on;
  }
  endRing();
  region.ring = std::move(kept);
  for (RegionSlice& slice : region.slices) cut(slice, line.a, along);
  std::erase_if(region.slices, [](const RegionSlice& slice) { return slice.corners < 3; });
}

}  // namespace wend::sight
