#include "core/answers/watched.h"

#include <algorithm>

#include "core/answers/hiders.h"

namespace wend::answers {

using snags::BodyKind;

namespace {

bool carried(const Take& take, std::size_t i) {
  const auto& bodies = take.plan().camera.bodies;
  return std::any_of(bodies.begin(), bodies.end(),
                     [&](const auto& body) { return body.crew == take.plan().crew[i].id.text(); });
}

sight::BodyAt crewBody(const Take& take, std::size_t i) {
  const double radius = take.plan().crew[i].radius;
  // Only those carried along go where the lens looks, which is what costs to know.
  const bool along = carried(take, i);
  return [&take, i, radius, along](double t) -> std::optional<sight::Body> {
    const CrewPose pose = take.people().crewAt(i, t, along ? take.view().sensorAt(t) : geometry::Pose{});
    if (!pose.present) return std::nullopt;
    return sight::Body{pose.pos, radius, pose.floor, pose.floor + pose.height};
  };
}

/// The rig itself: what a mirror may show of it. Directly it is behind its own lens.
sight::BodyAt rigBody(const Take& take) {
  return [&take](double t) -> std::optional<sight::Body> {
    const geometry::Pose sensor = take.view().sensorAt(t);
    // Nobody films the rig directly: it is told as a body a little behind the pupil, so that only mirrors reach it.
    const Point behind = geometry::flat(sensor.at) - geometry::direction(sensor.bearing) * 0.15;
    return sight::Body{behind, 0.1, sensor.at.z - 0.15, sensor.at.z + 0.15};
  };
}

}  // namespace

Watched standingAt(const Take& take, Point pos, double height, double radius) {
  const double floor = take.people().floorAt(pos);
  const sight::Body body{pos, radius, floor, floor + height};
  return {"", snags::BodyKind::crew, [body](double) { return body; }};
}

std::vector<Watched> watchedOf(const Take& take) {
  const plan::Plan& plan = take.plan();
  std::vector<Watched> all;
  for (std::size_t i = 0; i < plan.crew.size(); ++i)
    all.push_back({plan.crew[i].id.text(), carried(take, i) ? BodyKind::carried : BodyKind::crew, crewBody(take, i),
                   crewTag(take, i)});
  for (const auto& gear : plan.gear) {
    const double floor = take.people().floorAt(gear.pos);
    const sight::Body body{gear.pos, gear.radius, floor, floor + gear.height};
    all.push_back({gear.id.text(), BodyKind::gear, [body](double) { return body; }});
  }
  all.push_back({"camera", BodyKind::lens, rigBody(take)});
  return all;
}

}  // namespace wend::answers
