// Whose body, whose pole takes a lamp away from a face in frame.
#include <algorithm>
#include <tuple>

#include "core/answers/light_blockers.h"
#include "core/answers/spaced.h"
#include "core/answers/span_log.h"
#include "core/answers/whole_take.h"
#include "core/snags/thresholds.h"

namespace wend::answers {

using namespace snags;

namespace {

constexpr double kStep = 0.1;

using Way = std::tuple<std::string, std::string, std::string>;  ///< who, lamp, by

using ShadowLog = SpanLog<Way, ShadowOn>;

void addCuts(const Take& take, const Instant& instant, const light::Lighting& lighting, const LightBlockers& blockers,
             double least, ShadowLog& log) {
  for (const auto& at : instant.performers) {
    const bool shows = optics::shows(at.inFrame);
    if (!at.present || !shows) continue;
    const Point3 eyes = geometry::at(at.pos, at.eyes);
    const light::Face face{eyes, instant.camera.pupil.at - eyes};
    const light::FaceLight light = light::lightOnFace(lighting, face, instant.time);
    for (const auto& cut : light::lampCuts(lighting, face, light, blockers.bodies, least)) {
      const std::string lamp = take.plan().fixtures[cut.fixture].id.text(), by = blockers.names[cut.body];
      if (by == at.id) continue;
      ShadowOn& shadow = log.add(instant.time, {at.id, lamp, by}, {{}, at.id, lamp, by, cut.share, at.pos});
      shadow.share = std::max(shadow.share, cut.share);
    }
  }
}

}  // namespace

std::vector<ShadowOn> shadowsOn(const Take& take, const std::vector<Instant>& samples,
                                const std::vector<BoomLine>& boom) {
  if (take.plan().fixtures.size() == 0) return {};
  const double least = threshold(take.plan(), "shadow").value;
  // The light as it would be if nobody stood in it: a lamp that somebody has taken away already would not be told.
  light::Lighting bare = take.lighting();
  bare.bodies = {};
  ShadowLog log(spacing(samples, kStep));
  eachSpaced(samples, kStep, [&](const Instant& instant) {
    LightBlockers blockers = gearInLight(instant, boom);
    addPerformers(take, instant, blockers);
    addCuts(take, instant, bare, blockers, least, log);
  });
  return log.inOrder();
}

}  // namespace wend::answers
