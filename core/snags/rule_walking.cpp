// How fast the lens and the crew walk, and when the operator walks backwards. What is done about it is for the people
// on the day.
#include "core/base/text.h"
#include "core/crew/pace.h"
#include "core/crew/walking.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

std::string pace(double speed) {
  return base::fixed(speed, 2) + " m/s";
}

bool walksBackwards(const Instant& instant) {
  const CameraAt& camera = instant.camera;
  return crew::carryOf(camera.speed, camera.travel, camera.sensor.bearing) == crew::Carry::rear;
}

void addCrewSpeed(const Evidence& evidence, std::size_t k, Findings& findings) {
  const Threshold limit = threshold(*evidence.plan, "crew-speed");
  const auto fast =
      stretches(evidence, limit.hold, [&](const Instant& instant, std::size_t i) -> std::optional<double> {
        if (i == 0 || instant.crew[k].carried || !instant.crew[k].present) return std::nullopt;
        const Instant& before = evidence.samples[i - 1];
        if (!before.crew[k].present || instant.time <= before.time) return std::nullopt;
        const double speed = geometry::distance(before.crew[k].pos, instant.crew[k].pos) / (instant.time - before.time);
        return speed > limit.value + crew::kPaceTold ? std::optional<double>(speed) : std::nullopt;
      });
  for (const auto& stretch : fast) {
    const CrewAt& crew = evidence.samples[stretch.worst].crew[k];
    const Span span = spanOf(evidence, stretch);
    const std::string found = routeNote(evidence, crew.id);
    findings.push_back({crew.id, "", span.from, span.until, crew.pos, limit.severity,
                        nameOf(*evidence.plan, crew.id) + " walks at " + pace(stretch.value) +
                            "; silent pace ends at " + pace(limit.value) + found,
                        found.empty() ? "leave earlier, or accept the noise"
                                      : "no slower way was found: give them more time, or accept the noise"});
  }
}

}  // namespace

Findings speed(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "lens-speed");
  const auto fast = stretches(evidence, limit.hold, [&](const Instant& instant, std::size_t) {
    const double value = instant.camera.speed;
    return value > limit.value + 1e-6 ? std::optional<double>(value) : std::nullopt;
  });
  for (const auto& stretch : fast) {
    const Span span = spanOf(evidence, stretch);
    findings.push_back({"camera", "", span.from, span.until,
                        geometry::flat(evidence.samples[stretch.worst].camera.sensor.at), limit.severity,
                        "lens at " + pace(stretch.value) + ", over " + pace(limit.value) + " for a front carry",
                        "give the leg more time"});
  }
  for (std::size_t k = 0; k < evidence.plan->crew.size(); ++k) addCrewSpeed(evidence, k, findings);
  return findings;
}

Findings backwards(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold any = threshold(plan, "backwards"), brisk = threshold(plan, "backwards-brisk"),
                  most = threshold(plan, "backwards-most");
  const auto spans = stretches(evidence, any.hold, [&](const Instant& instant, std::size_t) {
    return walksBackwards(instant) ? std::optional<double>(instant.camera.speed) : std::nullopt;
  });
  for (const auto& stretch : spans) {
    const Span span = spanOf(evidence, stretch);
    const Severity severity = stretch.value > most.value    ? most.severity
                              : stretch.value > brisk.value ? brisk.severity
                                                            : any.severity;
    findings.push_back(
        {"camera", "", span.from, span.until, geometry::flat(evidence.samples[stretch.worst].camera.sensor.at),
         severity, "the operator walks backwards for " + seconds(span.length()) + " at up to " + pace(stretch.value),
         "caution: a spotter with a hand on the operator, a clear lane, slow rehearsal first; the "
         "people in charge on the day decide"});
  }
  return findings;
}

}  // namespace wend::snags
