#include "core/answers/camera_view.h"

#include <algorithm>
#include <cmath>

#include "core/answers/shot_sizes.h"

namespace wend::answers {

using base::Result;

optics::FocalForSize CameraView::ZoomTrack::focalOf(std::size_t key, double t) const {
  const plan::ZoomKey& zoomKey = plan->zoom.keys[key];
  const optics::FocalLimits limits{plan->lens->focal[0], plan->lens->focal[1]};
  if (zoomKey.size.empty()) return {zoomKey.focal, false};
  const auto size = optics::shotSizeNamed(zoomKey.size, sizesOf(*plan));
  const auto* on = std::get_if<plan::OnPerformer>(&zoomKey.of);
  const plan::Performer* performer = on ? plan->performers.find(on->performer) : nullptr;
  const auto eyes = performer ? people->lookAt(on->performer, t) : std::nullopt;
  if (!size || !eyes) return {limits.shortest, true};
  const double distance =
      std::max(0.01, geometry::distance(*eyes, people->camera().position(t)) - plan->lens->pupilAhead);
  return optics::focalForSize(frame.height, distance, size->q, performer->stature, limits);
}

std::optional<double> CameraView::ZoomTrack::focalAt(double t) const {
  if (!plan->lens) return std::nullopt;
  if (keys.empty()) return plan->lens->focal[0];
  const geometry::KeyBlend blend = geometry::blendAt(keys, t);
  const double after = focalOf(blend.after, t).focal;
  if (blend.before == blend.after) return after;
  return std::exp2(geometry::lerp(std::log2(focalOf(blend.before, t).focal), std::log2(after), blend.share));
}

bool CameraView::ZoomTrack::clippedAt(double t) const {
  if (!plan->lens || keys.empty()) return false;
  const geometry::KeyBlend blend = geometry::blendAt(keys, t);
  return focalOf(blend.before, t).clipped || focalOf(blend.after, t).clipped;
}

std::optional<optics::HalfTangents> CameraView::ZoomTrack::halfTangentsAt(double t) const {
  const auto focal = focalAt(t);
  if (!focal) return std::nullopt;
  const plan::Lens& lens = *plan->lens;
  double scale = 1;
  if (const double breathing = lens.breathing.at(*focal); breathing != 0)
    if (const auto slant = subjects->slantAt(t, people->camera().position(t)); slant && *slant > 0)
      scale = optics::breathingScale(breathing, lens.closeFocus, *slant);
  return optics::halfTangents(frame, *focal, scale);
}

double CameraView::zoomRateAt(double t) const {
  constexpr double kHalf = 0.01;
  const auto before = focalAt(std::max(0.0, t - kHalf)), after = focalAt(t + kHalf);
  if (!before || !after) return 0;
  return 100 * std::log(*after / *before) / (t + kHalf - std::max(0.0, t - kHalf));
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
  view.zoom_ = {
      plan, &people, &subjects, resolvedKeys(*plan, plan->zoom.keys),
      optics::deliveredFrame({plan->camera.gate[0], plan->camera.gate[1]}, plan->camera.squeeze, plan->camera.aspect)};
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
  return {zoom_.people->camera().position(t), way.bearing, way.tilt};
}

}  // namespace wend::answers
