#include "core/sight/triangulation.h"

#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "core/sight/triangle_mesh.h"

namespace wend::sight {

namespace {

using geometry::Extent;
using geometry::Segment;

constexpr double kFinest = 1.0 / 16384;  // metres
constexpr double kMost = 1 << 25;        // lattice units

Extent holding(Extent box, std::span<const Segment> walls) {
  for (const Segment& wall : walls)
    for (const Point p : {wall.a, wall.b})
      box = {{std::min(box.low.x, p.x - 1), std::min(box.low.y, p.y - 1)},
             {std::max(box.high.x, p.x + 1), std::max(box.high.y, p.y + 1)}};
  return {{std::floor(box.low.x), std::floor(box.low.y)}, {std::ceil(box.high.x), std::ceil(box.high.y)}};
}

double unitFor(const Extent& box) {
  const double most = std::max({-box.low.x, -box.low.y, box.high.x, box.high.y, 1.0}) + 1;
  double unit = kFinest;
  while (most / unit > kMost) unit *= 2;
  return unit;
}

/// Wall ends as corners of the mesh, near ones joined.
class Ends {
 public:
  Ends(double unit, TriangleMesh& mesh) : unit_(unit), mesh_(mesh), reach_(Triangulation::kJoin / unit) {}

  int cornerAt(Point p) {
    const LatticePoint at{std::llround(p.x / unit_), std::llround(p.y / unit_)};
    const std::int64_t cell = std::max<std::int64_t>(1, std::llround(reach_)), column = at.x / cell, row = at.y / cell;
    for (std::int64_t i = column - 1; i <= column + 1; ++i)
      for (std::int64_t j = row - 1; j <= row + 1; ++j) {
        const auto [first, last] = cells_.equal_range(key(i, j));
        for (auto it = first; it != last; ++it)
          if (near(mesh_.corners()[static_cast<std::size_t>(it->second)], at)) return it->second;
      }
    const int corner = mesh_.cornerAt(at);
    cells_.emplace(key(column, row), corner);
    all_.push_back(corner);
    return corner;
  }

  /// The ends that the straight way from corner a to corner b runs through, in order, a and b included.
  std::vector<int> along(int a, int b) {
    sort();
    const LatticePoint p = at(a), q = at(b);
    const double dx = static_cast<double>(q.x - p.x), dy = static_cast<double>(q.y - p.y), d = std::hypot(dx, dy);
    std::vector<std::pair<double, int>> through{{0, a}, {d, b}};
    const double low = static_cast<double>(std::min(p.x, q.x)) - reach_;
    const double high = static_cast<double>(std::max(p.x, q.x)) + reach_;
    for (auto it = std::lower_bound(byX_.begin(), byX_.end(), std::pair{low, -1}); it != byX_.end(); ++it) {
      if (it->first > high) break;
      const LatticePoint c = at(it->second);
      const double cx = static_cast<double>(c.x - p.x), cy = static_cast<double>(c.y - p.y);
      const double share = (cx * dx + cy * dy) / d;
      if (std::abs(cx * dy - cy * dx) > reach_ * d || share <= 0 || share >= d) continue;
      if (it->second != a && it->second != b) through.emplace_back(share, it->second);
    }
    std::sort(through.begin(), through.end());
    std::vector<int> corners;
    for (const auto& [share, corner] : through) corners.push_back(corner);
    return corners;
  }

 private:
  static std::uint64_t key(std::int64_t column, std::int64_t row) {
    return static_cast<std::uint64_t>(column) * 0x9E3779B97F4A7C15u + static_cast<std::uint64_t>(row);
  }
  LatticePoint at(int corner) const { return mesh_.corners()[static_cast<std::size_t>(corner)]; }
  bool near(LatticePoint p, LatticePoint q) const {
    return std::hypot(static_cast<double>(p.x - q.x), static_cast<double>(p.y - q.y)) < std::max(reach_, 0.5);
  }
  void sort() {
    if (byX_.size() == all_.size()) return;
    byX_.clear();
    for (const int corner : all_) byX_.emplace_back(static_cast<double>(at(corner).x), corner);
    std::sort(byX_.begin(), byX_.end());
  }

