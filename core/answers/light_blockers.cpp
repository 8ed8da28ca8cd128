#include "core/answers/light_blockers.h"

#include <algorithm>
#include <cmath>

namespace wend::answers {

using namespace snags;

namespace {

/// A camera stands so much over and under its sensor, and so far around it; the rest of the rig is thin.
constexpr double kCameraHalf = 0.2;

/// One rod a line of speech: no pole is at two places.
void addPoles(const std::vector<BoomLine>& boom, double t, double near, LightBlockers& blockers) {
  for (const auto& line : boom) {
    const auto at = std::find_if(line.at.begin(), line.at.end(),
                                 [&](const BoomAt& one) { return one.held && std::abs(one.time - t) <= near; });
    if (at != line.at.end()) blockers.add(light::Rod{at->held->shoulder, at->held->microphone}, line.pole);
  }
}

bool holds(const light::UprightBody& body, Point3 p) {
  return geometry::distance(body.centre, geometry::flat(p)) < body.radius && p.z >= body.bottom && p.z <= body.top;
}

light::UprightBody bodyOf(const plan::Performer& performer, Point pos, double floor, double top) {
  return {pos, performer.radius, floor, top};
}

}  // namespace

LightBlockers gearInLight(const Instant& instant, const std::vector<BoomLine>& boom, double near) {
  LightBlockers blockers;
  const Point3 sensor = instant.camera.sensor.at;
  blockers.add(light::UprightBody{flat(sensor), kCameraHalf, sensor.z - kCameraHalf, sensor.z + kCameraHalf}, "camera");
  for (const auto& crew : instant.crew)
    if (crew.present)
      blockers.add(light::UprightBody{crew.pos, crew.radius, crew.floor, crew.floor + crew.height}, crew.id);
  addPoles(boom, instant.time, near, blockers);
  return blockers;
}

void addPerformers(const Take& take, const Instant& instant, LightBlockers& blockers) {
  for (std::size_t i = 0; i < instant.performers.size(); ++i) {
    const PerformerAt& at = instant.performers[i];
    if (at.present) blockers.add(bodyOf(take.plan().performers[i], at.pos, at.floor, at.top), at.id);
  }
}

light::BlockedAt performersInLight(const Take& take) {
  return [&take](Point3 lamp, Point3 face, double t) {
    for (std::size_t i = 0; i < take.plan().performers.size(); ++i) {
      const PerformerPose pose = take.people().performerAt(i, t);
      if (!pose.present) continue;
      const light::UprightBody body = bodyOf(take.plan().performers[i], pose.pos, pose.floor, pose.top);
      if (!holds(body, face) && light::cuts(body, lamp, face)) return true;
    }
    return false;
  };
}

}  // namespace wend::answers
