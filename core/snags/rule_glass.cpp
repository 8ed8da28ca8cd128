// Glass that has turned into a mirror: worth knowing by itself where the light alone makes it one, a risk once it shows
// somebody.
#include <cmath>

#include "core/base/text.h"
#include "core/light/pane.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

std::string lightOf(const PaneMirror& pane) {
  const std::string far = base::fixed(std::abs(pane.darker), 1) + " stops " + (pane.darker < 0 ? "brighter" : "darker");
  return "returns " + base::fixed(pane.returned, 1) + " of the brightness behind it (far side " + far + ", looked at " +
         base::fixed(pane.incidence, 0) + "\u00b0 off square)";
}

/// What it would return looked at square on. Every pane returns much along a slant, by any light: that alone is no
/// news.
double returnedSquareOn(const PaneMirror& pane) {
  const double share = light::paneReflectance(0);
  return share / (1 - share) * std::exp2(pane.darker);
}

}  // namespace

Findings glassMirror(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "glass-mirror");
  for (const auto& pane : evidence.panes) {
    if (!pane.who.empty() || returnedSquareOn(pane) < limit.value || pane.span.length() < limit.hold) continue;
    findings.push_back(
        {"camera", pane.pane, pane.span.from, pane.span.until, pane.pos, limit.severity,
         nameOf(*evidence.plan, pane.pane) + " acts as a mirror: it " + lightOf(pane),
         "light the far side, dim this one, or dress the glass; look through it at the hour of the take"});
  }
  return findings;
}

Findings glassShows(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "glass-shows");
  for (const auto& pane : evidence.panes) {
    if (pane.who.empty() || pane.span.length() < limit.hold) continue;
    const std::string who = bodyNameOf(*evidence.plan, pane.who);
    findings.push_back({pane.who, pane.pane, pane.span.from, pane.span.until, pane.pos, limit.severity,
                        who + " shows in " + nameOf(*evidence.plan, pane.pane) + ", which " + lightOf(pane),
                        "light the far side, dim this one, or be out of what the glass returns"});
  }
  return findings;
}

}  // namespace wend::snags
