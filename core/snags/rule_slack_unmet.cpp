// An axis of the lens leaves its slack or its limit: no track through exists, or it is set by hand so.
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

std::string cureOn(const plan::Plan& plan, const std::string& axis) {
  if (axis == "iris")
    return plan.iris.keys.empty() ? "give the light more time to change, widen the slack, or tell the light"
                                  : "give the move more time, let it be planned, or tell the light";
  if (axis == "zoom") return "give the zoom more time";
  if (axis == "density") return "give the density more time";
  return "back off, widen, stop down, or give the move more time";
}

}  // namespace

Findings slackUnmet(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "slack-unmet");
  for (const auto& unmet : evidence.unmet)
    findings.push_back({unmet.axis, "", unmet.span.from, unmet.span.until, std::nullopt, limit.severity, unmet.reason,
                        cureOn(*evidence.plan, unmet.axis)});
  return findings;
}

}  // namespace wend::snags
