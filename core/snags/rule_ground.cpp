// What the way meets: leaves that are not open yet, edges of the ground underfoot, and marks the lens can read.
#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings doorLate(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "door-late");
  for (const auto& met : evidence.leaves) {
    const std::string who = bodyNameOf(*evidence.plan, met.who);
    findings.push_back({met.who, met.opening, met.time, met.time, met.pos, limit.severity,
                        who + " reaches " + nameOf(*evidence.plan, met.opening) + " before it is open",
                        "open it earlier or come later"});
  }
  return findings;
}

Findings stepCrossed(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "step");
  for (const auto& step : evidence.crossings) {
    if (step.height < limit.value) continue;
    const std::string who = bodyNameOf(*evidence.plan, step.who);
    std::string text = who + " crosses " + cableNameOf(*evidence.plan, step.place) + ", " +
                       lengthText(*evidence.plan, step.height) + " high";
    if (step.backwards) text += ", backwards";
    if (std::abs(step.panRate) > 1) text += ", while panning at " + base::fixed(std::abs(step.panRate), 0) + "\u00b0/s";
    text += routeNote(evidence, step.who);
    // Whoever walks backwards does not see it coming.
    findings.push_back({step.who, step.place, step.time, step.time, step.pos,
                        step.backwards ? Severity::risks : limit.severity, text,
                        "caution: mark the edge, ramp it if allowed, and have the spotter call it"});
  }
  return findings;
}

Findings markInFrame(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "mark-in-frame");
  for (const auto& mark : evidence.marks) {
    if (mark.span.length() < limit.hold) continue;
    findings.push_back({mark.who, "mark" + std::to_string(mark.mark + 1), mark.span.from, mark.span.until, mark.pos,
                        limit.severity,
                        "tape mark " + std::to_string(mark.mark + 1) + " of " + nameOf(*evidence.plan, mark.who) +
                            " is in frame for " + seconds(mark.span.length()),
                        "lift it once it is used, or use a mark the lens cannot read"});
  }
  return findings;
}

}  // namespace wend::snags
