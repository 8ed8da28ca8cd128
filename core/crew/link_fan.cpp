#include "core/crew/link_fan.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace wend::crew {

LinkFan::LinkFan(const sight::SceneAt& now, Point3 aerial, double mhz, double upTo, std::span<const Body> bodies,
                 const LossOf& ofWall, const LossOf& ofLeaf)
    : aerial_(aerial), mhz_(mhz), upTo_(upTo), ofWall_(ofWall), ofLeaf_(ofLeaf) {
  rays_.reserve(kRays);
  for (int ray = 0; ray < kRays; ++ray) {
    const double angle = 2 * std::numbers::pi * ray / kRays;
    rays_.emplace_back(now, aerial, geometry::Vec{std::cos(angle), std::sin(angle)}, upTo, bodies);
  }
}

double LinkFan::lossAlong(int ray, double run, double height) const {
  double loss = 0;
  rays_[static_cast<std::size_t>((ray + kRays) % kRays)].eachPassed(run, height, [&](const LinkRay::Thing& thing) {
    loss += thing.kind == LinkRay::Kind::wall   ? ofWall_(thing.tag)
            : thing.kind == LinkRay::Kind::leaf ? ofLeaf_(thing.tag)
                                                : kBodyLoss;
  });
  return loss;
}

double LinkFan::lossTo(Point3 other) const {
  const geometry::Vec way = flat(other) - flat(aerial_);
  const double run = geometry::length(way);
  if (run > upTo_) return std::numeric_limits<double>::infinity();
  const double free = freeSpaceLoss(mhz_, geometry::distance(aerial_, other));
  if (run <= geometry::kTouch) return free;
  const int ray = static_cast<int>(std::floor(std::atan2(way.y, way.x) * kRays / (2 * std::numbers::pi)));
  return free + std::max(lossAlong(ray, run, other.z), lossAlong(ray + 1, run, other.z));
}

}  // namespace wend::crew
