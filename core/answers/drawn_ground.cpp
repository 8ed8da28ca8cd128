#include "core/answers/drawn_ground.h"

#include <algorithm>
#include <cmath>

#include "core/sight/body.h"

namespace wend::answers {

using geometry::Point;

namespace {

constexpr double kQuarter = TakeQuarters::kQuarter, kPlace = 0.05;

}  // namespace

DrawnGround::DrawnGround(TakeQuarters& quarters, std::size_t member, double height)
    : quarters_(quarters), take_(quarters.take()), crew_(take_.plan().crew[member]), height_(height) {}

std::size_t DrawnGround::HashOfLook::operator()(const Look& look) const {
  // Odd numbers without a pattern: neighbours in place and time fall apart.
  const auto part = [](long value, std::uint64_t by) { return static_cast<std::uint64_t>(value) * by; };
  return part(look.x, 0x9E3779B97F4A7C15u) ^ part(look.y, 0xC2B2AE3D27D4EB4Fu) ^
         part(look.quarter, 0x165667B19E3779F9u);
}

crew::Ground DrawnGround::standing(Point pos, double t) {
  const plan::SightRules& rules = take_.plan().sightRules;
  for (double s = t - rules.late; s <= t + rules.early; s += kQuarter)
    if (s >= 0 && s <= take_.length() && seen(pos, s)) return crew::Ground::seen;
  return crew::Ground::free;
}

crew::Ground DrawnGround::walking(Point pos, double t) {
  return taken(pos, t) ? crew::Ground::taken : standing(pos, t);
}

DrawnGround::Look DrawnGround::lookAt(Point pos, double t) {
  return {std::lround(pos.x / kPlace), std::lround(pos.y / kPlace), std::lround(t / kQuarter)};
}

bool DrawnGround::seen(Point pos, double t) {
  const Look look = lookAt(pos, t);
  const auto [entry, fresh] = seen_.try_emplace(look, false);
  if (!fresh) return entry->second;
  const TakeQuarters::Look& through = quarters_.look(look.quarter);
  const double floor = take_.people().floorAt(pos);
  entry->second =
      through.eye && sight::bodySight(through.scene, *through.eye, {pos, crew_.radius, floor, floor + height_}).seen;
  return entry->second;
}

bool DrawnGround::taken(Point pos, double t) {
  const Look look = lookAt(pos, t);
  const auto [entry, fresh] = taken_.try_emplace(look, false);
  if (fresh) entry->second = overlaps(pos, quarters_.around(look.quarter));
  return entry->second;
}

crew::Body DrawnGround::bodyAt(Point pos) const {
  const double floor = take_.people().floorAt(pos);
  return {crew_.id.text(), pos, crew_.radius, floor, floor + height_};
}

bool DrawnGround::nearer(const crew::Body& body, double metres, std::span<const crew::Obstacle> obstacles) {
  const crew::Clearance clearance = crew::clearanceAt(body, 0, obstacles, std::max(metres, 0.0));
  return (clearance.left && clearance.left->metres < metres) || (clearance.right && clearance.right->metres < metres);
}

bool DrawnGround::nearerPassing(const crew::Body& body, double metres, const Around& around) const {
  // Whom one meets hangs on shelters and costs more to tell than who is near.
  return std::any_of(around.passing.begin(), around.passing.end(), [&](const crew::Obstacle& obstacle) {
    return obstacle.id != body.id && nearer(body, metres, {&obstacle, 1}) &&
           !quarters_.obstacles().metBy(body.id, body.at, around.instant, {obstacle}).empty();
  });
}

bool DrawnGround::overlaps(Point pos, const Around& around) const {
  const crew::Body body = bodyAt(pos);
  return nearer(body, -kPlace, quarters_.obstacles().fixed()) || nearer(body, -kPlace, around.rig) ||
         nearerPassing(body, -kPlace, around);
}

bool DrawnGround::passedWithin(double clear, Point pos, double t) {
  const crew::Body body = bodyAt(pos);
  for (const double quarter : {std::floor(t / kQuarter), std::ceil(t / kQuarter)}) {
    const Around& around = quarters_.around(static_cast<long>(quarter));
    if (nearer(body, clear, around.rig) || nearerPassing(body, clear, around)) return true;
  }
  return false;
}

}  // namespace wend::answers
