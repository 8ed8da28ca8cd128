#include "core/sight/frame_sides.h"

#include <algorithm>
#include <cmath>

namespace wend::sight {

bool whirls(const geometry::Pose& before, const geometry::Pose& after) {
  constexpr double kFastest = 30;
  return std::abs(after.bearing - before.bearing) + std::abs(after.tilt - before.tilt) > kFastest;
}

namespace {

/// Widens the side so that it holds that of another instant.
void hold(StepSide& side, const StepSides& about, const FrameSide& there, Point foot, double height) {
  const double moved =
      std::abs(geometry::dot(there.along, foot - about.foot)) + std::abs(there.up * (height - about.height));
  side.turned = std::max(side.turned, kAsMuchAgain * geometry::length(there.along - side.middle.along));
  side.tipped = std::max(side.tipped, kAsMuchAgain * std::abs(there.up - side.middle.up));
  side.moved = std::max(side.moved, kAsMuchAgain * moved);
}

}  // namespace

StepSides sidesOver(const std::array<std::optional<FramedEye>, 5>& eyes) {
  for (std::size_t i = 0; i < eyes.size(); ++i)
    if (!eyes[i] || (i > 0 && whirls(eyes[i - 1]->pupil, eyes[i]->pupil))) return {};
  const Frame& middle = eyes[eyes.size() / 2]->frame;
  StepSides sides{middle.foot(), middle.height(), middle.axis(), {middle.lower(), 0, 0, 0}, {middle.upper(), 0, 0, 0}};
  for (const auto& eye : eyes) {
    const Frame& there = eye->frame;
    hold(sides.lower, sides, there.lower(), there.foot(), there.height());
    hold(sides.upper, sides, there.upper(), there.foot(), there.height());
  }
  return sides;
}

StepSides imageOf(const StepSides& sides, geometry::Segment mirror) {
  StepSides image = sides;
  image.foot = geometry::reflected(sides.foot, mirror);
  image.axis = geometry::reflected(sides.axis, mirror);
  for (StepSide* side : {&image.lower, &image.upper})
    side->middle.along = geometry::reflected(side->middle.along, mirror);
  return image;
}

namespace {

/// The square about the pupil, a side across `ahead`.
geometry::Convex squareAbout(Point foot, Vec ahead, double half) {
  const Vec to = ahead * half, left = geometry::left(to);
  return {foot - to - left, foot + to - left, foot + to + left, foot - to + left};
}

}  // namespace

geometry::Convex groundBeyond(const StepSides& sides, const StepSide& side, Heights body, double reach) {
  const double steep = geometry::length(side.middle.along);
  if (!std::isfinite(side.turned) || !(steep > 1e-9)) return {};
  const Vec ahead = side.middle.along / steep;
  const auto spare = [&](double z) { return -side.middle.up * z - side.tipped * std::abs(z) - side.moved; };
  const double least = std::min(spare(body.bottom - sides.height), spare(body.top - sides.height));
  // Ground near the pupil is in front of it, or nothing is; a side that leans the other way leaves all from there on.
  const bool near = geometry::dot(ahead, sides.axis) > 0;
  if (near && least <= 0) return {};
  const double within = near ? std::min(reach, 1 + 3 * least / steep) : reach;
  const Point edge = sides.foot + ahead * ((least - side.turned * within) / steep);
  geometry::Convex area = squareAbout(sides.foot, ahead, within / std::sqrt(2.0));
  geometry::cutRightOf(area, edge, edge + geometry::left(ahead));
  return area;
}

}  // namespace wend::sight
