// By the time a picture link shows the subject, it is out of the sharp band around where it was: whoever pulls by that
// picture alone comes too late.
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/snags/distances_apart.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

/// How far the subject comes nearer or goes away while the picture is under way; nothing where that is not known.
std::optional<double> goneMeanwhile(const Evidence& evidence, std::size_t index, double delay) {
  if (index == 0) return std::nullopt;
  const Instant &before = evidence.samples[index - 1], &now = evidence.samples[index];
  if (!before.focus.known || !now.focus.known || before.focus.changing || now.focus.changing) return std::nullopt;
  const double apart = now.time - before.time;
  if (apart <= 0 || before.focus.on != now.focus.on) return std::nullopt;
  return std::abs(now.focus.wantedDistance - before.focus.wantedDistance) / apart * delay;
}

}  // namespace

Findings linkLate(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "link-late");
  for (const auto& link : evidence.plan->links) {
    if (link.kind != plan::LinkKind::picture || link.delay <= 0) continue;
    const auto late = stretches(evidence, limit.hold, [&](const Instant& instant, std::size_t i) {
      const auto gone = instant.lens ? goneMeanwhile(evidence, i, link.delay) : std::nullopt;
      return gone && *gone > nearerHalf(instant.focus) * limit.value ? gone : std::nullopt;
    });
    for (const auto& stretch : late) {
      const Span span = spanOf(evidence, stretch);
      const FocusAt& focus = evidence.samples[stretch.worst].focus;
      findings.push_back({link.id.text(), "", span.from, span.until, std::nullopt, limit.severity,
                          nameOf(*evidence.plan, link.id.text()) + " shows " + nameOf(*evidence.plan, focus.on[0]) +
                              " " + base::fixed(link.delay, 2) +
                              " s late: " + lengthText(*evidence.plan, stretch.value) +
                              " of way, and the sharp band holds " + lengthText(*evidence.plan, nearerHalf(focus)),
                          "pull by marks and by eye there, not by that picture"});
    }
  }
  return findings;
}

}  // namespace wend::snags
