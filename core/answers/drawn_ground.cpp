#include "core/answers/drawn_ground.h"

#include <algorithm>
#include <cmath>

#include "core/answers/answers.h"
#include "core/sight/body.h"

namespace wend::answers {

using geometry::Point;

namespace {

constexpr double kQuarter = 0.25, kPlace = 0.05;

}  // namespace

DrawnGround::DrawnGround(const Take& take, std::size_t member, double height)
    : take_(take), crew_(take.plan().crew[member]), height_(height), obstacles_(take) {}

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
  const double instant = std::min(double(std::get<2>(look)) * kQuarter, take_.length());
  const auto eye = take_.eyeAt(instant, take_.plan().sightRules.margin);
  const double floor = take_.people().floorAt(pos);
  entry->second =
      eye && sight::bodySight(take_.scene().at(instant), *eye, {pos, crew_.radius, floor, floor + height_}).seen;
  return entry->second;
}

const DrawnGround::Around& DrawnGround::aroundAt(long quarter) {
  const auto [entry, fresh] = around_.try_emplace(quarter);
  if (!fresh) return entry->second;
  Around& around = entry->second;
  around.instant = sampleAt(take_, std::clamp(double(quarter) * kQuarter, 0.0, take_.length()));
  around.passing = obstacles_.passing(around.instant);
  for (const crew::Body& body : obstacles_.rig(around.instant)) around.rig.push_back(crew::obstacleOf(body));
  return around;
}

bool DrawnGround::taken(Point pos, double t) {
  const Look look = lookAt(pos, t);
  const auto [entry, fresh] = taken_.try_emplace(look, false);
  if (fresh) entry->second = overlaps(pos, aroundAt(std::get<2>(look)));
  return entry->second;
}

bool DrawnGround::nearer(double metres, Point pos, const std::vector<crew::Obstacle>& obstacles) const {
  const double floor = take_.people().floorAt(pos);
  const crew::Body body{crew_.id.text(), pos, crew_.radius, floor, floor + height_};
  const crew::Clearance clearance = crew::clearanceAt(body, 0, obstacles, std::max(metres, 0.0));
  return (clearance.left && clearance.left->metres < metres) || (clearance.right && clearance.right->metres < metres);
}

std::vector<crew::Obstacle> DrawnGround::passing(Point pos, const Around& around) const {
  return obstacles_.metBy(crew_.id.text(), pos, around.instant, around.passing);
}

bool DrawnGround::overlaps(Point pos, const Around& around) const {
  return nearer(-kPlace, pos, obstacles_.fixed()) || nearer(-kPlace, pos, around.rig) ||
         nearer(-kPlace, pos, passing(pos, around));
}

bool DrawnGround::passedWithin(double clear, Point pos, double t) {
  for (const double quarter : {std::floor(t / kQuarter), std::ceil(t / kQuarter)}) {
    const Around& around = aroundAt(static_cast<long>(quarter));
    if (nearer(clear, pos, around.rig) || nearer(clear, pos, passing(pos, around))) return true;
  }
  return false;
}

}  // namespace wend::answers
