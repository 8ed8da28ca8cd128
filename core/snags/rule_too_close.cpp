// The subject, or somebody of a split, is nearer than the lens can focus. Stops the take.
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

/// Whoever of a split is nearest; else what the focus is on.
SplitOn nearestOf(const FocusAt& focus) {
  SplitOn nearest{focus.on.front(), focus.wantedDistance, 0};
  for (const SplitOn& one : focus.split)
    if (one.distance < nearest.distance) nearest = one;
  return nearest;
}

}  // namespace

Findings tooClose(const Evidence& evidence) {
  Findings findings;
  if (!evidence.plan->lens) return findings;
  const double closest = evidence.plan->lens->closeFocus;
  const Threshold limit = threshold(*evidence.plan, "too-close");
  const auto near = stretches(evidence, limit.hold, [&](const Instant& instant, std::size_t) {
    if (!instant.focus.known || instant.focus.changing) return std::optional<double>();
    const double distance = nearestOf(instant.focus).distance;
    return distance < closest * limit.value ? std::optional(closest - distance) : std::nullopt;
  });
  for (const auto& stretch : near) {
    const Instant& worst = evidence.samples[stretch.worst];
    const SplitOn nearest = nearestOf(worst.focus);
    const Span span = spanOf(evidence, stretch);
    findings.push_back(
        {worst.focus.on.front(), "", span.from, span.until, geometry::flat(worst.camera.sensor.at), limit.severity,
         subjectName(*evidence.plan, nearest.id) + " comes to " + lengthText(*evidence.plan, nearest.distance) +
             ", the lens focuses from " + lengthText(*evidence.plan, closest),
         "stay " + lengthText(*evidence.plan, stretch.value) + " further off"});
  }
  return findings;
}

}  // namespace wend::snags
