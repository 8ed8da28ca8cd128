// The kind of distance that the focus goes by and the one it would be taken for are so far apart that the difference
// uses up the sharp band: a lens high over the eyes, or a subject off the axis.
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/snags/distances_apart.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

std::string apartText(const plan::Plan& plan, const Instant& instant, double share) {
  const NamedDistance used = usedDistance(plan, instant.focus.wanted),
                      other = otherDistance(plan, instant.focus.wanted);
  return nameOf(plan, instant.focus.on[0]) + " at " + lengthText(plan, used.metres) + " " + used.name +
         ", which the focus goes by, is at " + lengthText(plan, other.metres) + " " + other.name + ": " +
         base::fixed(share, 1) + " of the sharp band's nearer half apart";
}

}  // namespace

Findings distancesApart(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold limit = threshold(plan, "distances-apart");
  const auto apart = stretches(evidence, limit.hold, [&](const Instant& instant, std::size_t) {
    const auto share = apartOverBand(plan, instant);
    return share && *share > limit.value ? share : std::nullopt;
  });
  for (const auto& stretch : apart) {
    const Span span = spanOf(evidence, stretch);
    const Instant& worst = evidence.samples[stretch.worst];
    findings.push_back({worst.focus.on[0], "", span.from, span.until, std::nullopt, limit.severity,
                        apartText(plan, worst, stretch.value),
                        "measure the kind the focus goes by there, or have it go by the kind that is measured"});
  }
  return findings;
}

}  // namespace wend::snags
