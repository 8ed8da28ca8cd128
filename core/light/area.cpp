#include "core/light/area.h"

#include <cmath>

#include "core/base/check.h"
#include "core/geometry/nearest.h"
#include "core/geometry/tolerance.h"
#include "core/light/colour.h"
#include "core/light/exposure.h"
#include "core/units/stop.h"

namespace wend::light {
namespace {

geometry::EdgeDistance inwardDistance(const Outline& outline, Point p) {
  return geometry::edgeDistance(p, outline.points);
}

geometry::EdgeDistance inwardDistance(const Disc& disc, Point p) {
  const double away = geometry::distance(disc.centre, p);
  // From the very centre every edge point is as near; any will do, for the centre lies inside.
  const geometry::Vec out = away > 0 ? (p - disc.centre) / away : geometry::Vec{1, 0};
  return {disc.radius - away, disc.centre + out * disc.radius};
}

}  // namespace

double edgeWeight(const AreaShape& shape, Point p, const CrossesWall& crossesWall) {
  const auto edge = std::visit([p](const auto& s) { return inwardDistance(s, p); }, shape);
  if (edge.inward <= -kSoftEdge) return 0;
  if (edge.inward < 0 && crossesWall(p, edge.edge)) return 0;
  return geometry::smoothstep((edge.inward + kSoftEdge) / (2 * kSoftEdge));
}

double blendOfReadings(const std::vector<Reading>& readings, Point p) {
  WEND_CHECK(!readings.empty());
  if (readings.size() == 1) return readings.front().stop;
  double sum = 0, weights = 0;
  for (const Reading& reading : readings) {
    const double d = geometry::distance(reading.at, p);
    if (d < geometry::kTouch) return reading.stop;
    weights += 1 / (d * d);
    sum += units::stopsOf(reading.stop) / (d * d);
  }
  return units::tNumberOf(sum / weights);
}

std::optional<double> stopByClock(const std::vector<ClockReading>& readings, double timeOfDay) {
  if (readings.empty() || timeOfDay < readings.front().timeOfDay || timeOfDay > readings.back().timeOfDay) return {};
  std::size_t i = 0;
  while (i + 2 < readings.size() && readings[i + 1].timeOfDay <= timeOfDay) ++i;
  if (i + 1 == readings.size()) return readings[i].stop;
  const ClockReading &from = readings[i], &to = readings[i + 1];
  return blendedStop(from.stop, to.stop, (timeOfDay - from.timeOfDay) / (to.timeOfDay - from.timeOfDay));
}

std::optional<double> kelvinByClock(const std::vector<ClockReading>& readings, double timeOfDay) {
  const ClockReading* before = nullptr;
  for (const ClockReading& reading : readings) {
    if (!reading.kelvin) continue;
    if (reading.timeOfDay == timeOfDay) return reading.kelvin;
    if (reading.timeOfDay > timeOfDay) {
      if (!before) return std::nullopt;
      const double share = (timeOfDay - before->timeOfDay) / (reading.timeOfDay - before->timeOfDay);
      return blendedKelvin(*before->kelvin, *reading.kelvin, share);
    }
    before = &reading;
  }
  return std::nullopt;
}

/// What one area shows at a place and a time, its edge apart.
struct Areas::Shown {
  double presence = 0;         ///< 0 transparent, 1 opaque
  std::optional<double> stop;  ///< absent though present: unknown
};

Areas::Areas(std::vector<Area> areas, std::optional<double> timeOfDay, CrossesWall crossesWall)
    : areas_(std::move(areas)), timeOfDay_(timeOfDay), crossesWall_(std::move(crossesWall)) {
  for (const Area& area : areas_) {
    keys_.emplace_back();
    for (const AreaState& state : area.states) keys_.back().push_back(state.time);
  }
}

Areas::Shown Areas::shownByStates(std::size_t area, Point p, double t) const {
  const auto blend = geometry::blendAt(keys_[area], t);
  const auto& before = areas_[area].states[blend.before].readings;
  const auto& after = areas_[area].states[blend.after].readings;
  if (before.empty() && after.empty()) return {};
  if (before.empty()) return {blend.share, blendOfReadings(after, p)};
  if (after.empty()) return {1 - blend.share, blendOfReadings(before, p)};
  return {1, blendedStop(blendOfReadings(before, p), blendOfReadings(after, p), blend.share)};
}

/// `now` is the time of day at t.
Areas::Shown Areas::shownBy(std::size_t area, Point p, double t, std::optional<double> now) const {
  const auto& clock = areas_[area].byClock;
  if (!clock.empty()) return {1, now ? stopByClock(clock, *now) : std::nullopt};
  if (!keys_[area].empty()) return shownByStates(area, p, t);
  return {};
}

AreaLight Areas::lightAt(Point p, double t) const {
  return lightAt(p, t, timeOfDay_ ? std::optional(*timeOfDay_ + t) : std::nullopt);
}

std::vector<ClockReading> Areas::byClockAt(Point p, double t) const {
  std::vector<double> bends;
  for (const Area& area : areas_) {
    if (area.byClock.empty() || edgeWeight(area.shape, p, crossesWall_) == 0) continue;
    for (const ClockReading& reading : area.byClock) bends.push_back(reading.timeOfDay);
  }
  std::sort(bends.begin(), bends.end());
  bends.erase(std::unique(bends.begin(), bends.end()), bends.end());
  std::vector<ClockReading> course;
  for (const double now : bends)
    if (const auto stop = lightAt(p, t, now).stop) course.push_back({now, *stop});
  return course;
}

AreaLight Areas::lightAt(Point p, double t, std::optional<double> now) const {
  double sum = 0, weights = 0, through = 1;
  bool known = true;
  for (std::size_t i = areas_.size(); i-- > 0 && through > 0;) {
    const double edge = edgeWeight(areas_[i].shape, p, crossesWall_);
    if (edge == 0) continue;
    const Shown shown = shownBy(i, p, t, now);
    const double weight = edge * shown.presence * through;
    if (weight == 0) continue;
    through *= 1 - edge * shown.presence;
    weights += weight;
    if (shown.stop)
      sum += weight * units::stopsOf(*shown.stop);
    else
      known = false;
  }
  if (weights == 0) return {};
  if (!known) return {std::nullopt, true};
  return {units::tNumberOf(sum / weights), true};
}

}  // namespace wend::light
