// A radio link runs out of budget, or nearly.
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

std::string counted(int count, const char* one, const char* many) {
  return count == 1 ? std::string("a ") + one : std::to_string(count) + " " + many;
}

/// "over 23.40 m through 2 walls and a body".
std::string wayOf(const plan::Plan& plan, const LinkAt& at) {
  std::vector<std::string> parts;
  if (at.walls > 0) parts.push_back(counted(at.walls, "wall", "walls"));
  if (at.leaves > 0) parts.push_back(counted(at.leaves, "door", "doors"));
  if (at.bodies > 0) parts.push_back(counted(at.bodies, "body", "bodies"));
  std::string way = "over " + lengthText(plan, at.metres);
  for (std::size_t i = 0; i < parts.size(); ++i)
    way += (i == 0 ? " through " : i + 1 == parts.size() ? " and " : ", ") + parts[i];
  return way;
}

/// Said once, whichever end of the link goes a route found.
std::string routeOf(const Evidence& evidence, const LinkOver& link) {
  const plan::Link* ends = evidence.plan->links.find(link.id);
  if (!ends) return "";
  const std::string from = routeNote(evidence, ends->from);
  return from.empty() ? routeNote(evidence, ends->to) : from;
}

/// Stretches of a link with a margin under `limit`.
std::vector<Stretch> under(const Evidence& evidence, const LinkOver& link, double limit, double hold) {
  return stretches(evidence, hold, [&](const Instant&, std::size_t i) {
    const auto& at = link.at[i];
    return at && at->margin < limit ? std::optional<double>(limit - at->margin) : std::nullopt;
  });
}

Finding findingOf(const Evidence& evidence, const LinkOver& link, const Stretch& stretch, Severity severity) {
  const LinkAt& worst = *link.at[stretch.worst];
  const Span span = spanOf(evidence, stretch);
  const std::string least = base::fixed(std::abs(worst.margin), 0) + " dB";
  const std::string name = nameOf(*evidence.plan, link.id);
  return {link.id,
          "",
          span.from,
          span.until,
          std::nullopt,
          severity,
          name + (worst.margin < 0 ? " is " + least + " short " : " has only " + least + " to spare ") +
              wayOf(*evidence.plan, worst) + routeOf(evidence, link),
          "stand nearer, move the aerial into the open, add a receiver; walk it with the real one"};
}

}  // namespace

Findings linkLost(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "link-lost");
  for (const auto& link : evidence.links)
    for (const auto& stretch : under(evidence, link, limit.value, limit.hold))
      findings.push_back(findingOf(evidence, link, stretch, limit.severity));
  return findings;
}

/// Thin stretches around a loss are left to it.
Findings linkThin(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "link-thin");
  const double lost = threshold(*evidence.plan, "link-lost").value;
  for (const auto& link : evidence.links)
    for (const auto& stretch : under(evidence, link, limit.value, limit.hold))
      if (link.at[stretch.worst]->margin >= lost)
        findings.push_back(findingOf(evidence, link, stretch, limit.severity));
  return findings;
}

}  // namespace wend::snags
