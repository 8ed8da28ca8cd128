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

/// What a face that gets too little could still get. A lens that is wide open opens no further.
std::string lighten(const plan::Plan& plan, const Instant& worst) {
  constexpr double kRounding = 1e-3;
  const bool open = plan.lens && worst.iris.set <= plan.lens->stop[0] * (1 + kRounding);
  if (!open) return "open up, add light, or accept it";
  return std::string("the lens is wide open: add light, ") + (worst.iris.density > 0 ? "take density out, " : "") +
         "raise the exposure index, or accept it";
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
    findings.push_back(
        {face.id, placeOf(plan, face.pos), span.from, span.until, face.pos, limit.severity,
         nameOf(plan, face.id) + " is " + stops(stretch.value * sign),
         sign > 0 ? "stop down, take light off, or accept it" : lighten(plan, evidence.samples[stretch.worst])});
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
