// Crew or the camera walk on ground marked as noisy while somebody speaks.
#include <functional>

#include "core/plan/area_use.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

/// Where somebody walks at a sample; nothing while they stand or are not there.
using WalksAt = std::function<std::optional<Point>(const Instant&)>;

void addSteps(const Evidence& evidence, const plan::Area& area, const plan::Speech& line, const std::string& who,
              const WalksAt& walksAt, Findings& findings) {
  const plan::Plan& plan = *evidence.plan;
  const Threshold limit = threshold(plan, "noisy-step");
  const Span spoken{plan::secondsOf(plan, line.from), plan::secondsOf(plan, line.until)};
  const auto walked =
      stretches(evidence, limit.hold, [&](const Instant& instant, std::size_t) -> std::optional<double> {
        if (!spoken.contains(instant.time)) return std::nullopt;
        const auto pos = walksAt(instant);
        return pos && onArea(area, *pos) ? std::optional<double>(1) : std::nullopt;
      });
  for (const auto& stretch : walked) {
    const Span span = spanOf(evidence, stretch);
    findings.push_back({who, area.id.text(), span.from, span.until, walksAt(evidence.samples[stretch.first]),
                        limit.severity,
                        bodyNameOf(plan, who) + " walks on " + nameOf(plan, area.id.text()) +
                            ", which is noisy, while " + nameOf(plan, line.who) + " speaks" + routeNote(evidence, who),
                        "walk before or after the line, lay something soft, or record it apart"});
  }
}

}  // namespace

Findings noisyStep(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  for (const auto& area : plan.set.areas) {
    if (!plan::usedAs(area, plan::AreaUse::noisy)) continue;
    for (const auto& line : plan.speech) {
      addSteps(
          evidence, area, line, "camera",
          [](const Instant& at) {
            return at.camera.moving ? std::optional(geometry::flat(at.camera.sensor.at)) : std::nullopt;
          },
          findings);
      for (std::size_t k = 0; k < plan.crew.size(); ++k)
        addSteps(
            evidence, area, line, plan.crew[k].id.text(),
            [k](const Instant& at) {
              const CrewAt& crew = at.crew[k];
              return crew.present && crew.walking && !crew.carried ? std::optional(crew.pos) : std::nullopt;
            },
            findings);
    }
  }
  return findings;
}

}  // namespace wend::snags
