// Somebody who may show in a glossy thing. A caution: what it gives back depends on its finish, which no plan knows.
#include <algorithm>

#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

/// Up to three by name, the others by number.
std::string namesOf(const plan::Plan& plan, const std::vector<std::string>& who) {
  constexpr std::size_t kNamed = 3;
  std::string names;
  for (std::size_t i = 0; i < std::min(kNamed, who.size()); ++i)
    names += (i > 0 ? ", " : "") + bodyNameOf(plan, who[i]);
  return who.size() > kNamed ? names + " and " + std::to_string(who.size() - kNamed) + " more" : names;
}

}  // namespace

Findings gloss(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "gloss");
  for (const Glint& glint : evidence.glints) {
    if (glint.span.length() < limit.hold) continue;
    findings.push_back({glint.who.front(), glint.piece, glint.span.from, glint.span.until, glint.pos, limit.severity,
                        nameOf(*evidence.plan, glint.piece) + " is glossy and may show " +
                            namesOf(*evidence.plan, glint.who) + ": " + base::fixed(glint.offDegrees, 0) +
                            "\u00b0 off a mirror that would",
                        "look at it through the lens; turn, dull or cover it, or keep out of what it gives back"});
  }
  return findings;
}

}  // namespace wend::snags
