// Jumps no hand can make, and sizes no zoom can reach.
#include <cmath>

#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings jump(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "aim-cut");
  for (const auto& cut : evidence.aimCuts) {
    if (std::abs(cut.degrees) <= limit.value) continue;
    findings.push_back({"camera", "", cut.time, cut.time, std::nullopt, limit.severity,
                        "the aim jumps by " + base::fixed(std::abs(cut.degrees), 1) + "\u00b0 at once",
                        "give the aim key some seconds, or round the corner"});
  }
  return findings;
}

Findings zoomClipped(const Evidence& evidence) {
  Findings findings;
  for (const auto& span : evidence.zoomClipped)
    findings.push_back({"zoom", "", span.from, span.until, std::nullopt, Severity::note,
                        "the wanted size needs a focal length outside the lens for " + seconds(span.length()),
                        "change the distance or the size"});
  return findings;
}

}  // namespace wend::snags
