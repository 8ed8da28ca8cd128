#include "core/sight/triangle_mesh.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"

namespace wend::sight {

TriangleMesh::TriangleMesh(LatticePoint low, LatticePoint high, int wall)
    : corners_{low, {high.x, low.y}, high, {low.x, high.y}}, touching_(4) {
  const int a = newTriangle(), b = newTriangle();
  setTriangle(a, 0, 1, 2);
  setTriangle(b, 2, 3, 0);
  link(2, {3 * b + 2, -1});
  for (const int side : {0, 1, 3, 4}) wall_[at(side)] = wall;
}

int TriangleMesh::newTriangle() {
  if (!free_.empty()) {
    const int triangle = free_.back();
    free_.pop_back();
    return triangle;
  }
  origin_.resize(origin_.size() + 3);
  twin_.resize(twin_.size() + 3, -1);
  wall_.resize(wall_.size() + 3, -1);
  return triangles() - 1;
}

void TriangleMesh::setTriangle(int triangle, int a, int b, int c) {
  int side = 3 * triangle;
  for (const int corner : {a, b, c}) {
    touching_[at(corner)] = side;
    twin_[at(side)] = wall_[at(side)] = -1;
    origin_[at(side++)] = corner;
  }
}

void TriangleMesh::link(int side, Beyond other) {
  twin_[at(side)] = other.side;
  wall_[at(side)] = other.wall;
  if (other.side < 0) return;
  twin_[at(other.side)] = side;
  wall_[at(other.side)] = other.wall;
}

void TriangleMesh::setWall(int side, int wall) {
  link(side, {twin(side), wall});
}

bool TriangleMesh::holds(int triangle, LatticePoint p) const {
  for (int side = 3 * triangle; side < 3 * triangle + 3; ++side)
    if (doubleArea(from(side), to(side), p) < 0) return false;
  return true;
}

int TriangleMesh::triangleAt(LatticePoint p) const {
  // Walking towards p goes round in circles only where walls forbid Delaunay triangles; then every one is looked at.
  int triangle = last_;
  for (int steps = 0; steps < triangles() + 8; ++steps) {
    int side = 3 * triangle + steps % 3, turns = 0;
    while (turns < 3 && doubleArea(from(side), to(side), p) >= 0) side = next(side), ++turns;
    if (turns == 3) return triangle;
    triangle = twin(side) / 3;
  }
  for (triangle = 0; triangle < triangles(); ++triangle)
    if (stands(triangle) && holds(triangle, p)) return triangle;
  WEND_CHECK(false);
  return -1;
}

int TriangleMesh::cornerAt(LatticePoint p) {
  const int triangle = last_ = triangleAt(p);
  for (int side = 3 * triangle; side < 3 * triangle + 3; ++side)
    if (from(side) == p) return origin(side);
  const int corner = static_cast<int>(corners_.size());
  corners_.push_back(p);
  touching_.push_back(-1);
  for (int side = 3 * triangle; side < 3 * triangle + 3; ++side) {
    if (doubleArea(from(side), to(side), p) != 0) continue;
    splitSide(side, corner);
    return corner;
  }
  splitTriangle(triangle, corner);
  return corner;
}

void TriangleMesh::splitTriangle(int triangle, int corner) {
  const int s = 3 * triangle, a = origin(s), b = origin(s + 1), c = origin(s + 2);
  const Beyond ab = beyond(s), bc = beyond(s + 1), ca = beyond(s + 2);
  const int t1 = newTriangle(), t2 = newTriangle();
  setTriangle(triangle, a, b, corner);
  setTriangle(t1, b, c, corner);
  setTriangle(t2, c, a, corner);
  link(s, ab), link(3 * t1, bc), link(3 * t2, ca);
  link(s + 1, {3 * t1 + 2, -1}), link(3 * t1 + 1, {3 * t2 + 2, -1}), link(3 * t2 + 1, {s + 2, -1});
  std::vector<int> doubtful{s, 3 * t1, 3 * t2};
  settle(doubtful);
}

void TriangleMesh::splitSide(int side, int corner) {
  const int other = twin(side), a = origin(side), b = origin(next(side)), c = origin(before(side)), w = wall(side);
  const Beyond bc = beyond(next(side)), ca = beyond(before(side));
  const int d = other < 0 ? -1 : origin(before(other));
  const Beyond ad = other < 0 ? Beyond{-1, -1} : beyond(next(other));
  const Beyond db = other < 0 ? Beyond{-1, -1} : beyond(before(other));
  const int t0 = side / 3, t1 = newTriangle();
  setTriangle(t0, c, a, corner);
  setTriangle(t1, b, c, corner);
  link(3 * t0, ca), link(3 * t1, bc), link(3 * t0 + 2, {3 * t1 + 1, -1});
  wall_[at(3 * t0 + 1)] = wall_[at(3 * t1 + 2)] = w;
  std::vector<int> doubtful{3 * t0, 3 * t1};
  if (other >= 0) {
    const int u0 = other / 3, u1 = newTriangle();
    setTriangle(u0, a, d, corner);
    setTriangle(u1, d, b, corner);
    link(3 * u0, ad), link(3 * u1, db), link(3 * u0 + 1, {3 * u1 + 2, -1});
    link(3 * u0 + 2, {3 * t0 + 1, w}), link(3 * u1 + 1, {3 * t1 + 2, w});
    doubtful.insert(doubtful.end(), {3 * u0, 3 * u1});
  }
  settle(doubtful);
}

void TriangleMesh::settle(std::vector<int>& doubtful) {
  while (!doubtful.empty()) {
    const int side = doubtful.back();
    doubtful.pop_back();
    const int other = twin(side);
    if (!flipIfBetter(side)) continue;
    // The four sides around the new diagonal.
    for (const int diagonal : {side, other}) doubtful.insert(doubtful.end(), {next(diagonal), before(diagonal)});
  }
}

bool TriangleMesh::flipIfBetter(int side) {
  const int other = twin(side);
  if (other < 0 || wall(side) >= 0) return false;
  const int a = origin(side), b = origin(other), c = origin(before(side)), d = origin(before(other));
  if (!insideCircle(pointOf(a), pointOf(b), pointOf(c), pointOf(d))) return false;
  const Beyond bc = beyond(next(side)), ca = beyond(before(side));
  const Beyond ad = beyond(next(other)), db = beyond(before(other));
  const int t = side / 3, u = other / 3;
  // `side` and `other` keep their numbers as the two faces of the new diagonal.
  const auto place = [this](int triangle, int first, int p, int q, int r) {
    origin_[at(first)] = p, origin_[at(next(first))] = q, origin_[at(before(first))] = r;
    touching_[at(p)] = first, touching_[at(q)] = next(first), touching_[at(r)] = before(first);
    for (int s = 3 * triangle; s < 3 * triangle + 3; ++s) wall_[at(s)] = -1;
  };
  place(t, side, d, c, a);
  place(u, other, c, d, b);
  link(side, {other, -1});
  link(next(side), ca), link(before(side), ad), link(next(other), db), link(before(other), bc);
  return true;
}

bool TriangleMesh::close(int a, int b, int wall, int& budget) {
  ways_.push_back({a, b, wall});
  while (!ways_.empty()) {
    if (--budget < 0) {
      ways_.clear();
      return false;
    }
    const Way way = ways_.back();
    ways_.pop_back();
    if (way.a != way.b) closeStretch(way);
  }
  return true;
}

/// The side of a triangle at `a` that the way to b crosses; or -1 and, in `onWay`, the side from a that runs along it.
int TriangleMesh::sideToward(int a, LatticePoint b, int& onWay) const {
  const LatticePoint p = pointOf(a);
  const auto ahead = [&](LatticePoint q) { return (q.x - p.x) * (b.x - p.x) + (q.y - p.y) * (b.y - p.y) > 0; };
  const auto judge = [&](int side) {
    const LatticePoint q = to(side), r = from(before(side));
    const std::int64_t right = doubleArea(p, b, q), left = doubleArea(p, b, r);
    if (right == 0 && ahead(q)) onWay = side;
    if (left == 0 && ahead(r)) onWay = before(side);
    return right < 0 && left > 0 ? next(side) : -1;
  };
  // Round a counter-clockwise, and back the other way when the box ends it.
  const int first = touching_[at(a)];
  for (int side = first; side >= 0;) {
    const int crossed = judge(side);
    if (crossed >= 0 || onWay >= 0) return crossed;
    side = twin(before(side));
    if (side == first) return -1;
  }
  for (int side = twin(first); side >= 0; side = twin(next(side))) {
    const int crossed = judge(next(side));
    if (crossed >= 0 || onWay >= 0) return crossed;
  }
  return -1;
}

/// Closes the way up to the first corner on it; what is left of it, or what it turns into, is queued.
void TriangleMesh::closeStretch(Way way) {
  const LatticePoint p = pointOf(way.a), q = pointOf(way.b);
  int onWay = -1;
  const int first = sideToward(way.a, q, onWay);
  if (onWay >= 0) {
    const int end = origin(onWay) == way.a ? origin(next(onWay)) : origin(onWay);
    setWall(onWay, way.wall);
    ways_.push_back({end, way.b, way.wall});
    return;
  }
  WEND_CHECK(first >= 0);
  int side = first, end = -1;
  while (end < 0) {
    if (wall(side) >= 0) {
      meetWall(way, side);
      return;
    }
    const int other = twin(side), apex = origin(before(other));
    const std::int64_t turn = doubleArea(p, q, pointOf(apex));
    if (turn == 0)
      end = apex;
    else
      side = turn > 0 ? next(other) : before(other);
  }
  openUp(way, first, end);
  ways_.push_back({end, way.b, way.wall});
}

/// The way meets another wall: both run on through one corner, the crossing rounded to the lattice.
void TriangleMesh::meetWall(Way way, int side) {
  const int c = origin(side), d = origin(next(side)), other = wall(side);
  const LatticePoint a = pointOf(way.a), b = pointOf(way.b), p = pointOf(c), q = pointOf(d);
  const double before = static_cast<double>(doubleArea(p, q, a)), behind = static_cast<double>(doubleArea(p, q, b));
  const double share = before / (before - behind);
  const LatticePoint x{a.x + std::llround(static_cast<double>(b.x - a.x) * share),
                       a.y + std::llround(static_cast<double>(b.y - a.y) * share)};
  if (x == p || x == q) {
    const int through = x == p ? c : d;
    ways_.insert(ways_.end(), {{way.a, through, way.wall}, {through, way.b, way.wall}});
    return;
  }
  setWall(side, -1);
  const int through = cornerAt(x);
  ways_.insert(ways_.end(), {{c, through, other}, {through, d, other}});
  ways_.insert(ways_.end(), {{way.a, through, way.wall}, {through, way.b, way.wall}});
}

/// Takes out the triangles the way crosses up to corner `until`, and fills both sides of it anew.
void TriangleMesh::openUp(Way way, int first, int until) {
  const LatticePoint p = pointOf(way.a), q = pointOf(way.b);
  Chain left{{way.a, origin(next(first))}, {next(first)}}, right{{way.a, origin(first)}, {before(first)}};
  std::vector<int> gone{first / 3};
  for (int side = first, apex = -1; apex != until;) {
    const int other = twin(side);
    apex = origin(before(other));
    gone.push_back(other / 3);
    const bool toLeft = doubleArea(p, q, pointOf(apex)) > 0;
    if (toLeft || apex == until) left.corners.push_back(apex), left.sides.push_back(before(other));
    if (!toLeft || apex == until) right.corners.push_back(apex), right.sides.push_back(next(other));
    side = toLeft ? next(other) : before(other);
  }
  std::reverse(right.corners.begin(), right.corners.end());
  std::reverse(right.sides.begin(), right.sides.end());
  const Beyond above = fill(left, 0, left.sides.size());
  const Beyond below = fill(right, 0, right.sides.size());
  link(above.side, {below.side, way.wall});
  last_ = above.side / 3;
  // Not before: a side between two triangles that both go is joined up again through their old numbers.
  for (const int triangle : gone) origin_[at(3 * triangle)] = -1;
  free_.insert(free_.end(), gone.begin(), gone.end());
}

/// Triangles between the chain from `low` to `high` and the straight way between its ends; that way as a side.
TriangleMesh::Beyond TriangleMesh::fill(const Chain& chain, std::size_t low, std::size_t high) {
  if (high == low + 1) return beyond(chain.sides[low]);
  std::size_t best = low + 1;
  const LatticePoint a = pointOf(chain.corners[low]), b = pointOf(chain.corners[high]);
  for (std::size_t i = best + 1; i < high; ++i)
    if (insideCircle(a, b, pointOf(chain.corners[best]), pointOf(chain.corners[i]))) best = i;
  const int triangle = newTriangle();
  setTriangle(triangle, chain.corners[low], chain.corners[high], chain.corners[best]);
  link(3 * triangle + 1, fill(chain, best, high));
  link(3 * triangle + 2, fill(chain, low, best));
  return {3 * triangle, -1};
}

}  // namespace wend::sight
