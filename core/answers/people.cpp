#include "core/answers/people.h"

#include <algorithm>

#include "core/answers/floors.h"
#include "core/answers/shelter_at.h"
#include "core/geometry/polygon.h"
#include "core/motion/posture.h"
#include "core/plan/rig_wobble.h"

namespace wend::answers {

using base::Result;

geometry::KeySpan resolved(const plan::Plan& plan, const plan::KeyTime& time) {
  return {plan::secondsOf(plan, time.at), time.over, time.pace == plan::Pace::eased};
}

namespace {

motion::TrackLeg legOf(const plan::Leg& leg) {
  motion::TrackLeg resolvedLeg;
  using Shape = motion::TrackLeg::Shape;
  resolvedLeg.shape = leg.shape == plan::LegShape::straight ? Shape::straight
                      : leg.shape == plan::LegShape::smooth ? Shape::smooth
                                                            : Shape::arc;
  resolvedLeg.via = leg.via;
  resolvedLeg.centre = leg.centre;
  resolvedLeg.sweep = leg.sweep;
  resolvedLeg.eased = leg.pace == plan::Pace::eased;
  return resolvedLeg;
}

Result<motion::Track> trackLaid(const plan::Plan& plan, const std::vector<plan::Mark>& marks,
                                const std::string& where) {
  auto track = motion::trackThrough(resolvedMarks(plan, marks));
  if (track) return track;
  base::Problems problems = track.problems();
  for (auto& problem : problems) problem.where = where + problem.where;
  return problems;
}

motion::Posture postureOf(plan::Posture posture) {
  switch (posture) {
    case plan::Posture::sit:
      return motion::Posture::sit;
    case plan::Posture::kneel:
    case plan::Posture::crouch:
      return motion::Posture::kneel;
    case plan::Posture::lie:
      return motion::Posture::lie;
    case plan::Posture::stand:
      break;
  }
  return motion::Posture::stand;
}

}  // namespace

std::vector<motion::TrackMark> resolvedMarks(const plan::Plan& plan, const std::vector<plan::Mark>& marks) {
  std::vector<motion::TrackMark> list;
  for (const auto& mark : marks) {
    const double at = plan::secondsOf(plan, mark.at);
    const plan::Shelter* shelter = plan.shelters.find(mark.shelter);
    list.push_back({at, mark.until ? plan::secondsOf(plan, *mark.until) : at, shelter ? shelter->pos : mark.pos,
                    mark.height.value_or(0), legOf(mark.leg)});
  }
  return list;
}

Result<People> People::of(const plan::PlanPtr& plan) {
  auto camera = trackLaid(*plan, plan->camera.marks, "/camera/marks");
  if (!camera) return camera.problems();
  People people(plan, std::move(camera).value());
  const auto add = [&](Tracks& tracks, const std::vector<plan::Mark>& marks, const std::string& where) {
    tracks.emplace_back();
    if (marks.empty()) return base::Problems{};
    auto track = trackLaid(*plan, marks, where + "/marks");
    if (!track) return track.problems();
    tracks.back() = std::move(track).value();
    return base::Problems{};
  };
  for (std::size_t i = 0; i < plan->performers.size(); ++i) {
    const auto problems = add(people.performers_, plan->performers[i].marks, "/performers/" + std::to_string(i));
    if (!problems.empty()) return problems;
  }
  for (std::size_t i = 0; i < plan->crew.size(); ++i) {
    const auto problems = add(people.crew_, plan->crew[i].marks, "/crew/" + std::to_string(i));
    if (!problems.empty()) return problems;
  }
  return people;
}

double People::floorAt(Point pos) const {
  return answers::floorAt(*plan_, pos);
}

PerformerPose People::performerAt(std::size_t i, double t) const {
  PerformerPose pose;
  const motion::Track* track = performer(i);
  if (!track || !track->present(t)) return pose;
  const plan::Performer& performer = plan_->performers[i];
  const motion::Progress progress = track->progress(t);
  const plan::Mark& mark = performer.marks[progress.mark];
  const plan::Mark& next = performer.marks[std::min(progress.mark + 1, performer.marks.size() - 1)];
  pose.present = true;
  pose.pos = track->place(t);
  pose.floor = floorAt(pose.pos);
  const double eyes =
      motion::eyeHeight(postureOf(mark.posture), postureOf(next.posture), progress.share, performer.stature);
  pose.eyes = pose.floor + eyes;
  pose.top = pose.floor + motion::bodyTop(eyes, performer.stature);
  pose.speed = track->speed(t);
  pose.taped = mark.taped;
  return pose;
}

std::optional<Point3> People::propAt(std::size_t i, double t) const {
  const plan::Prop& prop = plan_->props[i];
  const auto timeOf = [&](std::size_t k) { return plan::secondsOf(*plan_, prop.track[k].at); };
  const auto placeOf = [&](std::size_t k) -> std::optional<Point3> {
    const plan::PropEntry& entry = prop.track[k];
    if (entry.by.empty()) return geometry::at(entry.pos, floorAt(entry.pos) + entry.height);
    const PerformerPose by = performerAt(plan_->performers.indexOf(entry.by), t);
    if (!by.present) return std::nullopt;
    return geometry::at(by.pos, by.floor + entry.height);
  };
  if (prop.track.empty() || t < timeOf(0)) return std::nullopt;
  std::size_t k = 0;
  while (k + 1 < prop.track.size() && timeOf(k + 1) <= t) ++k;
  const auto here = placeOf(k);
  const bool carried = !prop.track[k].by.empty() || k + 1 == prop.track.size() || !prop.track[k + 1].by.empty();
  if (carried || !here) return here;
  const auto there = placeOf(k + 1);
  const double share = (t - timeOf(k)) / (timeOf(k + 1) - timeOf(k));
  return *here + (*there - *here) * share;
}

std::optional<CrewPose> People::carriedAt(std::size_t i, const geometry::Pose& sensor) const {
  const plan::Crew& crew = plan_->crew[i];
  for (const auto& body : plan_->camera.bodies) {
    if (body.crew != crew.id.text()) continue;
    const geometry::Vec ahead = geometry::direction(sensor.bearing);
    CrewPose pose;
    pose.present = pose.carried = true;
    pose.pos = geometry::flat(sensor.at) - ahead * body.behind - geometry::left(ahead) * body.right;
    pose.floor = floorAt(pose.pos);
    pose.height = crew.height;
    return pose;
  }
  return std::nullopt;
}

CrewPose People::crewAt(std::size_t i, double t, const geometry::Pose& sensor) const {
  if (const auto carried = carriedAt(i, sensor)) return *carried;
  CrewPose pose;
  const motion::Track* track = crew(i);
  if (!track || !track->present(t)) return pose;
  const plan::Crew& crew = plan_->crew[i];
  const motion::Progress progress = track->progress(t);
  const plan::Mark& mark = crew.marks[progress.mark];
  const plan::Mark& next = crew.marks[std::min(progress.mark + 1, crew.marks.size() - 1)];
  const auto heightOn = [&](const plan::Mark& m) {
    return m.posture == plan::Posture::crouch ? crew.crouch : crew.height;
  };
  pose.present = true;
  pose.walking = track->legAt(t) && track->speed(t) > kMoving;
  pose.pos = track->place(t);
  pose.floor = floorAt(pose.pos);
  pose.height = geometry::lerp(heightOn(mark), heightOn(next), progress.share);
  if (!track->legAt(t) || mark.shelter == next.shelter) pose.shelter = mark.shelter;
  // Whoever stands in a shelter's circle is in it, named or not.
  if (!track->legAt(t) && pose.shelter.empty()) pose.shelter = shelterAt(*plan_, pose.pos);
  return pose;
}

std::optional<Point3> People::lookAt(const std::string& id, double t) const {
  const std::size_t performer = plan_->performers.indexOf(id);
  if (performer < plan_->performers.size()) {
    const PerformerPose pose = performerAt(performer, t);
    if (!pose.present) return std::nullopt;
    return geometry::at(pose.pos, pose.eyes);
  }
  const std::size_t prop = plan_->props.indexOf(id);
  return prop < plan_->props.size() ? propAt(prop, t) : std::nullopt;
}

Point3 People::firstPlaceOf(const std::string& id) const {
  const plan::Performer* performer = plan_->performers.find(id);
  if (performer && !performer->marks.empty())
    if (const auto at = lookAt(id, plan::secondsOf(*plan_, performer->marks.front().at))) return *at;
  const plan::Prop* prop = plan_->props.find(id);
  if (prop && !prop->track.empty())
    if (const auto at = lookAt(id, plan::secondsOf(*plan_, prop->track.front().at))) return *at;
  return {};
}

double People::wobbleOf(const std::string& id, double t) const {
  if (const plan::Prop* prop = plan_->props.find(id)) return prop->wobble;
  const std::size_t performer = plan_->performers.indexOf(id);
  if (performer == plan_->performers.size()) return 0;
  const PerformerPose pose = performerAt(performer, t);
  if (pose.speed > kMoving) return plan_->wobble.walking;
  return pose.taped ? plan_->wobble.taped : plan_->wobble.untaped;
}

double People::rigWobble(double t) const {
  return plan::rigWobble(*plan_, camera_.speed(t) > kMoving);
}

}  // namespace wend::answers
