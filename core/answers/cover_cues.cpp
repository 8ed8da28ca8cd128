// Cues of light that the lens sees the work of: a change of what faces in frame, or lit ground in frame, ask for.
#include <algorithm>
#include <cmath>

#include "core/answers/covers.h"
#include "core/snags/stretch.h"
#include "core/units/stop.h"

namespace wend::answers::covers {

using namespace snags;
using pulls::CoverKind;
using pulls::CoverSpan;

namespace {

/// Height at which readings are taken, metres above the floor: about a face's. Common practice, no source.
constexpr double kMeterHeight = 1.5;

struct Cue {
  double at = 0, over = 0;
  std::string name;
  bool operator==(const Cue&) const = default;
};

std::vector<Cue> cuesOf(const plan::Plan& plan) {
  std::vector<Cue> cues;
  // One cue may work several lamps and areas.
  const auto add = [&](const plan::KeyTime& time, const std::string& name) {
    const Cue cue{plan::secondsOf(plan, time.at), time.over, name};
    if (cue.at > 0 && std::find(cues.begin(), cues.end(), cue) == cues.end()) cues.push_back(cue);
  };
  for (const auto& area : plan.set.areas)
    for (const auto& state : area.states) add(state.time, state.name.empty() ? area.name : state.name);
  for (const auto& fixture : plan.fixtures)
    for (const auto& key : fixture.level) add(key.time, key.name.empty() ? fixture.name : key.name);
  return cues;
}

/// Where the work of a cue may show: faces in frame, and metered places in frame.
std::vector<geometry::Point3> placesInFrame(const Take& take, const Instant& instant) {
  std::vector<geometry::Point3> places;
  if (!instant.lens) return places;
  for (const auto& at : instant.performers)
    if (at.present && optics::shows(at.inFrame)) places.push_back(geometry::at(at.pos, at.eyes));
  for (const auto& area : take.plan().set.areas)
    for (const auto& state : area.states)
      for (const auto& reading : state.readings) {
        const auto place = geometry::at(reading.pos, take.people().floorAt(reading.pos) + kMeterHeight);
        if (optics::inFrame(place, instant.camera.pupil, instant.lens->half)) places.push_back(place);
      }
  return places;
}

/// The most that a place asks for more or less once the cue is done, in stops.
double strengthOf(const Take& take, const Cue& cue, const std::vector<geometry::Point3>& places) {
  // A cue without a length acts at its instant: just before and just after it.
  constexpr double kJust = 1e-6;
  double most = 0;
  for (const auto place : places) {
    const auto before = take.neededAt(place, cue.at - kJust), after = take.neededAt(place, cue.at + cue.over + kJust);
    if (before && after) most = std::max(most, std::abs(units::stopsBetween(*before, *after)));
  }
  return most;
}

/// The first sample from t on; one of its own where t lies outside them.
Instant sampleFrom(const Take& take, const std::vector<Instant>& samples, double t) {
  const auto then = std::lower_bound(samples.begin(), samples.end(), t,
                                     [](const Instant& instant, double time) { return instant.time < time; });
  return then == samples.end() || t < samples.front().time ? sampleAt(take, t) : *then;
}

}  // namespace

void addCues(const Take& take, const std::vector<Instant>& samples, std::vector<CoverSpan>& covers) {
  for (const Cue& cue : cuesOf(take.plan())) {
    const Span span{std::max(cue.at - pulls::kCueLead, 0.0),
                    std::min(cue.at + cue.over + pulls::kCueLinger, take.length())};
    if (cue.at > take.length() || span.until < samples.front().time || span.from > samples.back().time) continue;
    const double strength = strengthOf(take, cue, placesInFrame(take, sampleFrom(take, samples, cue.at)));
    if (strength < pulls::kLightCue) continue;
    covers.push_back({CoverKind::lightCue, span, strength, cue.name});
  }
}

}  // namespace wend::answers::covers
