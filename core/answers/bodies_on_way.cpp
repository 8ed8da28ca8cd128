// What the rig, those carried along and walking crew pass on their way.
#include <algorithm>

#include "core/answers/obstacles_now.h"
#include "core/answers/whole_take.h"
#include "core/crew/walking.h"
#include "core/geometry/tolerance.h"

namespace wend::answers {

using namespace snags;

namespace {

class ClearanceLog {
 public:
  explicit ClearanceLog(const Take& take) : obstacles_(take) {}

  void add(const Instant& instant, const Instant* before) {
    const auto near = obstacles_.passing(instant);
    for (const auto& body : obstacles_.rig(instant)) log(instant.time, body, instant.camera.travel, near);
    for (std::size_t i = 0; before && i < instant.crew.size(); ++i) addWalker(instant, *before, i, near);
  }
  void add(std::span<const ClearanceAt> known) { logged_.insert(logged_.end(), known.begin(), known.end()); }

  std::vector<ClearanceAt> logged() && { return std::move(logged_); }

 private:
  void addWalker(const Instant& instant, const Instant& before, std::size_t i,
                 const std::vector<crew::Obstacle>& near) {
    const CrewAt& at = instant.crew[i];
    if (!at.walking || at.carried || !before.crew[i].present) return;
    const geometry::Vec moved = at.pos - before.crew[i].pos;
    if (geometry::length(moved) < geometry::kTouch) return;
    log(instant.time, {at.id, at.pos, at.radius, at.floor, at.floor + at.height}, geometry::bearingOf(moved),
        obstacles_.metBy(at.id, at.pos, instant, near));
  }

