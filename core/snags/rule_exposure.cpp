// A face in frame is further off the set stop than the plan lets pass.
#include <cmath>

#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

std::optional<double> offsetOf(const Instant& instant, std::size_t performer) {
  const PerformerAt& face = instant.performers[performer];
  const bool shown = face.inFrame == optics::Showing::whole || face.inFrame == optics::Showing::part;
  return shown ? face.offset : std::nullopt;
}

void addSide(const Evidence& evidence, std::size_t performer, double sign, Findings& findings) {
  const plan::Plan& plan = *evidence.plan;
  const Threshold limit = threshold(plan, "exposure");
  const auto off = stretches(evidence, limit.hold, [&](const Instant& instant, std::size_t) {
    const auto offset = offsetOf(instant, performer);
    return offset && *offset * sign > limit.value ? std::optional<double>(*offset * sign) : std::nullopt;
  });
  for (const auto& stretch : off) {
    const PerformerAt& face = evidence.samples[stretch.worst].performers[performer];
    const Span span = spanOf(evidence, stretch);
    findings.push_back({face.id, placeOf(plan, face.pos), span.from, span.until, face.pos, limit.severity,
                        nameOf(plan, face.id) + " is " + stops(stretch.value * sign),
                        sign > 0 ? "stop down, take light off, or accept it" : "open up, add light, or accept it"});
  }
}

}  // namespace

Findings exposure(const Evidence& evidence) {
  Findings findings;
  for (std::size_t i = 0; i < evidence.plan->performers.size(); ++i)
    for (const double sign : {1.0, -1.0}) addSide(evidence, i, sign, findings);
  return findings;
}

}  // namespace wend::snags
