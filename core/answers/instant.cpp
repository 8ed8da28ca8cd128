// One instant, assembled in the order of the stages.
#include <algorithm>
#include <cmath>

#include "core/answers/answers.h"
#include "core/answers/colour_at.h"
#include "core/answers/panes.h"
#include "core/answers/reuse.h"
#include "core/answers/shot_sizes.h"
#include "core/answers/sun.h"
#include "core/geometry/tolerance.h"
#include "core/light/background.h"
#include "core/optics/figure.h"
#include "core/optics/shot_size.h"
#include "core/optics/warmth.h"
#include "core/plan/on_beat.h"
#include "core/sight/body.h"
#include "core/sight/ray.h"

namespace wend::answers {

using namespace snags;
using geometry::Pose;

namespace {

struct InstantMaker {
  const Take& take;
  double t;
  const plan::Plan& plan = take.plan();
  Pose sensor = take.view().sensorAt(t);
  sight::SceneAt now = take.scene().at(t);
  std::vector<std::optional<optics::Figure>> figures;

  Instant withoutPeople() const;
  CameraAt camera() const;
  std::optional<LensAt> lens() const;
  FocusAt focus(const std::optional<LensAt>& lens, double stop) const;
  std::optional<optics::Range> slackAbout(double u, const optics::Optics& optics) const;
  void slack(FocusAt& focus, const optics::Optics& optics) const;
  void heat(FocusAt& focus, const optics::Optics& optics) const;
  void heatOfSplit(std::size_t key, FocusAt& focus, const optics::Optics& optics) const;
  IrisAt iris() const;
  PerformerAt performer(std::size_t i, const Instant& instant) const;
  void showing(std::size_t i, const Instant& instant, PerformerAt& at) const;
  void framing(const optics::Figure& figure, const Instant& instant, PerformerAt& at) const;
  void colour(PerformerAt& at) const;
  void exposure(std::size_t i, const Instant& instant, PerformerAt& at) const;
  CrewAt crew(std::size_t i) const;
};

double pupilAheadOf(const plan::Plan& plan) {
  return plan.lens ? plan.lens->pupilAhead : 0;
}

CameraAt InstantMaker::camera() const {
  CameraAt at;
  const motion::Track& track = take.people().camera();
  at.sensor = sensor;
  at.pupil = sensor.advanced(pupilAheadOf(plan));
  at.speed = track.speed(t);
  const motion::Orientation rates = take.view().aim().ratesAt(t);
  at.panRate = rates.bearing;
  at.tiltRate = rates.tilt;
  const auto travel = track.travelDirection(t);
  at.travel = travel ? geometry::bearingOf(*travel) : sensor.bearing;
  at.moving = at.speed > kMoving;
  return at;
}

std::optional<LensAt> InstantMaker::lens() const {
  const auto focal = take.view().focalAt(t);
  const auto half = take.view().halfTangentsAt(t);
  if (!focal || !half) return std::nullopt;
  const optics::FieldOfView field = optics::fieldOfView(*half);
  return LensAt{*focal, field.horizontal, field.vertical, *half, take.view().zoomRateAt(t)};
}

/// Settings that keep what is that far from the pupil inside the slack; nothing nearer than the lens can focus.
std::optional<optics::Range> InstantMaker::slackAbout(double u, const optics::Optics& optics) const {
  if (u <= optics.focal / 1000) return std::nullopt;
  return optics::slackOf(u, optics, plan.focus.blurShare, plan.lens->closeFocus - pupilAheadOf(plan));
}

void InstantMaker::slack(FocusAt& focus, const optics::Optics& optics) const {
  const double ahead = pupilAheadOf(plan);
  const double u = optics::fromPupil(focus.wantedDistance, ahead);
  if (u <= optics.focal / 1000) {
    focus.tooClose = true;
    return;
  }
  const optics::Range band = optics::depthOfField(u, optics);
  focus.wantedBand = {band.near + ahead, band.far + ahead};
  const auto settings = slackAbout(u, optics);
  focus.tooClose = !settings;
  if (settings) focus.slackNear = settings->near + ahead, focus.slackFar = settings->far + ahead;
}

void InstantMaker::heat(FocusAt& focus, const optics::Optics& optics) const {
  if (focus.changing) return;
  const std::size_t key = take.subjects().blendAt(t).after;
  if (!take.subjects().splitOf(key).empty()) return heatOfSplit(key, focus, optics);
  if (focus.tooClose) return;
  const std::string id = take.subjects().firstOf(key);
  focus.wobble = optics::wobbleOf({take.people().wobbleOf(id, t), take.people().rigWobble(t)});
  focus.warmth = optics::warmthOf(optics::fromPupil(focus.wantedDistance, pupilAheadOf(plan)), optics, *focus.wobble);
}

/// That of whoever has the least room in the band about the setting that the split asks for.
void InstantMaker::heatOfSplit(std::size_t key, FocusAt& focus, const optics::Optics& optics) const {
  const auto ids = take.subjects().splitOf(key);
  const auto distances = take.subjects().drivingDistances(key, t, sensor);
  if (distances.size() != ids.size()) return;
  std::vector<optics::Held> held;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    const double wobble = optics::wobbleOf({take.people().wobbleOf(ids[i], t), take.people().rigWobble(t)});
    focus.split.push_back({ids[i], distances[i], wobble});
    held.push_back({optics::fromPupil(distances[i], pupilAheadOf(plan)), wobble});
    focus.tooClose = focus.tooClose || !slackAbout(held.back().distance, optics);
  }
  if (focus.tooClose) return;
  const optics::SplitWarmth warmth = optics::splitWarmth(held, optics);
  focus.warmth = warmth.warmth;
  focus.wobble = held[warmth.tightest].wobble;
  focus.tightest = ids[warmth.tightest];
}

FocusAt InstantMaker::focus(const std::optional<LensAt>& lensAt, double stop) const {
  FocusAt focus;
  // A pull set by hand turns the barrel whether or not there is somebody to be sharp.
  if (lensAt) {
    focus.barrel = take.lens().barrelAt(t);
    focus.barrelRate = take.lens().barrelRateAt(t);
  }
  const Subjects& subjects = take.subjects();
  if (!subjects.any()) return focus;
  const geometry::KeyBlend blend = subjects.blendAt(t);
  focus.on.push_back(subjects.nameOf(blend.before));
  focus.changing = blend.before != blend.after;
  if (focus.changing) focus.on.push_back(subjects.nameOf(blend.after));
  const auto wanted = subjects.wantedAt(t, sensor);
  if (!wanted) return focus;
  focus.known = true;
  focus.wanted = *wanted;
  focus.wantedDistance = driving(plan, *wanted);
  if (!lensAt) return focus;
  const optics::Optics optics = opticsOf(plan, lensAt->focal, stop);
  slack(focus, optics);
  heat(focus, optics);
  const double ahead = pupilAheadOf(plan);
  focus.setDistance = take.lens().focusAt(t);
  const optics::Range band = optics::depthOfField(optics::fromPupil(focus.setDistance, ahead), optics);
  focus.setBand = {band.near + ahead, band.far + ahead};
  return focus;
}

IrisAt InstantMaker::iris() const {
  return {take.lens().neededAt(t), take.lens().irisAt(t), take.lighting().exposureAt(t).ndStops};
}

void InstantMaker::framing(const optics::Figure& figure, const Instant& instant, PerformerAt& at) const {
  const LensAt& lens = *instant.lens;
  if (const auto place = optics::placeInFrame(optics::eyesOf(figure), instant.camera.pupil, lens.half))
    at.place = *place;
  if (const auto box = optics::boxInFrame(figure, instant.camera.pupil, lens.half)) {
    at.frameLeft = box->left;
    at.frameRight = box->right;
    at.frameTop = box->top;
    at.frameBottom = box->bottom;
    at.figureInFrame = (box->top - box->bottom) / 2;
  }
}

void InstantMaker::showing(std::size_t i, const Instant& instant, PerformerAt& at) const {
  const optics::Figure& figure = *figures[i];
  const auto hides = [&](geometry::Point3 point) {
    if (!sight::openBetween(now, instant.camera.pupil.at, point)) return true;
    for (std::size_t k = 0; k < figures.size(); ++k)
      if (k != i && figures[k] && optics::standsBetween(*figures[k], instant.camera.pupil.at, point)) return true;
    return false;
  };
  at.inFrame = optics::showing(figure, instant.camera.pupil, instant.lens->half, hides);
}

void InstantMaker::colour(PerformerAt& at) const {
  const auto light = colourAt(plan, at.pos, t);
  if (!light) return;
  at.litBy = light->area;
  at.kelvin = light->kelvin;
}

void InstantMaker::exposure(std::size_t i, const Instant& instant, PerformerAt& at) const {
  const geometry::Point3 eyes = optics::eyesOf(*figures[i]);
  const geometry::Vec3 towards = instant.camera.pupil.at - eyes;
  if (geometry::length(towards) < geometry::kTouch) return;
  const light::FaceLight face = light::lightOnFace(take.lighting(), {eyes, towards}, t);
  if (!face.needed) return;
  at.needed = face.needed;
  at.lux = face.lux;
  at.offset = light::offsetStops(*face.needed, instant.iris.set);
}

PerformerAt InstantMaker::performer(std::size_t i, const Instant& instant) const {
  PerformerAt at;
  at.id = plan.performers[i].id.text();
  const PerformerPose pose = take.people().performerAt(i, t);
  at.present = pose.present;
  if (!pose.present) return at;
  at.pos = pose.pos;
  at.eyes = pose.eyes;
  at.top = pose.top;
  at.floor = pose.floor;
  at.speed = pose.speed;
  at.distances = optics::distancesOf(geometry::at(pose.pos, pose.eyes), sensor);
  colour(at);
  exposure(i, instant, at);
  if (!instant.lens) return at;
  const double fromPupil = std::max(0.01, optics::fromPupil(at.distances.slant, pupilAheadOf(plan)));
  at.q = optics::frameOverStature(instant.lens->half.v, fromPupil, plan.performers[i].stature);
  const optics::ShotSizes sizes = sizesOf(plan);
  at.size = sizes[optics::nearestShotSize(at.q, sizes)].name;
  framing(*figures[i], instant, at);
  showing(i, instant, at);
  if (instant.focus.known) {
    const optics::Optics optics = opticsOf(plan, instant.lens->focal, instant.iris.set);
    const double distance = std::max(0.01, optics::fromPupil(driving(plan, at.distances), pupilAheadOf(plan)));
    at.blur = optics::blurOf(distance, optics::fromPupil(instant.focus.setDistance, pupilAheadOf(plan)), optics) /
              plan.camera.blurCircle;
  }
  return at;
}

CrewAt InstantMaker::crew(std::size_t i) const {
  CrewAt at;
  const plan::Crew& crew = plan.crew[i];
  at.id = crew.id.text();
  const CrewPose pose = take.people().crewAt(i, t, sensor);
  at.present = pose.present;
  at.carried = pose.carried;
  at.pos = pose.pos;
  at.floor = pose.floor;
  at.height = pose.height;
  at.radius = crew.radius;
  at.shelter = pose.shelter;
  at.walking = pose.walking;
  return at;
}

Instant InstantMaker::withoutPeople() const {
  Instant instant;
  instant.time = t;
  instant.frameIndex = static_cast<long>(units::frameAt(t, take.frameRate()));
  instant.beat = plan::onBeat(plan, t).beat;
  instant.camera = camera();
  instant.lens = lens();
  instant.iris = iris();
  instant.sun = sunOf(plan, t);
  instant.focus = focus(instant.lens, instant.iris.set);
  return instant;
}

/// Whether somebody of the crew is, at the same place of the list, as in another take.
bool sameMember(const Take& now, const Take& before, std::size_t i) {
  const auto &crew = now.plan().crew, &old = before.plan().crew;
  return i < old.size() && (crew.ref(i) == old.ref(i) || crew[i] == old[i]);
}

/// Whether the performers of `like`, an instant of another take, are where this one has them at the same instant.
bool sameStands(const Take& take, const Instant& like) {
  for (std::size_t i = 0; i < like.performers.size(); ++i) {
    const PerformerPose now = take.people().performerAt(i, like.time);
    const PerformerAt& then = like.performers[i];
    if (now.present != then.present) return false;
    if (now.present && (now.pos != then.pos || now.floor != then.floor || now.eyes != then.eyes ||
                        now.top != then.top || now.speed != then.speed))
      return false;
  }
  return true;
}

/// In whatever way: directly, in a mirror, in turned glass.
std::optional<double> nextSeen(const Evidence& evidence, const std::string& id, double t) {
  std::optional<double> next;
  const auto take = [&](const geometry::Span& span) {
    if (span.until >= t) next = std::min(next.value_or(span.from), span.from);
  };
  for (const auto& sight : evidence.sight)
    if (sight.id == id)
      for (const auto& seen : sight.seen) take(seen.span);
  for (const auto& pane : evidence.panes)
    if (pane.who == id) take(pane.span);
  return next ? std::optional(std::max(0.0, *next - t)) : std::nullopt;
}

}  // namespace

