// Focus, boom or rig change hands where they are needed most: in a hot or running pull, while somebody speaks, while
// the camera moves.
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

const HandWindows* windowsFor(const Evidence& evidence, const std::string& what) {
  const auto found = std::find_if(evidence.handWindows.begin(), evidence.handWindows.end(),
                                  [&](const HandWindows& windows) { return windows.what == what; });
  return found == evidence.handWindows.end() ? nullptr : &*found;
}

double away(Span window, Span wanted) {
  return std::max({0.0, window.from - wanted.from, wanted.until - window.until});
}

std::string whyNot(const std::string& what) {
  if (what == "focus") return "a pull runs or the focus is not cool";
  return what == "boom" ? "somebody speaks" : "the camera moves";
}

std::string mendText(const HandWindows& windows, Span wanted) {
  std::vector<Span> fit;
  std::copy_if(windows.spans.begin(), windows.spans.end(), std::back_inserter(fit),
               [&](Span window) { return window.length() >= wanted.length(); });
  std::stable_sort(fit.begin(), fit.end(), [&](Span a, Span b) { return away(a, wanted) < away(b, wanted); });
  if (fit.empty()) return "no stretch of the take is quiet for long enough: make the handover shorter";
  std::string text = "hand over within ";
  for (std::size_t i = 0; i < std::min<std::size_t>(fit.size(), 3); ++i)
    text += (i > 0 ? ", or " : "") + base::fixed(fit[i].from, 1) + " to " + seconds(fit[i].until);
  return text;
}

}  // namespace

Findings handoverHot(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold row = threshold(plan, "handover-hot");
  for (const auto& handover : plan.handovers) {
    const HandWindows* windows = windowsFor(evidence, handover.what);
    if (!windows) continue;
    const double at = plan::secondsOf(plan, handover.at);
    const Span wanted{at, at + handover.over};
    const bool quiet = std::any_of(windows->spans.begin(), windows->spans.end(),
                                   [&](Span window) { return away(window, wanted) <= row.value; });
    if (quiet) continue;
    findings.push_back({handover.to, handover.what, wanted.from, wanted.until, std::nullopt, row.severity,
                        handover.what + " goes from " + nameOf(plan, handover.from) + " to " +
                            nameOf(plan, handover.to) + " while " + whyNot(handover.what),
                        mendText(*windows, wanted)});
  }
  return findings;
}

}  // namespace wend::snags
