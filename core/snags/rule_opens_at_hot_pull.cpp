// The iris opens, and so narrows the sharp band, while the focus is hot or within a moment of it.
#include <algorithm>

#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"
#include "core/units/stop.h"

namespace wend::snags {

namespace {

/// Seconds between two spans; 0 when they meet.
double gapBetween(const Span& a, const Span& b) {
  return std::max({0.0, a.from - b.until, b.from - a.until});
}

}  // namespace

Findings opensAtHotPull(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold limit = threshold(plan, "opens-at-hot-pull");
  const auto hot = hotStretches(evidence);
  for (const auto& move : evidence.moves) {
    if (move.axis != Move::Axis::iris || !(move.valueAfter < move.valueBefore)) continue;
    for (const auto& stretch : hot) {
      if (gapBetween({move.from, move.until}, spanOf(evidence, stretch)) > limit.value) continue;
      const Instant& worst = evidence.samples[stretch.worst];
      findings.push_back({"iris", "", move.from, move.until, geometry::flat(worst.camera.sensor.at), limit.severity,
                          "the iris opens from " + units::stopText(move.valueBefore) + " to " +
                              units::stopText(move.valueAfter) + " beside hot focus on " +
                              subjectName(plan, worst.focus.on.front()) + " (band " +
                              base::fixed(*worst.focus.warmth, 1) + " \u00d7 wobble)",
                          "open before or after the hot stretch, or add light there instead"});
      break;
    }
  }
  return findings;
}

}  // namespace wend::snags
