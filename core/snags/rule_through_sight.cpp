// The lens sees ground of another room: whoever is there is in the take, and locking it up is somebody's job.
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings throughSight(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "through-sight");
  for (const auto& through : evidence.throughs) {
    std::string openings;
    for (const auto& id : through.openings)
      openings += (openings.empty() ? " through " : " and ") + nameOf(*evidence.plan, id);
    // Through one opening people look for themselves; what is seen through two in a row comes as a surprise.
    const bool several = through.openings.size() >= 2;
    findings.push_back(
        {"camera", through.room, through.span.from, through.span.until, std::nullopt,
         several ? Severity::risks : limit.severity,
         "the lens sees " + nameOf(*evidence.plan, through.room) + openings + " for " + seconds(through.span.length()),
         "lock that ground up, dress it, or close the way"});
  }
  return findings;
}

}  // namespace wend::snags
