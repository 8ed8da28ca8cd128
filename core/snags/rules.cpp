#include "core/snags/rules.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "core/plan/on_beat.h"
#include "core/snags/rule_list.h"

namespace wend::snags {

const std::vector<Rule>& rules() {
  static const std::vector<Rule> list = {
      {"crew-seen", crewSeen},
      {"route-impossible", routeImpossible},
      {"need-unmet", needUnmet},
      {"subject-lost", subjectLost},
      {"hot-focus", hotFocus},
      {"too-close", tooClose},
      {"barrel-fast", barrelFast},
      {"slack-unmet", slackUnmet},
      {"exposure", exposure},
      {"pan-fast", panFast},
      {"clearance", clearance},
      {"bodies-meet", bodiesMeet},
      {"backwards", backwards},
      {"speed", speed},
      {"door-late", doorLate},
      {"through-sight", throughSight},
      {"step-crossed", stepCrossed},
      {"mark-in-frame", markInFrame},
      {"jump", jump},
      {"zoom-clipped", zoomClipped},
      {"link-lost", linkLost},
      {"link-thin", linkThin},
      {"link-late", linkLate},
      {"boom-gap", boomGap},
      {"boom-reach", boomReach},
      {"boom-lamp", boomLamp},
      {"shadow", shadow},
      {"surface-shadow", surfaceShadow},
      {"cable-shut-in", cableShutIn},
      {"cable-short", cableShort},
      {"exit-lane", exitLane},
      {"hazard", hazard},
      {"keep-out", keepOut},
      {"shelter-full", shelterFull},
      {"lens-near", lensNear},
      {"lock-up", lockUp},
      {"noisy-step", noisyStep},
      {"ramp-seen", rampSeen},
      {"lens-limits", lensLimits},
      {"zoom-turns", zoomTurns},
      {"zoom-balance", zoomBalance},
      {"handover-hot", handoverHot},
      {"glass-mirror", glassMirror},
      {"glass-shows", glassShows},
      {"gloss", gloss},
      {"sun-in-lens", sunInLens},
      {"sun-shadow", sunShadow},
      {"faces-apart", facesApart},
      {"opens-at-hot-pull", opensAtHotPull},
      {"distances-apart", distancesApart},
      {"flicker", flicker},
      {"light-unknown", lightUnknown},
  };
  return list;
}

namespace {

Snag snagOf(const std::string& rule, const Finding& finding, const std::string& beat) {
  Snag snag;
  snag.rule = rule;
  snag.who = finding.who;
  snag.beat = beat;
  snag.from = finding.from;
  snag.until = finding.until;
  snag.pos = finding.pos;
  snag.severity = finding.severity;
  snag.text = finding.text;
  snag.mend = finding.mend;
  return snag;
}

std::optional<AcceptedBy> acceptance(const plan::Plan& plan, const std::string& key) {
  for (const auto& accepted : plan.accepted)
    if (accepted.key == key) return AcceptedBy{accepted.by, accepted.note};
  return std::nullopt;
}

}  // namespace

Snags snagsOf(const Evidence& evidence) {
  Snags snags;
  for (const auto& rule : rules()) {
    Findings found = rule.find(evidence);
    std::stable_sort(found.begin(), found.end(), [](const Finding& a, const Finding& b) { return a.from < b.from; });
    std::map<std::string, int> ordinals;
    for (const auto& finding : found) {
      const std::string beat = plan::onBeat(*evidence.plan, finding.from).beat;
      const std::string stem = rule.name + "/" + finding.who + "/" + finding.place + "/" + beat + "/";
      Snag snag = snagOf(rule.name, finding, beat);
      snag.key = stem + std::to_string(++ordinals[stem]);
      snag.accepted = acceptance(*evidence.plan, snag.key);
      snags.push_back(std::move(snag));
    }
  }
  std::stable_sort(snags.begin(), snags.end(), [](const Snag& a, const Snag& b) {
    return std::tie(a.from, a.severity) < std::tie(b.from, b.severity);
  });
  return snags;
}

SnagChange changeOf(const Snags& before, const Snags& after) {
  const auto missingFrom = [](const Snags& these, const Snags& those) {
    std::set<std::string> keys;
    for (const auto& snag : those) keys.insert(snag.key);
    Snags missing;
    std::copy_if(these.begin(), these.end(), std::back_inserter(missing),
                 [&](const Snag& snag) { return keys.count(snag.key) == 0; });
    return missing;
  };
  return {missingFrom(after, before), missingFrom(before, after)};
}

}  // namespace wend::snags
