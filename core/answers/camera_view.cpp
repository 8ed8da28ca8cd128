#include "core/answers/camera_view.h"

#include <algorithm>
#include <cmath>

namespace wend::answers {

using base::Result;

double CameraView::zoomRateAt(double t) const {
  constexpr double kHalf = 0.01;
  const geometry::Span about{std::max(0.0, t - kHalf), std::min(length_, t + kHalf)};
  const auto before = focalAt(about.from), after = focalAt(about.until);
  if (!before || !after || about.length() <= 0) return 0;
  return 100 * std::log(*after / *before) / about.length();
}

namespace {

motion::AimKey aimKeyOf(const plan::PlanPtr& plan, const People& people, const plan::AimKey& key) {
  motion::AimKey aim;
  aim.time = resolved(*plan, key.time);
  aim.turns = key.turns;
  const motion::FramePlace place{key.place[0], key.place[1]};
  const auto following = [&people, place](std::string id) {
    return motion::AimTarget{[&people, id](double t) {
                               // Somebody who is not there yet is aimed at where the first mark or entry puts them:
                               // nothing better is known.
                               const auto at = people.lookAt(id, t);
                               return at ? *at : people.firstPlaceOf(id);
                             },
                             place};
  };
  if (const auto* bearing = std::get_if<plan::OnBearing>(&key.on))
    aim.on = motion::AimBearing{bearing->bearing, bearing->tilt};
  else if (const auto* travel = std::get_if<plan::OnTravel>(&key.on))
    aim.on = motion::AimTravel{travel->offset, travel->tilt};
  else if (const auto* point = std::get_if<plan::OnPoint>(&key.on))
    aim.on = motion::AimTarget{[at = geometry::at(point->pos, point->height)](double) { return at; }, place};
  else if (const auto* performer = std::get_if<plan::OnPerformer>(&key.on))
    aim.on = following(performer->performer);
  else if (const auto* prop = std::get_if<plan::OnProp>(&key.on))
    aim.on = following(prop->prop);
  return aim;
}

}  // namespace

Result<CameraView> CameraView::of(const plan::PlanPtr& plan, const People& people, const Subjects& subjects) {
  CameraView view;
  view.pupilAhead_ = plan->lens ? plan->lens->pupilAhead : 0;
  view.length_ = plan->clock.length;
  view.people_ = &people;
  view.zoom_ = ZoomTrack::of(plan, people, subjects);
  std::vector<motion::AimKey> keys;
  for (const auto& key : plan->camera.aims) keys.push_back(aimKeyOf(plan, people, key));
  if (keys.empty()) keys.push_back({{0, 0, false}, motion::AimBearing{}, 0});
  motion::AimRig rig;
  rig.sensor = [&people](double t) { return people.camera().position(t); };
  rig.travelDirection = [&people](double t) { return people.camera().travelDirection(t); };
  rig.view = [zoom = view.zoom_, ahead = view.pupilAhead_](double t) {
    const optics::HalfTangents half = zoom.halfTangentsAt(t).value_or(optics::HalfTangents{1, 1});
    return motion::View{half.h, half.v, ahead};
  };
  auto aim = motion::aimTrack(std::move(keys), std::move(rig), plan->clock.length);
  if (!aim) {
    base::Problems problems = aim.problems();
    for (auto& problem : problems) problem.where = "/camera/aims" + problem.where;
    return problems;
  }
  view.aim_ = std::move(aim).value();
  return view;
}

geometry::Pose CameraView::sensorAt(double t) const {
  const motion::Orientation way = aim_->orientationAt(t);
  return {people_->camera().position(t), way.bearing, way.tilt};
}

}  // namespace wend::answers
