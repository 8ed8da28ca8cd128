// More people of the crew in a shelter than it holds, as drawn. Who is planned for is never sent into a full one.
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

/// Standing or walking to and fro in its circle, or in it by name.
std::size_t inside(const Instant& instant, const plan::Shelter& shelter) {
  std::size_t count = 0;
  for (const CrewAt& at : instant.crew) {
    if (!at.present || at.carried) continue;
    if (at.shelter == shelter.id.text() || geometry::distance(at.pos, shelter.pos) <= shelter.radius) ++count;
  }
  return count;
}

}  // namespace

Findings shelterFull(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold row = threshold(plan, "shelter-full");
  for (const auto& shelter : plan.shelters) {
    const auto holds = static_cast<std::size_t>(std::max(shelter.holds, 0));
    const auto full = stretches(evidence, row.hold, [&](const Instant& instant, std::size_t) -> std::optional<double> {
      const std::size_t count = inside(instant, shelter);
      if (count <= holds) return std::nullopt;
      return static_cast<double>(count);
    });
    for (const auto& stretch : full) {
      const Span span = spanOf(evidence, stretch);
      findings.push_back({shelter.id.text(), shelter.id.text(), span.from, span.until, shelter.pos, row.severity,
                          std::to_string(static_cast<int>(stretch.value)) + " people are in " +
                              nameOf(plan, shelter.id.text()) + ", which holds " + std::to_string(shelter.holds),
                          "send one of them elsewhere, or delete a way and let one be found"});
    }
  }
  return findings;
}

}  // namespace wend::snags