Instant sampleAt(const Take& take, double t) {
  InstantMaker maker{.take = take, .t = t, .figures = {}};
  for (std::size_t i = 0; i < take.plan().performers.size(); ++i) maker.figures.push_back(take.figureAt(i, t));
  Instant instant = maker.withoutPeople();
  for (std::size_t i = 0; i < take.plan().performers.size(); ++i)
    instant.performers.push_back(maker.performer(i, instant));
  for (std::size_t i = 0; i < take.plan().crew.size(); ++i) instant.crew.push_back(maker.crew(i));
  return instant;
}

Instant sampleLike(const Take& now, const Take& before, const Instant& like) {
  Instant instant = like;
  std::optional<InstantMaker> maker;
  for (std::size_t i = 0; i < now.plan().crew.size(); ++i) {
    if (sameMember(now, before, i)) continue;
    if (!maker) maker.emplace(InstantMaker{.take = now, .t = like.time, .figures = {}});
    instant.crew.resize(std::max(instant.crew.size(), i + 1));
    instant.crew[i] = maker->crew(i);
  }
  instant.crew.resize(now.plan().crew.size());
  return instant;
}

Instant sampleNear(const Take& now, const Take& before, const Instant& like) {
  const double t = like.time;
  InstantMaker maker{.take = now, .t = t, .figures = {}};
  Instant instant = maker.withoutPeople();
  const bool alike = instant.camera == like.camera && instant.lens == like.lens && instant.iris == like.iris &&
                     instant.focus == like.focus && sameStands(now, like);
  if (!alike) return sampleAt(now, t);
  instant.performers = like.performers;
  for (std::size_t i = 0; i < now.plan().crew.size(); ++i)
    instant.crew.push_back(sameMember(now, before, i) ? like.crew[i] : maker.crew(i));
  return instant;
}

Instant instantAt(const Take& take, double t, const Evidence* evidence) {
  Instant instant = sampleAt(take, t);
  instant.timecode = take.timecodeAt(t);
  const auto eye = take.eyeAt(t, take.plan().sightRules.margin);
  sight::SceneAt now = take.scene().at(t);
  const auto glass = eye ? turnedGlass(take, now, *eye, t) : std::vector<TurnedGlass>{};
  addMirrors(glass, take, now);
  for (auto& crew : instant.crew) {
    if (!crew.present || !eye) continue;
    const sight::BodySight seen =
        sight::bodySight(now, *eye, {crew.pos, crew.radius, crew.floor, crew.floor + crew.height});
    crew.seen = seen.seen;
    if (seen.seen) crew.via = seen.mirror ? mirrorId(take, glass, *seen.mirror) : "direct";
    if (evidence) crew.nextSeen = nextSeen(*evidence, crew.id, t);
  }
  instant.background = backgroundAt(take, instant);
  return instant;
}

}  // namespace wend::answers