  double unit_;
  TriangleMesh& mesh_;
  double reach_;
  std::unordered_multimap<std::uint64_t, int> cells_;
  std::vector<int> all_;
  std::vector<std::pair<double, int>> byX_;
};

/// The mesh's sides without the numbers that are free, and with what a view needs at each.
std::vector<Triangulation::Side> sidesOf(const TriangleMesh& mesh) {
  std::vector<int> number(static_cast<std::size_t>(mesh.triangles()), -1);
  int count = 0;
  for (int t = 0; t < mesh.triangles(); ++t)
    if (mesh.stands(t)) number[static_cast<std::size_t>(t)] = count++;
  const auto renumbered = [&](int side) {
    return side < 0 ? -1 : 3 * number[static_cast<std::size_t>(side / 3)] + side % 3;
  };
  std::vector<Triangulation::Side> sides;
  for (int s = 0; s < 3 * mesh.triangles(); ++s) {
    if (!mesh.stands(s / 3)) continue;
    Triangulation::Side& side = sides.emplace_back();
    const int twin = mesh.twin(s);
    side.origin = mesh.origin(s);
    side.end = mesh.origin(TriangleMesh::next(s));
    side.twin = renumbered(twin);
    side.wall = mesh.wall(s);
    if (side.wall >= 0) continue;
    side.apex = mesh.origin(TriangleMesh::before(twin));
    side.right = renumbered(TriangleMesh::next(twin));
    side.left = renumbered(TriangleMesh::before(twin));
  }
  return sides;
}

}  // namespace

Triangulation::Triangulation(std::span<const Segment> walls, Extent box) : box_(holding(box, walls)) {
  const double unit = unitFor(box_);
  const auto lattice = [unit](Point p) { return LatticePoint{std::llround(p.x / unit), std::llround(p.y / unit)}; };
  TriangleMesh mesh(lattice(box_.low), lattice(box_.high), static_cast<int>(walls.size()));
  Ends ends(unit, mesh);
  std::vector<std::pair<int, int>> ways;
  for (const Segment& wall : walls) {
    const int a = ends.cornerAt(wall.a);
    ways.emplace_back(a, ends.cornerAt(wall.b));
  }
  for (std::size_t i = 0; i < ways.size(); ++i) {
    if (ways[i].first == ways[i].second) continue;
    const std::vector<int> through = ends.along(ways[i].first, ways[i].second);
    for (std::size_t k = 1; k < through.size(); ++k) {
      int budget = 1000 + 8 * static_cast<int>(walls.size());
      if (!mesh.close(through[k - 1], through[k], static_cast<int>(i), budget)) ++unsettled_;
    }
  }
  sides_ = sidesOf(mesh);
  for (const LatticePoint p : mesh.corners())
    corners_.push_back({static_cast<double>(p.x) * unit, static_cast<double>(p.y) * unit});
}

int Triangulation::triangleAt(Point p, int near) const {
  if (p.x < box_.low.x || p.y < box_.low.y || p.x > box_.high.x || p.y > box_.high.y) return -1;
  const auto turn = [&](int s) {
    const Side& side = sides_[static_cast<std::size_t>(s)];
    const Point a = corners_[static_cast<std::size_t>(side.origin)], b = corners_[static_cast<std::size_t>(side.end)];
    return cross(b - a, p - a);
  };
  int triangle = near;
  for (std::size_t steps = 0; steps < triangles() + 8; ++steps) {
    int side = 3 * triangle + static_cast<int>(steps % 3), looked = 0;
    while (looked < 3 && turn(side) >= 0) side = side % 3 == 2 ? side - 2 : side + 1, ++looked;
    const int beyond = looked == 3 ? -1 : sides_[static_cast<std::size_t>(side)].twin;
    if (beyond < 0) return triangle;
    triangle = beyond / 3;
  }
  // Going round in circles: the triangle that p is least outside of.
  int best = 0;
  double least = -HUGE_VAL;
  for (int t = 0; t < static_cast<int>(triangles()); ++t) {
    const double inside = std::min({turn(3 * t), turn(3 * t + 1), turn(3 * t + 2)});
    if (inside > least) least = inside, best = t;
  }
  return best;
}

}  // namespace wend::sight
