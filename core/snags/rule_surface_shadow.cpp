// The camera, somebody of the crew or a pole throws the shadow of a lamp on what is in frame.
#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings surfaceShadow(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold limit = threshold(plan, "surface-shadow");
  for (const auto& shadow : evidence.surfaceShadows) {
    if (shadow.share < limit.value || shadow.span.length() < limit.hold - 1e-9) continue;
    const std::string on = shadow.on.empty() ? "the ground" : nameOf(plan, shadow.on);
    findings.push_back({shadow.by, shadow.on, shadow.span.from, shadow.span.until, shadow.pos, limit.severity,
                        "the shadow of " + bodyNameOf(plan, shadow.by) + " by " + nameOf(plan, shadow.lamp) +
                            " falls on " + on + " in frame, " + base::fixed(shadow.share * 100, 0) +
                            " % of the light there" + routeNote(evidence, shadow.by),
                        "go round on the other side of the lamp, keep lower, hang it higher, or light from elsewhere"});
  }
  return findings;
}

}  // namespace wend::snags
