// The sun in the lens or just beside the frame, and shadows that it throws into the picture.
#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings sunInLens(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "sun-in-lens");
  for (const auto& sun : evidence.sunInLens) {
    if (sun.offFrame > limit.value || sun.span.length() < limit.hold) continue;
    // Beside the frame it can be flagged; in the picture it stays.
    const bool inside = sun.offFrame <= 0;
    const std::string where =
        inside ? "the sun is in the frame" : "the sun is " + base::fixed(sun.offFrame, 0) + "\u00b0 off the frame";
    findings.push_back({"camera", "", sun.span.from, sun.span.until, sun.pos, inside ? Severity::risks : limit.severity,
                        where + ", " + base::fixed(sun.elevation, 0) + "\u00b0 up, and shines into the lens",
                        "caution: nobody looks at it through a finder; flag it, turn, or take another hour"});
  }
  return findings;
}

Findings sunShadow(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold limit = threshold(plan, "sun-shadow");
  for (const auto& shadow : evidence.sunShadows) {
    if (shadow.span.length() < limit.hold) continue;
    const std::string on = shadow.on.empty() ? "the ground" : nameOf(plan, shadow.on);
    findings.push_back({shadow.by, shadow.on, shadow.span.from, shadow.span.until, shadow.pos, limit.severity,
                        "the sun throws the shadow of " + bodyNameOf(plan, shadow.by) + " on " + on +
                            (shadow.face ? "'s face" : " in frame") + routeNote(evidence, shadow.by),
                        "go round on the other side, keep lower, or take another hour"});
  }
  return findings;
}

}  // namespace wend::snags
