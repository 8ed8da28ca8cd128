#include "core/crew/link.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/geometry/segment.h"
#include "core/geometry/tolerance.h"
#include "core/sight/ray.h"

namespace wend::crew {

namespace {

using geometry::Span;

constexpr double kFreeSpaceAtAKilometreAndMegahertz = 32.4;

/// The path as seen from above and from the side.
struct Path {
  Point3 a, b;
  Point from = flat(a), until = flat(b);
  double run = geometry::distance(from, until);

  /// The part of a stretch along the floor in which the path is within a span of heights; empty when from >= until.
  Span within(Span stretch, Span heights) const {
    const double rise = b.z - a.z;
    if (run <= geometry::kTouch || rise == 0) return heights.from < a.z && a.z < heights.until ? stretch : Span{0, 0};
    const double one = (heights.from - a.z) / rise * run, other = (heights.until - a.z) / rise * run;
    return {std::max(stretch.from, std::min(one, other)), std::min(stretch.until, std::max(one, other))};
  }
};

bool passes(Span span) {
  return span.until - span.from > geometry::kTouch;
}

/// Stretches of a wall that meet, as at a mitred corner, are one passage.
std::vector<int> passages(std::vector<std::pair<int, Span>> crossed) {
  std::sort(crossed.begin(), crossed.end(), [](const auto& one, const auto& other) {
    return std::pair(one.first, one.second.from) < std::pair(other.first, other.second.from);
  });
  std::vector<int> tags;
  double reached = 0;
  for (const auto& [tag, span] : crossed) {
    const bool goesOn = !tags.empty() && tags.back() == tag && span.from <= reached + geometry::kTouch;
    reached = goesOn ? std::max(reached, span.until) : span.until;
    if (!goesOn) tags.push_back(tag);
  }
  return tags;
}

std::vector<int> wallsOn(const sight::SceneAt& now, const Path& path) {
  std::vector<std::pair<int, Span>> crossed;
  if (path.run <= geometry::kTouch) return {};
  for (const auto& crossing : sight::crossingsAlong(now, path.from, geometry::unit(path.until - path.from), path.run)) {
    if (crossing.source.owner != sight::Owner::wall) continue;
    const Span stretch{std::max(0.0, crossing.box.near), std::min(path.run, crossing.box.far)};
    const Span inside = path.within(stretch, {crossing.box.bottom, crossing.box.top});
    if (passes(inside)) crossed.push_back({crossing.source.tag, inside});
  }
  return passages(std::move(crossed));
}

std::vector<int> leavesOn(const sight::SceneAt& now, const Path& path) {
  std::vector<int> tags;
  for (const auto& leaf : now.leaves()) {
    if (!leaf.hides && !leaf.inWay && !leaf.moving) continue;
    const auto share = geometry::whereMeet({path.from, path.until}, leaf.panel);
    if (!share || *share <= 0 || *share >= 1) continue;
    const double height = geometry::lerp(path.a.z, path.b.z, *share);
    if (leaf.bottom < height && height < leaf.top) tags.push_back(leaf.tag);
  }
  return tags;
}

bool passesThrough(const Path& path, const Body& body) {
  if (path.run <= geometry::kTouch) return false;
  const auto chord = geometry::chord(path.from, geometry::unit(path.until - path.from), body.at, body.radius);
  if (!chord) return false;
  return passes(path.within({chord->from, std::min(path.run, chord->until)}, {body.bottom, body.top}));
}

double sumOf(const std::vector<int>& tags, const LossOf& loss) {
  double sum = 0;
  for (const int tag : tags) sum += loss(tag);
  return sum;
}

}  // namespace

double freeSpaceLoss(double mhz, double metres) {
  const double kilometres = std::max(metres, kNearestMetres) / 1000;
  return kFreeSpaceAtAKilometreAndMegahertz + 20 * std::log10(mhz) + 20 * std::log10(kilometres);
}

double freeSpaceReach(double mhz, double budget) {
  return 1000 * std::pow(10, (budget - kFreeSpaceAtAKilometreAndMegahertz - 20 * std::log10(mhz)) / 20);
}

PathLoss pathLoss(const sight::SceneAt& now, Point3 a, Point3 b, double mhz, std::span<const Body> bodies,
                  const LossOf& ofWall, const LossOf& ofLeaf) {
  const Path path{a, b};
  PathLoss loss;
  loss.metres = geometry::distance(a, b);
  loss.freeSpace = freeSpaceLoss(mhz, loss.metres);
  loss.walls = wallsOn(now, path);
  loss.leaves = leavesOn(now, path);
  loss.bodies = static_cast<int>(
      std::count_if(bodies.begin(), bodies.end(), [&](const Body& body) { return passesThrough(path, body); }));
  loss.total = loss.freeSpace + sumOf(loss.walls, ofWall) + sumOf(loss.leaves, ofLeaf) + kBodyLoss * loss.bodies;
  return loss;
}

}  // namespace wend::crew
