// Somebody of the crew, the camera or a boom takes a lamp that matters away from a face in frame. Of a performer it is
// worth knowing only: it may be what was staged.
#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings shadow(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold limit = threshold(plan, "shadow");
  for (const auto& cut : evidence.shadows) {
    if (cut.share < limit.value || cut.span.length() < limit.hold) continue;
    const Severity severity = plan.performers.find(cut.by) ? Severity::note : limit.severity;
    findings.push_back({cut.by, cut.lamp, cut.span.from, cut.span.until, cut.pos, severity,
                        bodyNameOf(plan, cut.by) + " takes " + nameOf(plan, cut.lamp) + " off " +
                            nameOf(plan, cut.who) + ", " + base::fixed(cut.share * 100, 0) +
                            " % of the light on the face" + routeNote(evidence, cut.by),
                        "go round on the other side of the lamp, hang it higher, or light from elsewhere"});
  }
  return findings;
}

}  // namespace wend::snags
