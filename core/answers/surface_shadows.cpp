// Shadows of the camera, the crew and the poles by lamps, on walls, pieces and ground in frame.
#include <algorithm>
#include <tuple>

#include "core/answers/light_blockers.h"
#include "core/answers/shadow_fall.h"
#include "core/answers/spaced.h"
#include "core/answers/span_log.h"
#include "core/answers/whole_take.h"
#include "core/sight/ray.h"
#include "core/snags/thresholds.h"

namespace wend::answers {

using namespace snags;

namespace {

constexpr double kStep = 0.2;

using Key = std::tuple<std::string, std::string, std::string>;  ///< lamp, by, on
using SurfaceLog = SpanLog<Key, SurfaceShadow>;

/// Whether some point of the ray is in the frame: false where it begins outside one of the frame's sides and leads no
/// nearer to it.
bool mayEnter(const Instant& instant, Point3 from, geometry::Vec3 along) {
  const geometry::Pose& pupil = instant.camera.pupil;
  const geometry::InView at = pupil.view(from), way = pupil.view(pupil.at + along);
  const auto stays = [](double off, double on) { return off > 0 && on >= 0; };
  const double wide = instant.lens->half.h, high = instant.lens->half.v;
  return !stays(at.right - wide * at.ahead, way.right - wide * way.ahead) &&
         !stays(-at.right - wide * at.ahead, -way.right - wide * way.ahead) &&
         !stays(at.up - high * at.ahead, way.up - high * way.ahead) &&
         !stays(-at.up - high * at.ahead, -way.up - high * way.ahead);
}

/// One instant's lamps and what stands in them.
class Surfaces {
 public:
  Surfaces(const Take& take, const light::Lighting& lighting, const Instant& instant, double least)
      : take_(take),
        lighting_(lighting),
        instant_(instant),
        eye_(take.eyeAt(instant.time, 0)),
        now_(take.scene().at(instant.time)),
        least_(least) {
    for (std::size_t i = 0; i < lighting.fixtures.size(); ++i)
      if (light::levelAt(lighting.fixtures[i], instant.time) > 0) lit_.push_back(i);
  }

  std::vector<SurfaceShadow> of(const light::Blocker& body, const std::string& by) const {
    std::vector<SurfaceShadow> found;
    if (!eye_) return found;
    const std::vector<Point3> axis = axisOf(body);
    for (const std::size_t i : lit_) {
      const plan::Fixture& lamp = take_.plan().fixtures[i];
      for (const Point3 point : axis) {
        const auto fallen = behind(geometry::at(lamp.pos, lamp.height), point);
        if (!fallen || !sight::pointSight(now_, *eye_, fallen->at).seen()) continue;
        const double share = shareOf(i, body, *fallen);
        if (share > 0) found.push_back({{}, lamp.id.text(), by, fallen->on, share, geometry::flat(fallen->at)});
      }
    }
    return found;
  }

 private:
  /// Nothing, too, where no place behind the point is in frame.
  std::optional<Fallen> behind(Point3 lamp, Point3 point) const {
    const double metres = geometry::distance(lamp, point);
    if (metres <= 0) return std::nullopt;
    const geometry::Vec3 along = (point - lamp) * (1 / metres);
    return mayEnter(instant_, point, along) ? fallOf(take_, now_, along, point) : std::nullopt;
  }

  /// Of the exposure there that the lamp gives, none where it does not matter or does not get that far.
  double shareOf(std::size_t fixture, const light::Blocker& body, const Fallen& fallen) const {
    const light::Face face{fallen.at, instant_.camera.pupil.at - fallen.at};
    const light::FaceLight light = light::lightOnFace(lighting_, face, instant_.time);
    for (const auto& cut : light::lampCuts(lighting_, face, light, {&body, 1}, least_))
      if (cut.fixture == fixture) return cut.share;
    return 0;
  }

  const Take& take_;
  const light::Lighting& lighting_;
  const Instant& instant_;
  const std::optional<sight::Eye> eye_;
  const sight::SceneAt now_;
  double least_;
  std::vector<std::size_t> lit_;  ///< lamps that are on, by their places in the plan
};

/// The same body in an earlier list, with what its shadow fell on. Null where it was not there.
const std::vector<SurfaceShadow>* fallenOf(const FallenAt* before, const light::Blocker& body, const std::string& by) {
  for (std::size_t i = 0; before != nullptr && i < before->found.size(); ++i)
    if (before->gear.names[i] == by && before->gear.bodies[i] == body) return &before->found[i];
  return nullptr;
}

/// Of bodies that stand as they did, what is known before.
FallenAt fallenAt(const Take& take, const light::Lighting& lighting, const Instant& instant, LightBlockers gear,
                  const FallenAt* before) {
  FallenAt now{instant.time, std::move(gear), {}};
  std::optional<Surfaces> surfaces;
  for (std::size_t i = 0; i < now.gear.bodies.size(); ++i) {
    const auto* known = fallenOf(before, now.gear.bodies[i], now.gear.names[i]);
    if (known == nullptr && !surfaces)
      surfaces.emplace(take, lighting, instant, threshold(take.plan(), "surface-shadow").value);
    now.found.push_back(known != nullptr ? *known : surfaces->of(now.gear.bodies[i], now.gear.names[i]));
  }
  return now;
}

void note(const FallenAt& fallen, SurfaceLog& log) {
  for (const auto& byBody : fallen.found)
    for (const SurfaceShadow& now : byBody) {
      SurfaceShadow& shadow = log.add(fallen.time, {now.lamp, now.by, now.on}, now);
      shadow.share = std::max(shadow.share, now.share);
    }
}

}  // namespace

std::vector<SurfaceShadow> surfaceShadows(const Take& take, const std::vector<Instant>& samples,
                                          const std::vector<BoomLine>& boom, ByInstant<FallenAt>* known) {
  if (take.plan().fixtures.size() == 0) return {};
  light::Lighting bare = take.lighting();
  bare.bodies = {};
  ByInstant<FallenAt> nothing;
  ByInstant<FallenAt>& instants = known != nullptr ? *known : nothing;
  SurfaceLog log(spacing(samples, kStep));
  eachSpaced(samples, kStep, [&](const Instant& instant) {
    if (!instant.lens) return;
    const FallenAt* before = instants.known(instant.time);
    note(instants.keep(fallenAt(take, bare, instant, gearInLight(instant, boom), before)), log);
  });
  return log.inOrder();
}

}  // namespace wend::answers