  void log(double time, const crew::Body& body, double travel, const std::vector<crew::Obstacle>& near) {
    addSides(time, body, crew::clearanceAt(body, travel, obstacles_.fixed()), obstacles_.fixed());
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

  ObstaclesNow obstacles_;
  std::vector<ClearanceAt> logged_;
};

/// Edges underfoot, each with the time it lies there.
struct Edges {
  std::vector<crew::GroundEdge> list;
  std::vector<Span> when;
};

Edges cablesOf(const plan::Plan& plan) {
  Edges edges;
  for (const auto& cable : plan.cables) {
    edges.list.push_back({cable.id.text(), cable.points, false, cable.height});
    edges.when.push_back({cable.from ? plan::secondsOf(plan, *cable.from) : 0,
                          cable.until ? plan::secondsOf(plan, *cable.until) : plan.clock.length});
  }
  return edges;
}

/// The camera's own cable under everybody else, leg by leg from the anchor on, each from when the camera has gone it.
Edges trailingOf(const Take& take) {
  Edges edges;
  const auto& cable = take.plan().camera.cable;
  if (!cable) return edges;
  const motion::Track& camera = take.people().camera();
  const auto lay = [&](std::vector<Point> points, double from) {
    edges.list.push_back({plan::kCameraEnd, std::move(points), false, kTrailingHeight});
    edges.when.push_back({from, take.length()});
  };
  lay({cable->anchor, camera.place(0)}, 0);
  const auto path = camera.path(0.005);
  for (const auto& leg : camera.legs()) {
    std::vector<Point> points = {camera.place(leg.time.from)};
    for (const auto& passed : path)
      if (passed.t > leg.time.from && passed.t < leg.time.until) points.push_back(passed.place);
    points.push_back(camera.place(leg.time.until));
    if (!leg.hold) lay(std::move(points), leg.time.until);
  }
  return edges;
}

Edges edgesOf(const plan::Plan& plan) {
  Edges edges = cablesOf(plan);
  for (auto& edge : groundEdges(plan)) {
    edges.list.push_back(std::move(edge));
    edges.when.push_back({0, plan.clock.length});
  }
  return edges;
}

/// Walking with the camera counts as its operator does: backwards by the way of the lens.
void tellWay(const Take& take, Crossing& crossing) {
  const motion::Track& camera = take.people().camera();
  const auto travel = camera.travelDirection(crossing.time);
  const geometry::Pose sensor = take.view().sensorAt(crossing.time);
  crossing.backwards = travel && crew::carryOf(camera.speed(crossing.time), geometry::bearingOf(*travel),
                                               sensor.bearing) == crew::Carry::rear;
  crossing.panRate = take.view().aim().ratesAt(crossing.time).bearing;
}

void addCrossings(const Take& take, const std::string& who, bool withCamera, const std::function<Point(double)>& at,
                  geometry::Span span, const Edges& edges, std::vector<Crossing>& crossings) {
  for (const auto& step : crew::stepsOver(at, span.from, span.until, 1 / take.rate(), edges.list)) {
    const Span when = edges.when[step.edge];
    if (step.time < when.from || step.time > when.until) continue;
    const crew::GroundEdge& edge = edges.list[step.edge];
    Crossing crossing{step.time, who, edge.id, edge.height, false, 0, step.at};
    if (withCamera) tellWay(take, crossing);
    crossings.push_back(crossing);
  }
}

void addTrack(const Take& take, const std::string& who, const motion::Track& track, const Edges& edges,
              std::vector<Crossing>& crossings) {
  const auto& marks = track.marks();
  addCrossings(
      take, who, false, [&](double t) { return track.place(t); },
      {marks.front().at, std::max(marks.back().until, marks.back().at)}, edges, crossings);
}

}  // namespace

std::optional<std::vector<ClearanceAt>> clearancesOf(const Take& take, const std::vector<Instant>& samples,
                                                     const base::Cancel& cancel, const Before* before) {
  ClearanceLog log(take);
  const bool sameRig = before != nullptr && before->take.plan().camera.rig == take.plan().camera.rig;
  // Walkers are held against where they were a sample ago.
  bool lastAlike = true;
  for (std::size_t i = 0; i < samples.size(); ++i) {
    if (cancel.fired()) return std::nullopt;
    const bool alike = sameRig && sameBodies(samples[i], before->evidence.samples[i]);
    if (alike && lastAlike)
      log.add(foundAt<ClearanceAt>(before->evidence.clearances, samples[i].time));
    else
      log.add(samples[i], i == 0 ? nullptr : &samples[i - 1]);
    lastAlike = alike;
  }
  return std::move(log).logged();
}

std::vector<Crossing> crossingsOf(const Take& take) {
  const plan::Plan& plan = take.plan();
  const Edges edges = edgesOf(plan), cables = cablesOf(plan), trailing = trailingOf(take);
  const Span all{0, take.length()};
  std::vector<Crossing> crossings;
  addCrossings(
      take, "camera", true, [&](double t) { return take.people().camera().place(t); }, all, edges, crossings);
  for (std::size_t i = 0; i < plan.crew.size(); ++i) {
    const std::string id = plan.crew[i].id.text();
    const auto beside = [&](double t) { return take.people().crewAt(i, t, take.view().sensorAt(t)).pos; };
    if (const motion::Track* track = take.people().crew(i)) {
      addTrack(take, id, *track, edges, crossings);
      addTrack(take, id, *track, trailing, crossings);
    } else if (take.people().crewAt(i, 0, take.view().sensorAt(0)).carried && !cables.list.empty()) {
      addCrossings(take, id, true, beside, all, cables, crossings);
    }
  }
  for (std::size_t i = 0; i < plan.performers.size(); ++i)
    for (const Edges* lying : {&cables, &trailing})
      if (const motion::Track* track = lying->list.empty() ? nullptr : take.people().performer(i))
        addTrack(take, plan.performers[i].id.text(), *track, *lying, crossings);
  std::stable_sort(crossings.begin(), crossings.end(), [](const auto& a, const auto& b) { return a.time < b.time; });
  return crossings;
}

std::vector<LeafMet> leavesMet(const Take& take, const std::vector<Instant>& samples) {
  std::vector<LeafMet> met;
  for (std::size_t i = 1; i < samples.size(); ++i) {
    const Instant &before = samples[i - 1], &after = samples[i];
    const sight::SceneAt now = take.scene().at(after.time);
    const auto meet = [&](const std::string& who, geometry::Segment step) {
      for (const auto& leaf : now.leaves()) {
        // A sample on the leaf itself counts for the step that leads to it alone.
        const auto share = leaf.inWay ? geometry::whereMeet(step, leaf.panel) : std::nullopt;
        if (share && *share > 0)
          met.push_back(
              {after.time, who, take.plan().set.openings[static_cast<std::size_t>(leaf.tag)].id.text(), step.b});
      }
    };
    meet("camera", {geometry::flat(before.camera.sensor.at), geometry::flat(after.camera.sensor.at)});
    for (std::size_t k = 0; k < after.performers.size(); ++k)
      if (before.performers[k].present && after.performers[k].present)
        meet(after.performers[k].id, {before.performers[k].pos, after.performers[k].pos});
  }
  return met;
}

}  // namespace wend::answers
