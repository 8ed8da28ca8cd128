// The lens comes nearer to a performer than anybody should without having agreed to it. Measured from the entrance
// pupil to the performer's upright axis.
#include <algorithm>

#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

double lensTo(const Instant& instant, const PerformerAt& at) {
  const geometry::Point3 lens = instant.camera.pupil.at;
  const double height = std::clamp(lens.z, at.floor, std::max(at.floor, at.top));
  return geometry::distance(lens, geometry::at(at.pos, height));
}

}  // namespace

Findings lensNear(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold row = threshold(plan, "lens-near");
  for (std::size_t i = 0; i < plan.performers.size(); ++i) {
    const std::string id = plan.performers[i].id.text();
    const auto near = stretches(evidence, row.hold, [&](const Instant& instant, std::size_t) -> std::optional<double> {
      if (i >= instant.performers.size() || !instant.performers[i].present) return std::nullopt;
      const double under = row.value - lensTo(instant, instant.performers[i]);
      return under > 0 ? std::optional<double>(under) : std::nullopt;
    });
    for (const auto& stretch : near) {
      const Span span = spanOf(evidence, stretch);
      findings.push_back(
          {id, "", span.from, span.until, evidence.samples[stretch.worst].performers[i].pos, row.severity,
           "the lens comes to " + lengthText(plan, row.value - stretch.value) + " from " + nameOf(plan, id),
           "caution: keep " + lengthText(plan, row.value) + " off, or agree on it with them and rehearse it slowly"});
    }
  }
  return findings;
}

}  // namespace wend::snags
