// Two faces in one frame so far apart in light that no stop serves both.
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"
#include "core/units/stop.h"

namespace wend::snags {

namespace {

std::optional<double> neededOf(const Instant& instant, std::size_t performer) {
  const PerformerAt& face = instant.performers[performer];
  const bool shown = optics::shows(face.inFrame);
  return face.present && shown ? face.needed : std::nullopt;
}

/// Stops between two faces; nothing while one does not show or is not known.
std::optional<double> apart(const Instant& instant, std::size_t one, std::size_t other) {
  const auto a = neededOf(instant, one), b = neededOf(instant, other);
  if (!a || !b) return std::nullopt;
  return std::abs(units::stopsBetween(*b, *a));
}

void addPair(const Evidence& evidence, std::size_t one, std::size_t other, Findings& findings) {
  const plan::Plan& plan = *evidence.plan;
  const Threshold limit = threshold(plan, "faces-apart");
  const auto found = stretches(evidence, limit.hold, [&](const Instant& instant, std::size_t) {
    const auto stops = apart(instant, one, other);
    return stops && *stops > limit.value ? stops : std::nullopt;
  });
  for (const auto& stretch : found) {
    const Instant& worst = evidence.samples[stretch.worst];
    const PerformerAt &a = worst.performers[one], &b = worst.performers[other];
    const Span span = spanOf(evidence, stretch);
    findings.push_back({a.id, b.id, span.from, span.until, a.pos, limit.severity,
                        nameOf(plan, a.id) + " (" + units::stopText(*a.needed) + ") and " + nameOf(plan, b.id) + " (" +
                            units::stopText(*b.needed) + ") are " + base::fixed(stretch.value, 1) +
                            " stops apart in one frame",
                        "bring their light together, keep one of them out of frame, or expose for one and say so"});
  }
}

}  // namespace

Findings facesApart(const Evidence& evidence) {
  Findings findings;
  for (std::size_t i = 0; i < evidence.plan->performers.size(); ++i)
    for (std::size_t k = i + 1; k < evidence.plan->performers.size(); ++k) addPair(evidence, i, k, findings);
  return findings;
}

}  // namespace wend::snags
