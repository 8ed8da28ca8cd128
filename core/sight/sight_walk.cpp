#include "core/sight/sight_walk.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace wend::sight {

namespace {

/// Directions this near are one, in radians or somewhat less; well under kSliver, well over rounding.
constexpr double kOne = geometry::kSliver / 10;

double span(Vec v) {
  return std::abs(v.x) + std::abs(v.y);
}

/// Where the ray meets the side, for a ray that passes between its ends; an end when rounding puts it outside.
Point meet(Point apex, Vec ray, Point right, Point left, Point otherwise) {
  const double r = -cross(ray, right - apex), l = cross(ray, left - apex);
  if (!(r + l > 0)) return otherwise;
  if (r <= 0) return right;
  if (l <= 0) return left;
  return right + (left - right) * (r / (r + l));
}

/// Whether the way from the edge's end to p only makes the edge longer.
bool goesOn(const RegionEdge& edge, Point p) {
  const Vec before = edge.b - edge.a, after = p - edge.b;
  return std::abs(cross(before, after)) <= kOne * span(before) * span(after) && dot(before, after) > 0;
}

/// v turned by the angle under which `radius` is seen at its length: left for a positive radius.
Vec turnedPast(Vec v, double radius) {
  const double squared = dot(v, v), side = std::sqrt(std::max(0.0, squared - radius * radius));
  return v * side + geometry::left(v) * radius;
}

}  // namespace

void SightWalk::begin(const Source& source, SweptRegion& out) {
  source_ = source;
  out_ = &out;
  slices_.clear();
  begun_ = afterLeaf_ = false;
  lastSlice_ = -1;
}

Vec SightWalk::leftmost(Point at, Vec along, std::int32_t rightCorner) const {
  Vec most = along;
  for (const Point place : {source_.from, source_.until}) {
    Vec v = at - place;
    if (source_.sway > 0) {
      if (dot(v, v) <= source_.sway * source_.sway) {
        most = source_.left;
        break;
      }
      v = turnedPast(v, source_.sway);
    }
    if (cross(most, v) > 0) most = v;
  }
  if (cross(source_.left, most) > 0) most = source_.left;
  if (rightCorner >= 0) {
    const Vec v = at - corner(rightCorner);
    if (cross(v, most) > 0) most = v;
  }
  return most;
}

Vec SightWalk::rightmost(Point at, Vec along, std::int32_t leftCorner) const {
  Vec most = along;
  for (const Point place : {source_.from, source_.until}) {
    Vec v = at - place;
    if (source_.sway > 0) {
      if (dot(v, v) <= source_.sway * source_.sway) {
        most = source_.right;
        break;
      }
      v = turnedPast(v, -source_.sway);
    }
    if (cross(v, most) > 0) most = v;
  }
  if (cross(most, source_.right) > 0) most = source_.right;
  if (leftCorner >= 0) {
    const Vec v = at - corner(leftCorner);
    if (cross(most, v) > 0) most = v;
  }
  return most;
}

std::int32_t SightWalk::noteLeft(const Fan& fan, std::int32_t at, std::int32_t through, Vec along) {
  if (source_.still || fan.kind == Kind::pastRight) return -1;
  const Point tip = corner(at);
  // Round the corner as far as the ray that is already seen; most often a wall at the corner itself is met.
  while (sides_[through].apex >= 0 && cross(along, corner(sides_[through].apex) - tip) < 0)
    through = sides_[through].left;
  if (sides_[through].apex < 0) return -1;
  const Vec most = leftmost(tip, along, fan.rightCorner);
  if (cross(along, most) <= kOne * span(along) * span(most)) return -1;
  slices_.push_back({{through, fan.rightCorner, at, at, -1, -1, -1, tip, along, most, Kind::pastLeft, true}, -1, {}});
  return static_cast<std::int32_t>(slices_.size()) - 1;
}

std::int32_t SightWalk::noteRight(const Fan& fan, std::int32_t at, std::int32_t through, Vec along) {
  if (source_.still || fan.kind == Kind::pastLeft) return -1;
  const Point tip = corner(at);
  while (sides_[through].apex >= 0 && cross(corner(sides_[through].apex) - tip, along) < 0)
    through = sides_[through].right;
  if (sides_[through].apex < 0) return -1;
  const Vec most = rightmost(tip, along, fan.leftCorner);
  if (cross(most, along) <= kOne * span(along) * span(most)) return -1;
  slices_.push_back({{through, at, fan.leftCorner, -1, at, -1, -1, tip, most, along, Kind::pastRight, true}, -1, {}});
  return static_cast<std::int32_t>(slices_.size()) - 1;
}

