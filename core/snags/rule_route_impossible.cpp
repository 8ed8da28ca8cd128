// Nobody finds a way for somebody of the crew that stays out of sight and keeps what they need. Stops the take.
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings routeImpossible(const Evidence& evidence) {
  const plan::Plan& plan = *evidence.plan;
  Findings findings;
  for (const auto& none : evidence.noRoutes)
    findings.push_back({none.who, "", none.span.from, none.span.until, none.pos,
                        threshold(plan, "route-impossible").severity,
                        "no route for " + nameOf(plan, none.who) + ": " + none.why,
                        none.cures.empty() ? "nothing tried frees it alone: draw a route and choose what gives way"
                                           : "any of these frees it: " + none.cures});
  return findings;
}

}  // namespace wend::snags
