// The sharp band is narrower than people and rig wobble: the focus is a gamble there, however good the hand. Each cure
// is one change alone, with the band it would give.
#include "core/base/text.h"
#include "core/snags/cures.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

std::string mendOf(const plan::Plan& plan, const Instant& worst) {
  const std::string cures = curesText(plan, curesAt(plan, worst));
  return cures.empty() ? "back off, widen or stop down" : cures;
}

}  // namespace

Findings hotFocus(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold limit = threshold(plan, "warmth");
  for (const auto& stretch : hotStretches(evidence)) {
    const Instant& worst = evidence.samples[stretch.worst];
    const Span span = spanOf(evidence, stretch);
    const std::string tightest =
        worst.focus.tightest.empty() ? "" : ", least for " + nameOf(plan, worst.focus.tightest);
    findings.push_back(
        {worst.focus.on.front(), "", span.from, span.until, geometry::flat(worst.camera.sensor.at), limit.severity,
         "hot focus on " + subjectName(plan, worst.focus.on.front()) + ": band " + base::fixed(*worst.focus.warmth, 1) +
             " \u00d7 wobble (\u00b1" + lengthText(plan, *worst.focus.wobble) + ") at " +
             lengthText(plan, worst.focus.wantedDistance) + tightest,
         mendOf(plan, worst)});
  }
  return findings;
}

}  // namespace wend::snags
