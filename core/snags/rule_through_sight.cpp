// The lens sees ground of another room: whoever is there is in the take, and locking it up is somebody's job.
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings throughSight(const Evidence& evidence) {
  Findings findings;
  for (const auto& through : evidence.throughs) {
    std::string openings;
    for (const auto& id : through.openings)
      openings += (openings.empty() ? " through " : " and ") + nameOf(*evidence.plan, id);
    const bool several = through.openings.size() >= 2;
    findings.push_back(
        {"camera", through.room, through.span.from, through.span.until, std::nullopt,
         several ? Severity::risks : Severity::note,
         "the lens sees " + nameOf(*evidence.plan, through.room) + openings + " for " + seconds(through.span.length()),
         "lock that ground up, dress it, or close the way"});
  }
  return findings;
}

}  // namespace wend::snags
