// Ground with a use of its own: exit lanes that something stands in, and ground outside the set that the lens sees.
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings exitLane(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "exit-lane");
  for (const auto& lane : evidence.lanes)
    findings.push_back({lane.by, lane.area, lane.span.from, lane.span.until, lane.pos, limit.severity,
                        nameOf(*evidence.plan, lane.by) +
                            (evidence.plan->crew.find(lane.by) ? " stays in " : " stands in ") +
                            nameOf(*evidence.plan, lane.area),
                        "caution: exits stay free at all times, by local rules and whoever is in charge of them"});
  return findings;
}

Findings lockUp(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "lock-up");
  for (const auto& seen : evidence.outside) {
    if (seen.span.length() < limit.hold) continue;
    findings.push_back(
        {"camera", seen.area, seen.span.from, seen.span.until, std::nullopt, limit.severity,
         "the lens sees " + nameOf(*evidence.plan, seen.area) + ", outside the set, for " + seconds(seen.span.length()),
         "have somebody at every way in for that long, as agreed with whoever the place belongs to"});
  }
  return findings;
}

}  // namespace wend::snags
