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
using geometry::Vec;

constexpr double kFreeSpaceAtAKilometreAndMegahertz = 32.4;

/// The part of a stretch along the floor in which a path that rises from `from` to `until` over `run` metres is within
/// a span of heights; empty when from >= until.
Span within(Span stretch, Span heights, double from, double until, double run) {
  const double rise = until - from;
  if (rise == 0) return heights.from < from && from < heights.until ? stretch : Span{0, 0};
  const double one = (heights.from - from) / rise * run, other = (heights.until - from) / rise * run;
  return {std::max(stretch.from, std::min(one, other)), std::min(stretch.until, std::max(one, other))};
}

bool passes(Span span) {
  return span.until - span.from > geometry::kTouch;
}

void addWalls(const sight::SceneAt& now, Point from, Vec direction, double upTo, std::vector<LinkRay::Thing>& things) {
  for (const auto& crossing : sight::crossingsAlong(now, from, direction, upTo))
    if (crossing.source.owner == sight::Owner::wall)
      things.push_back({LinkRay::Kind::wall,
                        crossing.source.tag,
                        {std::max(0.0, crossing.box.near), crossing.box.far},
                        {crossing.box.bottom, crossing.box.top}});
  std::sort(things.begin(), things.end(), [](const auto& one, const auto& other) {
    return std::pair(one.tag, one.along.from) < std::pair(other.tag, other.along.from);
  });
}

void addLeaves(const sight::SceneAt& now, const geometry::Segment& way, double upTo,
               std::vector<LinkRay::Thing>& things) {
  for (const auto& leaf : now.leaves()) {
    if (!leaf.hides && !leaf.inWay && !leaf.moving) continue;
    const auto share = geometry::whereMeet(way, leaf.panel);
    if (!share || *share <= 0) continue;
    things.push_back({LinkRay::Kind::leaf, leaf.tag, {*share * upTo, *share * upTo}, {leaf.bottom, leaf.top}});
  }
}

}  // namespace

LinkRay::LinkRay(const sight::SceneAt& now, Point3 from, Vec direction, double upTo, std::span<const Body> bodies)
    : height_(from.z) {
  const Point foot = flat(from);
  addWalls(now, foot, direction, upTo, things_);
  addLeaves(now, {foot, foot + direction * upTo}, upTo, things_);
  for (const Body& body : bodies)
    if (const auto chord = geometry::chord(foot, direction, body.at, body.radius))
      things_.push_back({Kind::body, 0, *chord, {body.bottom, body.top}});
}

bool LinkRay::isPassed(const Thing& thing, double run, double height) const {
  if (thing.kind == Kind::leaf) {
    const double at = geometry::lerp(height_, height, thing.along.from / run);
    return thing.along.from < run && thing.heights.from < at && at < thing.heights.until;
  }
  return passes(insideOf(thing, run, height));
}

Span LinkRay::insideOf(const Thing& thing, double run, double height) const {
  return within({thing.along.from, std::min(run, thing.along.until)}, thing.heights, height_, height, run);
}

double freeSpaceLoss(double mhz, double metres) {
  const double kilometres = std::max(metres, kNearestMetres) / 1000;
  return kFreeSpaceAtAKilometreAndMegahertz + 20 * std::log10(mhz) + 20 * std::log10(kilometres);
}

double freeSpaceReach(double mhz, double budget) {
  return 1000 * std::pow(10, (budget - kFreeSpaceAtAKilometreAndMegahertz - 20 * std::log10(mhz)) / 20);
}

PathLoss pathLoss(const sight::SceneAt& now, Point3 a, Point3 b, double mhz, std::span<const Body> bodies,
                  const LossOf& ofWall, const LossOf& ofLeaf) {
  const Point from = flat(a), until = flat(b);
  const double run = geometry::distance(from, until);
  PathLoss loss;
  loss.metres = geometry::distance(a, b);
  loss.freeSpace = freeSpaceLoss(mhz, loss.metres);
  loss.total = loss.freeSpace;
  if (run <= geometry::kTouch) return loss;
  LinkRay(now, a, geometry::unit(until - from), run, bodies).eachPassed(run, b.z, [&](const LinkRay::Thing& thing) {
    if (thing.kind == LinkRay::Kind::wall) loss.walls.push_back(thing.tag), loss.total += ofWall(thing.tag);
    if (thing.kind == LinkRay::Kind::leaf) loss.leaves.push_back(thing.tag), loss.total += ofLeaf(thing.tag);
    if (thing.kind == LinkRay::Kind::body) ++loss.bodies, loss.total += kBodyLoss;
  });
  return loss;
}

}  // namespace wend::crew
