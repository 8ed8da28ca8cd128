// The sun in the lens, and the shadows it throws into the picture.
#include <algorithm>
#include <cmath>
#include <tuple>

#include "core/answers/light_blockers.h"
#include "core/answers/shadow_fall.h"
#include "core/answers/spaced.h"
#include "core/answers/span_log.h"
#include "core/answers/sun.h"
#include "core/answers/whole_take.h"
#include "core/sight/ray.h"
#include "core/snags/thresholds.h"

namespace wend::answers {

using namespace snags;
using geometry::Vec3;

namespace {

constexpr double kStep = 0.1;

/// Every tenth of a second of the samples that has a sun above the horizon.
template <class Visit>
void withSun(const Take& take, const std::vector<Instant>& samples, Visit visit) {
  eachSpaced(samples, kStep, [&](const Instant& instant) {
    if (const auto towards = towardsSun(take.plan(), instant.time)) visit(instant, *towards);
  });
}

/// Degrees from the frame's nearest side, negative inside; nothing behind the lens.
std::optional<double> offFrame(const CameraAt& camera, const LensAt& lens, Vec3 towards) {
  const geometry::InView view = camera.pupil.view(camera.pupil.at + towards);
  if (view.ahead <= 0) return std::nullopt;
  const double across = geometry::degrees(std::atan2(std::abs(view.right), view.ahead)) - lens.hfov / 2;
  const double up = geometry::degrees(std::atan2(std::abs(view.up), view.ahead)) - lens.vfov / 2;
  return std::max(across, up);
}

using Key = std::pair<std::string, std::string>;  ///< by, on
using SunLog = SpanLog<Key, SunShadow>;

void addFaces(const Take& take, const Instant& instant, const sight::SceneAt& now, Vec3 towards,
              const LightBlockers& blockers, SunLog& log) {
  for (const auto& at : instant.performers) {
    const bool shows = optics::shows(at.inFrame);
    const Point3 eyes = geometry::at(at.pos, at.eyes);
    if (!at.present || !shows || !sunReaches(take, now, towards, eyes)) continue;
    for (std::size_t i = 0; i < blockers.bodies.size(); ++i)
      if (light::cutsLight(blockers.bodies[i], towards, eyes))
        log.add(instant.time, {blockers.names[i], at.id}, {{}, blockers.names[i], at.id, true, at.pos});
  }
}

void addFallen(const Take& take, const Instant& instant, const sight::SceneAt& now, Vec3 towards,
               const LightBlockers& blockers, SunLog& log) {
  const auto eye = take.eyeAt(instant.time, 0);
  if (!eye) return;
  for (std::size_t i = 0; i < blockers.bodies.size(); ++i)
    for (const Point3 point : axisOf(blockers.bodies[i])) {
      const auto fallen = fallOf(take, now, towards * -1, point);
      if (!fallen || !sight::pointSight(now, *eye, fallen->at).seen()) continue;
      if (!sunReaches(take, now, towards, point)) continue;
      log.add(instant.time, {blockers.names[i], fallen->on},
              {{}, blockers.names[i], fallen->on, false, geometry::flat(fallen->at)});
    }
}

}  // namespace

std::vector<SunInLens> sunInLens(const Take& take, const std::vector<Instant>& samples) {
  const double least = threshold(take.plan(), "sun-in-lens").value;
  SpanLog<int, SunInLens> log(spacing(samples, kStep));
  withSun(take, samples, [&](const Instant& instant, Vec3 towards) {
    if (!instant.lens) return;
    const auto off = offFrame(instant.camera, *instant.lens, towards);
    if (!off || *off > least) return;
    if (!sunReaches(take, take.scene().at(instant.time), towards, instant.camera.pupil.at)) return;
    const double elevation = geometry::degrees(std::asin(towards.z));
    SunInLens now{{}, *off, elevation, geometry::flat(instant.camera.sensor.at)};
    SunInLens& entry = log.add(instant.time, 0, now);
    if (now.offFrame < entry.offFrame) entry.offFrame = now.offFrame, entry.elevation = now.elevation;
  });
  return log.inOrder();
}

std::vector<SunShadow> sunShadows(const Take& take, const std::vector<Instant>& samples,
                                  const std::vector<BoomLine>& boom) {
  SunLog log(spacing(samples, kStep));
  withSun(take, samples, [&](const Instant& instant, Vec3 towards) {
    if (!instant.lens) return;
    const sight::SceneAt now = take.scene().at(instant.time);
    const LightBlockers blockers = gearInLight(instant, boom);
    addFaces(take, instant, now, towards, blockers, log);
    addFallen(take, instant, now, towards, blockers, log);
  });
  return log.inOrder();
}

}  // namespace wend::answers
