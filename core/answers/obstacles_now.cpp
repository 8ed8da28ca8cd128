#include "core/answers/obstacles_now.h"

#include <algorithm>

#include "core/answers/set_scene.h"

namespace wend::answers {

using snags::Instant;

ObstaclesNow::ObstaclesNow(const Take& take)
    : take_(take), names_(namesOf(take.plan())), fixed_(crew::obstaclesOf(take.scene(), names_)) {}

std::vector<crew::Obstacle> ObstaclesNow::passing(const Instant& instant) const {
  auto passing = crew::leavesOf(take_.scene().at(instant.time), names_);
  const auto add = [&passing](const crew::Body& body) { passing.push_back(crew::obstacleOf(body)); };
  for (std::size_t i = 0; i < instant.performers.size(); ++i) {
    const snags::PerformerAt& at = instant.performers[i];
    if (at.present) add({at.id, at.pos, take_.plan().performers[i].radius, at.floor, at.top});
  }
  for (const auto& at : instant.crew)
    if (at.present && !at.carried) add({at.id, at.pos, at.radius, at.floor, at.floor + at.height});
  return passing;
}

std::vector<crew::Body> ObstaclesNow::rig(const Instant& instant) const {
  const plan::Plan& plan = take_.plan();
  std::vector<crew::Carried> carried;
  for (const auto& body : plan.camera.bodies)
    if (const plan::Crew* crew = plan.crew.find(body.crew))
      carried.push_back({body.crew, body.behind, body.right, crew->radius, crew->height});
  return crew::bodiesAlong(instant.camera.sensor, {"camera", plan.camera.rig.radius}, carried,
                           [this](geometry::Point p) { return take_.people().floorAt(p); });
}

std::vector<crew::Obstacle> ObstaclesNow::metBy(const std::string& id, geometry::Point pos, const Instant& instant,
                                                const std::vector<crew::Obstacle>& passing) const {
  std::vector<std::string> apart{id};
  for (const auto& other : instant.crew) {
    const plan::Shelter* shelter = other.walking ? nullptr : take_.plan().shelters.find(other.shelter);
    if (shelter && geometry::distance(pos, shelter->pos) <= shelter->radius) apart.push_back(other.id);
  }
  std::vector<crew::Obstacle> met;
  std::copy_if(passing.begin(), passing.end(), std::back_inserter(met), [&](const crew::Obstacle& obstacle) {
    return std::find(apart.begin(), apart.end(), obstacle.id) == apart.end();
  });
  return met;
}

}  // namespace wend::answers