/// Goes on through one side of the triangle beyond, and puts the other aside when the fan goes through both.
void SightWalk::fork(Fan& fan, const Triangulation::Side& side, Vec toApex, bool toRight, bool toLeft) {
  const std::int32_t apex = side.apex;
  // Both ways are noted before either changes what the other needs of the fan.
  const std::int32_t pastRight = toLeft ? noteRight(fan, apex, side.left, toApex) : -1;
  const std::int32_t pastLeft = toRight ? noteLeft(fan, apex, side.right, toApex) : -1;
  if (toLeft) {
    Fan other = fan;
    other.side = side.left;
    other.rightCorner = other.rightAt = apex;
    other.rightSlice = pastRight;
    if (toRight) {
      other.right = toApex;
      other.window = fan.window && fan.kind == Kind::pastRight;
      stack_.push_back(other);
    } else {
      fan = other;
    }
  }
  if (!toRight) return;
  fan.side = side.right;
  fan.leftCorner = fan.leftAt = apex;
  fan.leftSlice = pastLeft;
  if (!toLeft) return;
  fan.left = toApex;
  fan.window = fan.window && fan.kind == Kind::pastLeft;
}

/// The first side, from the fan's own on, that is a wall or has its far corner between the fan's directions.
std::int32_t SightWalk::sideReached(const Fan& fan) const {
  const double right = kOne * span(fan.right), left = kOne * span(fan.left);
  for (std::int32_t at = fan.side;;) {
    const Triangulation::Side& side = sides_[at];
    if (side.apex < 0) return at;
    const Vec d = corner(side.apex) - fan.apex;
    const double reach = span(d);
    if (cross(fan.right, d) < -right * reach)
      at = side.left;
    else if (cross(d, fan.left) < -left * reach)
      at = side.right;
    else
      return at;
  }
}

template <class Leaf>
void SightWalk::walk(Fan fan, Leaf leaf) {
  const std::size_t floor = stack_.size();
  while (true) {
    fan.side = sideReached(fan);
    const Triangulation::Side& side = sides_[fan.side];
    if (side.apex < 0) {
      leaf(fan);
    } else {
      const Vec d = corner(side.apex) - fan.apex;
      const double reach = kOne * span(d);
      const bool toRight = cross(fan.right, d) > reach * span(fan.right);
      const bool toLeft = cross(d, fan.left) > reach * span(fan.left);
      if (toRight || toLeft) {
        fork(fan, side, d, toRight, toLeft);
        continue;
      }
    }
    if (stack_.size() == floor) return;
    fan = stack_.back();
    stack_.pop_back();
  }
}

Point SightWalk::rightHit(const Fan& fan) const {
  const Triangulation::Side& side = sides_[fan.side];
  if (side.origin == fan.rightAt) return corner(side.origin);
  return meet(fan.apex, fan.right, corner(side.origin), corner(side.end), corner(side.origin));
}

Point SightWalk::leftHit(const Fan& fan) const {
  const Triangulation::Side& side = sides_[fan.side];
  if (side.end == fan.leftAt) return corner(side.end);
  return meet(fan.apex, fan.left, corner(side.origin), corner(side.end), corner(side.end));
}

/// The edge between two leaves lies along a ray and hides ground on the side of its nearer end; the slice there has the
/// edge for its own when it begins no further out.
void SightWalk::noteWindow(const Fan& fan, Point right) {
  const auto squared = [&](Point p) { return dot(p - fan.apex, p - fan.apex); };
  const bool pastLeft = squared(last_) > squared(right);
  const std::int32_t i = pastLeft ? lastSlice_ : fan.rightSlice;
  if (i < 0) return;
  Slice& slice = slices_[static_cast<std::size_t>(i)];
  if (squared(slice.fan.apex) > squared(pastLeft ? right : last_) * (1 + kOne)) return;
  slice.edge = static_cast<std::int32_t>(out_->ring.size());
  slice.far = pastLeft ? last_ : right;
}

