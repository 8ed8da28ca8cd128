// The focus barrel must turn faster than the lens' limit.
#include <cmath>

#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings barrelFast(const Evidence& evidence) {
  Findings findings;
  if (!evidence.plan->lens) return findings;
  const Threshold row = threshold(*evidence.plan, "barrel");
  const double limit = evidence.plan->lens->limits.focusDegPerSecond * row.value;
  const auto fast = stretches(evidence, row.hold, [&](const Instant& instant, std::size_t) {
    const double rate = std::abs(instant.focus.barrelRate);
    return rate > limit * (1 + 1e-9) ? std::optional<double>(rate) : std::nullopt;
  });
  for (const auto& stretch : fast) {
    const Span span = spanOf(evidence, stretch);
    findings.push_back(
        {"focus", "", span.from, span.until, std::nullopt, row.severity,
         "focus barrel at " + base::fixed(stretch.value, 0) + "\u00b0/s, limit " + base::fixed(limit, 0) + "\u00b0/s",
         "start the pull earlier or give the change of subject longer"});
  }
  return findings;
}

}  // namespace wend::snags
