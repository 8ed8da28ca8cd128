// The subject is nearer than the lens can focus. Stops the take.
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings tooClose(const Evidence& evidence) {
  Findings findings;
  if (!evidence.plan->lens) return findings;
  const double closest = evidence.plan->lens->closeFocus;
  const Threshold limit = threshold(*evidence.plan, "too-close");
  const auto near = stretches(evidence, limit.hold, [&](const Instant& instant, std::size_t) {
    return instant.focus.known && !instant.focus.changing && instant.focus.wantedDistance < closest * limit.value
               ? std::optional<double>(closest - instant.focus.wantedDistance)
               : std::nullopt;
  });
  for (const auto& stretch : near) {
    const Instant& worst = evidence.samples[stretch.worst];
    const Span span = spanOf(evidence, stretch);
    findings.push_back({worst.focus.on.front(), "", span.from, span.until, geometry::flat(worst.camera.sensor.at),
                        limit.severity,
                        subjectName(*evidence.plan, worst.focus.on.front()) + " comes to " +
                            lengthText(*evidence.plan, worst.focus.wantedDistance) + ", the lens focuses from " +
                            lengthText(*evidence.plan, closest),
                        "stay " + lengthText(*evidence.plan, stretch.value) + " further off"});
  }
  return findings;
}

}  // namespace wend::snags