void SightWalk::addRingLeaf(const Fan& fan) {
  const Point right = rightHit(fan), left = leftHit(fan);
  if (!begun_) {
    begun_ = true;
    first_ = right;
  } else if (last_ != right) {
    noteWindow(fan, right);
    out_->ring.push_back({last_, right});
    afterLeaf_ = false;
  }
  if (right != left) {
    const bool onWall = sides_[fan.side].twin >= 0;
    if (afterLeaf_ && out_->ring.back().onWall == onWall && goesOn(out_->ring.back(), left))
      out_->ring.back().b = left;
    else
      out_->ring.push_back({right, left, true, onWall});
    afterLeaf_ = true;
  }
  last_ = left;
  lastSlice_ = fan.leftSlice;
}

void SightWalk::addPiece(std::span<const Point> corners) {
  RegionSlice piece;
  const auto apart = [&](int i, Point p) { return span(p - piece.corner[static_cast<std::size_t>(i)]) > kOne; };
  for (const Point p : corners)
    if (piece.corners == 0 || apart(piece.corners - 1, p)) piece.corner[static_cast<std::size_t>(piece.corners++)] = p;
  while (piece.corners > 1 && !apart(piece.corners - 1, piece.corner[0])) --piece.corners;
  if (piece.corners > 2) out_->slices.push_back(piece);
}

void SightWalk::addSliceLeaf(const Slice& slice, const Fan& fan) {
  const Point right = rightHit(fan), left = leftHit(fan);
  if (fan.window && slice.edge >= 0) {
    const Point there = fan.kind == Kind::pastLeft ? right : left;
    if (span(there - slice.far) < geometry::kTouch / 100)
      out_->ring[static_cast<std::size_t>(slice.edge)].widened = false;
  }
  if (cross(right - fan.apex, left - fan.apex) > 0) addPiece(std::array{fan.apex, right, left});
}

SightWalk::Fan SightWalk::rooted(std::int32_t side, Vec right, Vec left, bool rightEnd, bool leftEnd) {
  const std::int32_t atRight = rightEnd ? sides_[side].origin : -1, atLeft = leftEnd ? sides_[side].end : -1;
  Fan fan{side, atRight, atLeft, atRight, atLeft, -1, -1, source_.apex, right, left, Kind::base, false};
  if (rightEnd) fan.rightSlice = noteRight(fan, atRight, side, corner(atRight) - source_.apex);
  if (leftEnd) fan.leftSlice = noteLeft(fan, atLeft, side, corner(atLeft) - source_.apex);
  return fan;
}

void SightWalk::addToRing(std::int32_t side, Vec right, Vec left, bool rightEnd, bool leftEnd) {
  walk(rooted(side, right, left, rightEnd, leftEnd), [this](const Fan& fan) { addRingLeaf(fan); });
}

void SightWalk::addAsSlices(std::int32_t side, Vec right, Vec left, bool rightEnd, bool leftEnd) {
  const Point a = corner(sides_[side].origin), b = corner(sides_[side].end);
  walk(rooted(side, right, left, rightEnd, leftEnd), [&](const Fan& fan) {
    addPiece(
        std::array{meet(fan.apex, fan.right, a, b, a), rightHit(fan), leftHit(fan), meet(fan.apex, fan.left, a, b, b)});
  });
}

void SightWalk::noteEnds(std::int32_t side, bool rightEnd, bool leftEnd) {
  const std::int32_t a = sides_[side].origin, b = sides_[side].end;
  const Vec across = corner(b) - corner(a);
  Fan fan{side, a, b, a, b, -1, -1, source_.apex, {}, {}, Kind::base, false};
  // Seen from beyond, an end lies in a direction that does not lead out through the side.
  const Vec toRight = corner(a) - source_.apex, toLeft = corner(b) - source_.apex;
  if (rightEnd) noteRight(fan, a, side, cross(across, toRight) < 0 ? toRight : across);
  if (leftEnd) noteLeft(fan, b, side, cross(across, toLeft) < 0 ? toLeft : -across);
}

void SightWalk::closeRing(bool allRound) {
  if (!begun_) return;
  const auto join = [this](Point to) {
    if (last_ != to) out_->ring.push_back({last_, to});
    last_ = to;
  };
  if (!allRound) {
    join(source_.nearLeft);
    join(source_.nearRight);
  }
  join(first_);
}

void SightWalk::addSlices() {
  for (std::size_t i = 0; i < slices_.size(); ++i) {
    const Slice slice = slices_[i];
    walk(slice.fan, [&](const Fan& fan) { addSliceLeaf(slice, fan); });
  }
}

}  // namespace wend::sight
