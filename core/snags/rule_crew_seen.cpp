// Somebody or something the lens must not see is in sight, directly or in a mirror. Stops the take.
#include <algorithm>

#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

std::string wayOf(const plan::Plan& plan, const SeenSpan& seen) {
  std::string way = seen.via == "direct" ? "directly" : "in " + nameOf(plan, seen.via);
  std::string openings;
  for (const auto& id : base::split(seen.by, '+'))
    if (!id.empty()) openings += (openings.empty() ? ", through " : " and ") + nameOf(plan, id);
  return way + openings;
}

bool givesOffLight(const plan::Plan& plan, const std::string& id) {
  const plan::Crew* crew = plan.crew.find(id);
  const plan::Gear* gear = plan.gear.find(id);
  return (crew && crew->glows) || (gear && gear->glows);
}

Finding findingOf(const Evidence& evidence, const SightOf& sight, const SeenSpan& seen) {
  const plan::Plan& plan = *evidence.plan;
  Finding finding;
  finding.who = sight.id;
  finding.place = seen.via == "direct" ? std::string() : seen.via;
  finding.from = seen.span.from;
  finding.until = seen.span.until;
  finding.pos = seen.pos;
  finding.severity = threshold(plan, "crew-seen").severity;
  if (seen.via.empty()) finding.severity = std::max(finding.severity, Severity::risks);
  finding.text = seen.via.empty() ? nameOf(plan, sight.id) + " may be in frame for " + seconds(seen.span.length()) +
                                        ": no instant looked at shows it, but it cannot be ruled out"
                                  : nameOf(plan, sight.id) + " in frame for " + seconds(seen.span.length()) + ", " +
                                        wayOf(plan, seen);
  const double leave = seen.span.from - plan.sightRules.early;
  finding.mend = leave > 0
                     ? "be elsewhere from " + seconds(leave) + " to " + seconds(seen.span.until + plan.sightRules.late)
                     : "start the take elsewhere";
  if (givesOffLight(plan, sight.id)) {
    finding.text += ", giving off light";
    finding.mend += "; hood it or turn it off";
  }
  return finding;
}

}  // namespace

Findings crewSeen(const Evidence& evidence) {
  Findings findings;
  for (const auto& sight : evidence.sight)
    for (const auto& seen : sight.seen) findings.push_back(findingOf(evidence, sight, seen));
  return findings;
}

}  // namespace wend::snags
