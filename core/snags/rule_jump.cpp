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

namespace {

std::string mm(double focal) {
  return base::fixed(focal, 0) + " mm";
}

/// Nearer where the lens is too short, further away where it is not short enough; sizes go with the distance.
std::string clippedMend(const ZoomClipped& clipped) {
  if (clipped.wanted <= 0) return "change the size, or whom it is of";
  return std::string(clipped.wanted > clipped.end ? "go nearer, to " : "back off, to ") +
         base::fixed(clipped.end / clipped.wanted, 2) + " of the distance, or change the size";
}

}  // namespace

Findings zoomClipped(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "zoom-clipped");
  for (const auto& clipped : evidence.zoomClipped) {
    const std::string size = clipped.size.empty() ? "the wanted size" : "the size " + clipped.size;
    const std::string needs = clipped.wanted <= 0 ? " is of nobody in the take for "
                                                  : " wants up to " + mm(clipped.wanted) + ", and the lens ends at " +
                                                        mm(clipped.end) + ": out of reach for ";
    findings.push_back({"zoom", "", clipped.span.from, clipped.span.until, std::nullopt, limit.severity,
                        size + needs + seconds(clipped.span.length()), clippedMend(clipped)});
  }
  return findings;
}

}  // namespace wend::snags
