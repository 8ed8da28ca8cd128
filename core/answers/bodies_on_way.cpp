// What the rig, those carried along and walking crew pass on their way.
#include <algorithm>

#include "core/answers/whole_take.h"
#include "core/crew/obstacles.h"
#include "core/crew/walking.h"
#include "core/geometry/tolerance.h"

namespace wend::answers {

using namespace snags;

namespace {

std::vector<crew::Carried> carriedOf(const plan::Plan& plan) {
  std::vector<crew::Carried> carried;
  for (const auto& body : plan.camera.bodies)
    if (const plan::Crew* crew = plan.crew.find(body.crew))
      carried.push_back({body.crew, body.behind, body.right, crew->radius, crew->height});
  return carried;
}

/// Everybody else at an instant, each with the id they are told by.
std::vector<crew::Body> othersAt(const plan::Plan& plan, const Instant& instant) {
  std::vector<crew::Body> bodies;
  for (std::size_t i = 0; i < instant.performers.size(); ++i) {
    const PerformerAt& at = instant.performers[i];
    if (at.present) bodies.push_back({at.id, at.pos, plan.performers[i].radius, at.floor, at.top});
  }
  for (const auto& at : instant.crew)
    if (at.present && !at.carried) bodies.push_back({at.id, at.pos, at.radius, at.floor, at.floor + at.height});
  return bodies;
}

class ClearanceLog {
 public:
  ClearanceLog(const Take& take)
      : take_(take), names_(namesOf(take.plan())), fixed_(crew::obstaclesOf(take.scene(), names_)) {}

  void add(const Instant& instant, const Instant* before) {
    const plan::Plan& plan = take_.plan();
    auto near = crew::leavesOf(take_.scene().at(instant.time), names_);
    const auto others = othersAt(plan, instant);
    for (const auto& body : others) near.push_back(crew::obstacleOf(body));
    for (auto i = near.size() - others.size(); i < near.size(); ++i) near[i].person = true;
    const auto floorAt = [&](Point p) { return take_.people().floorAt(p); };
    for (const auto& body :
         crew::bodiesAlong(instant.camera.sensor, {"camera", plan.camera.rig.radius}, carriedOf(plan), floorAt))
      log(instant.time, body, instant.camera.travel, near);
    for (std::size_t i = 0; before && i < instant.crew.size(); ++i) addWalker(instant, *before, i, near);
  }

  std::vector<ClearanceAt> logged() && { return std::move(logged_); }

 private:
  void addWalker(const Instant& instant, const Instant& before, std::size_t i,
                 const std::vector<crew::Obstacle>& near) {
    const CrewAt& at = instant.crew[i];
    if (!at.walking || at.carried || !before.crew[i].present) return;
    const geometry::Vec moved = at.pos - before.crew[i].pos;
    if (geometry::length(moved) < geometry::kTouch) return;
    // People of the crew meet performers and each other, not themselves.
    std::vector<crew::Obstacle> others;
    std::copy_if(near.begin(), near.end(), std::back_inserter(others),
                 [&](const crew::Obstacle& obstacle) { return obstacle.id != at.id; });
    log(instant.time, {at.id, at.pos, at.radius, at.floor, at.floor + at.height}, geometry::bearingOf(moved), others);
  }

  void log(double time, const crew::Body& body, double travel, const std::vector<crew::Obstacle>& near) {
    addSides(time, body, crew::clearanceAt(body, travel, fixed_), fixed_);
    addSides(time, body, crew::clearanceAt(body, travel, near), near);
  }

  void addSides(double time, const crew::Body& body, const crew::Clearance& clearance,
                const std::vector<crew::Obstacle>& obstacles) {
    for (const auto& gap : {clearance.left, clearance.right}) {
      if (!gap) continue;
      const crew::Obstacle& obstacle = obstacles[gap->obstacle];
      logged_.push_back({time, body.id, obstacle.id, obstacle.person, obstacle.hot, gap->metres, gap->onLeft, body.at});
    }
  }

  const Take& take_;
  crew::NameOf names_;
  std::vector<crew::Obstacle> fixed_;
  std::vector<ClearanceAt> logged_;
};

void addCrossings(const Take& take, const std::string& who, const std::function<Point(double)>& at, geometry::Span span,
                  std::vector<Crossing>& crossings) {
  const auto edges = groundEdges(take.plan());
  for (const auto& step : crew::stepsOver(at, span.from, span.until, 1 / take.rate(), edges)) {
    Crossing crossing{step.time, who, edges[step.edge].id, edges[step.edge].height, false, 0, step.at};
    if (who == "camera") {
      const motion::Track& camera = take.people().camera();
      const auto travel = camera.travelDirection(step.time);
      const geometry::Pose sensor = take.view().sensorAt(step.time);
      crossing.backwards = travel && crew::carryOf(camera.speed(step.time), geometry::bearingOf(*travel),
                                                   sensor.bearing) == crew::Carry::rear;
      crossing.panRate = take.view().aim().ratesAt(step.time).bearing;
    }
    crossings.push_back(crossing);
  }
}

}  // namespace

std::optional<std::vector<ClearanceAt>> clearancesOf(const Take& take, const std::vector<Instant>& samples,
                                                     const base::Cancel& cancel) {
  ClearanceLog log(take);
  for (std::size_t i = 0; i < samples.size(); ++i) {
    if (cancel.fired()) return std::nullopt;
    log.add(samples[i], i == 0 ? nullptr : &samples[i - 1]);
  }
  return std::move(log).logged();
}

std::vector<Crossing> crossingsOf(const Take& take) {
  std::vector<Crossing> crossings;
  const motion::Track& camera = take.people().camera();
  addCrossings(
      take, "camera", [&](double t) { return camera.place(t); }, {0, take.length()}, crossings);
  for (std::size_t i = 0; i < take.plan().crew.size(); ++i) {
    const motion::Track* track = take.people().crew(i);
    if (!track) continue;
    addCrossings(
        take, take.plan().crew[i].id.text(), [&](double t) { return track->place(t); },
        {track->marks().front().at, std::max(track->marks().back().until, track->marks().back().at)}, crossings);
  }
  std::stable_sort(crossings.begin(), crossings.end(), [](const auto& a, const auto& b) { return a.time < b.time; });
  return crossings;
}

std::vector<LeafMet> leavesMet(const Take& take, const std::vector<Instant>& samples) {
  std::vector<LeafMet> met;
  for (std::size_t i = 1; i < samples.size(); ++i) {
    const Point before = geometry::flat(samples[i - 1].camera.sensor.at);
    const Point after = geometry::flat(samples[i].camera.sensor.at);
    const sight::SceneAt now = take.scene().at(samples[i].time);
    for (const auto& leaf : now.leaves()) {
      if (!leaf.inWay || !geometry::whereMeet({before, after}, leaf.panel)) continue;
      met.push_back(
          {samples[i].time, "camera", take.plan().set.openings[static_cast<std::size_t>(leaf.tag)].id.text(), after});
    }
  }
  return met;
}

}  // namespace wend::answers
