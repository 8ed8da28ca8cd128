// Camera, operator, spotter or crew pass something too narrowly. Distances edge to edge.
#include <map>

#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

/// One pass of one body by one obstacle: close samples without a gap.
struct Pass {
  ClearanceAt narrowest;
  double from = 0, until = 0;
};

std::vector<Pass> passes(const Evidence& evidence, double (*limitOf)(const plan::Plan&, const ClearanceAt&),
                         bool person) {
  std::map<std::pair<std::string, std::string>, std::vector<Pass>> open;
  std::vector<std::pair<std::string, std::string>> order;
  for (const auto& clearance : evidence.clearances) {
    if (clearance.person != person || clearance.metres >= limitOf(*evidence.plan, clearance)) continue;
    const auto key = std::make_pair(clearance.body, clearance.obstacle);
    auto& list = open[key];
    if (list.empty()) order.push_back(key);
    if (list.empty() || clearance.time - list.back().until > 2.5 * evidence.step)
      list.push_back({clearance, clearance.time, clearance.time});
    Pass& pass = list.back();
    pass.until = clearance.time;
    if (clearance.metres < pass.narrowest.metres) pass.narrowest = clearance;
  }
  std::vector<Pass> all;
  for (const auto& key : order) all.insert(all.end(), open[key].begin(), open[key].end());
  return all;
}

double extra(const plan::Plan& plan, const ClearanceAt& clearance) {
  return clearance.hot ? threshold(plan, "clearance-hot").value : 0;
}

double tightLimit(const plan::Plan& plan, const ClearanceAt& clearance) {
  return threshold(plan, "clearance-tight").value + extra(plan, clearance);
}

double touching(const plan::Plan& plan, const ClearanceAt&) {
  return threshold(plan, "bodies-meet").value;
}

/// A found route cannot be moved: it is found anew once what it passes stands elsewhere.
std::string wayOut(const plan::Plan& plan, const ClearanceAt& at, const std::string& room, bool found) {
  if (found)
    return "free " + room + " more beside " + nameOf(plan, at.obstacle) + ", give " + nameOf(plan, at.body) +
           " more time or pace for a wider way, or draw one";
  return "move the way " + room + " to the " + (at.onLeft ? "right" : "left") +
         ", or rehearse it slowly with the spotter";
}

std::string bodyName(const plan::Plan& plan, const std::string& id) {
  return id == "camera" ? "the rig" : nameOf(plan, id);
}

}  // namespace

Findings clearance(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const double red = threshold(plan, "clearance-red").value;
  for (const auto& pass : passes(evidence, tightLimit, false)) {
    const ClearanceAt& at = pass.narrowest;
    const bool stops = at.metres < red + extra(plan, at);
    const std::string found = routeNote(evidence, at.body);
    const std::string room = lengthText(plan, tightLimit(plan, at) - at.metres);
    const std::string gap = at.metres < 0 ? "goes " + lengthText(plan, -at.metres) + " into "
                                          : "passes " + lengthText(plan, at.metres) + " from ";
    findings.push_back({at.body, at.obstacle, pass.from, pass.until, at.pos,
                        stops ? threshold(plan, "clearance-red").severity : threshold(plan, "clearance-tight").severity,
                        bodyName(plan, at.body) + " " + gap + nameOf(plan, at.obstacle) + " on the " +
                            (at.onLeft ? "left" : "right") + (at.hot ? ", which is hot" : "") + found,
                        wayOut(plan, at, room, !found.empty())});
  }
  return findings;
}

Findings bodiesMeet(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold limit = threshold(plan, "bodies-meet");
  for (const auto& pass : passes(evidence, touching, true)) {
    const ClearanceAt& at = pass.narrowest;
    findings.push_back(
        {at.body, at.obstacle, pass.from, pass.until, at.pos, limit.severity,
         bodyName(plan, at.body) + " and " + nameOf(plan, at.obstacle) + " overlap by " + lengthText(plan, -at.metres) +
             (routeNote(evidence, at.body).empty() ? routeNote(evidence, at.obstacle) : routeNote(evidence, at.body)),
         "move one of them, or let one go first"});
  }
  return findings;
}

}  // namespace wend::snags
