// No pull stays inside the slack and under the barrel's limit: the subject goes softer than the plan allows.
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings slackUnmet(const Evidence& evidence) {
  Findings findings;
  for (const auto& unmet : evidence.unmet)
    findings.push_back({"focus", "", unmet.span.from, unmet.span.until, std::nullopt, Severity::risks,
                        "no pull keeps the subject inside the slack: " + unmet.reason,
                        "back off, widen, stop down, or give the move more time"});
  return findings;
}

}  // namespace wend::snags
