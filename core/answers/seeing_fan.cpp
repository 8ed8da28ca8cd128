#include "core/answers/seeing_fan.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/sight/ray.h"

namespace wend::answers {

using geometry::Span;

namespace {

/// Half the height of the line that stands for a pair of eyes.
constexpr double kHalf = 0.005;

}  // namespace

SeeingFan::SeeingFan(const Take& take, double t, Point3 target, double eyes, double reach)
    : foot_(geometry::flat(target)) {
  const sight::SceneAt now = take.scene().at(t);
  const double height = take.people().floorAt(foot_) + eyes;
  sight::SeenDistances seen;
  for (int ray = 0; ray < kRays; ++ray) {
    const double angle = 2 * std::numbers::pi * ray / kRays;
    std::vector<sight::Upright> blocks;
    for (const auto& crossing : sight::crossingsAlong(now, foot_, {std::cos(angle), std::sin(angle)}, reach))
      blocks.push_back(crossing.box);
    seen.append(target.z, blocks, height - kHalf, height + kHalf, {-1e6, 1e6}, {0, reach},
                rays_[static_cast<std::size_t>(ray)]);
  }
}

bool SeeingFan::sees(Point eye) const {
  const geometry::Vec way = eye - foot_;
  const double metres = geometry::length(way);
  const double turn = std::atan2(way.y, way.x) * kRays / (2 * std::numbers::pi);
  const int ray = static_cast<int>(std::floor(turn));
  return sees(ray, metres) && sees(ray + 1, metres);
}

bool SeeingFan::sees(int ray, double metres) const {
  const auto& spans = rays_[static_cast<std::size_t>((ray + kRays) % kRays)];
  return std::any_of(spans.begin(), spans.end(), [&](Span span) { return span.contains(metres); });
}

std::optional<crew::CellTimes> servedThrough(const std::function<Serves(double t)>& at, crew::Steps steps,
                                             const geometry::Grid& grid, const crew::StepClock& clock,
                                             const base::Cancel& cancel) {
  crew::CellTimes met(grid.cells(), clock.steps, true);
  for (std::size_t instant = steps.from; steps.count() > 0 && instant <= steps.until; ++instant) {
    if (cancel.fired()) return std::nullopt;
    const Serves serves = at(clock.at(instant));
    if (!serves) continue;
    const crew::Steps around{std::max(steps.from + 1, instant) - 1, std::min(steps.until, instant + 1)};
    for (std::size_t cell = 0; cell < grid.cells(); ++cell)
      if (!serves(grid.centre(cell))) met.set(cell, around, false);
  }
  return met;
}

}  // namespace wend::answers
