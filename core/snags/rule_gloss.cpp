// Somebody who may show in a glossy thing. A caution: what it gives back depends on its finish, which no plan knows.
#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings gloss(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "gloss");
  for (const Glint& glint : evidence.glints) {
    if (glint.span.length() < limit.hold) continue;
    findings.push_back({glint.who, glint.piece, glint.span.from, glint.span.until, glint.pos, limit.severity,
                        bodyNameOf(*evidence.plan, glint.who) + " may show in " + nameOf(*evidence.plan, glint.piece) +
                            ", which is glossy and only " + base::fixed(glint.offDegrees, 0) +
                            "\u00b0 off the mirror that would show them",
                        "look at it through the lens; turn, dull or cover it, or keep out of what it gives back"});
  }
  return findings;
}

}  // namespace wend::snags
