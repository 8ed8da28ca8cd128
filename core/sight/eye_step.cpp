#include "core/sight/eye_step.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace wend::sight {

namespace {

/// The floor plan's side of an eye.
struct Flat {
  Point foot;
  double height = 0, bearing = 0, halfAngle = 0;
};

Flat flatOf(const FramedEye& eye) {
  return {eye.frame.foot(), eye.frame.height(), eye.pupil.bearing, geometry::degrees(eye.frame.turns().until)};
}

std::optional<FramedEye> framed(const std::optional<Eye>& eye) {
  return eye ? std::optional<FramedEye>(*eye) : std::nullopt;
}

/// How far `there` stands off the straight step at a share of it.
void stray(EyeStep& step, const Flat& from, const Flat& until, const Flat& there, double share) {
  const double bearing = geometry::unwrapped(there.bearing, geometry::lerp(from.bearing, until.bearing, share));
  const double turned = std::abs(bearing - geometry::lerp(from.bearing, until.bearing, share));
  const double opened = std::abs(there.halfAngle - geometry::lerp(from.halfAngle, until.halfAngle, share));
  const double off = geometry::distance(there.foot, geometry::lerp(from.foot, until.foot, share));
  step.flat.sway = std::max(step.flat.sway, kAsMuchAgain * off);
  step.flat.turn = std::max(step.flat.turn, kAsMuchAgain * (turned + opened));
}

/// Heights half as much again beyond the straight rise as the quarters show.
Span heightsOf(double from, double until, const std::array<double, kQuarters.size()>& between) {
  double off = 0;
  for (std::size_t i = 0; i < kQuarters.size(); ++i)
    off = std::max(off, std::abs(between[i] - geometry::lerp(from, until, kQuarters[i])));
  return {std::min(from, until) - kAsMuchAgain * off, std::max(from, until) + kAsMuchAgain * off};
}

/// Rounding of positions far from the origin is no sway.
constexpr double kNoise = 1e-12;

}  // namespace

std::optional<EyeStep> eyeStep(const EyeAt& eye, Span time) {
  return eyeStep(eye, time, eye(time.from), eye(time.until));
}

std::optional<EyeStep> eyeStep(const EyeAt& eye, Span time, const std::optional<Eye>& first,
                               const std::optional<Eye>& last) {
  if (!first && !last) return std::nullopt;
  std::array<std::optional<FramedEye>, kQuarters.size() + 2> all{framed(first)};
  all.back() = framed(last);
  const Flat from = flatOf(first ? *all.front() : *all.back()), until = flatOf(last ? *all.back() : *all.front());
  EyeStep step;
  step.flat.from = {from.foot, from.bearing, from.halfAngle};
  step.flat.until = {until.foot, until.bearing, until.halfAngle};
  std::array<double, kQuarters.size()> heights{};
  for (std::size_t i = 0; i < kQuarters.size(); ++i) {
    const auto& between = all[i + 1] = framed(eye(geometry::lerp(time.from, time.until, kQuarters[i])));
    const Flat there = between ? flatOf(*between) : from;
    heights[i] = there.height;
    stray(step, from, until, there, kQuarters[i]);
  }
  if (step.flat.sway < kNoise) step.flat.sway = 0;
  if (step.flat.turn < kNoise) step.flat.turn = 0;
  step.heights = heightsOf(from.height, until.height, heights);
  step.sides = sidesOver(all);
  return step;
}

std::optional<EyeStep> joined(std::span<const std::optional<EyeStep>> steps) {
  std::vector<SweptPose> poses;
  double sway = 0, turn = 0;
  std::optional<EyeStep> whole;
  for (const auto& step : steps) {
    if (!step) continue;
    poses.push_back(step->flat.from), poses.push_back(step->flat.until);
    sway = std::max(sway, step->flat.sway), turn = std::max(turn, step->flat.turn);
    const Span heights = whole ? whole->heights : step->heights;
    if (!whole) whole.emplace();
    whole->heights = {std::min(heights.from, step->heights.from), std::max(heights.until, step->heights.until)};
  }
  if (!whole) return std::nullopt;
  whole->flat = stepOver(poses);
  whole->flat.sway += sway, whole->flat.turn += turn;
  return whole;
}

geometry::Extent withEyes(geometry::Extent ground, const EyeSteps& eyes) {
  for (const auto& eye : eyes) {
    if (!eye) continue;
    const double by = eye->flat.sway + 1;
    for (const Point& p : {eye->flat.from.pupil, eye->flat.until.pupil}) {
      ground.low = {std::min(ground.low.x, p.x - by), std::min(ground.low.y, p.y - by)};
      ground.high = {std::max(ground.high.x, p.x + by), std::max(ground.high.y, p.y + by)};
    }
  }
  return ground;
}

}  // namespace wend::sight
