#include "core/sheets/now_calls.h"

#include <algorithm>

#include "core/answers/routes.h"
#include "core/base/text.h"
#include "core/sheets/glyphs.h"
#include "core/sight/ground_map.h"

namespace wend::sheets {

namespace {

/// From t on; nothing when that ground is in sight at t, or never again.
std::optional<double> nextSeen(const sight::GroundMap& ground, geometry::Point at, double t) {
  const auto cell = ground.spec().grid.cellAt(at);
  if (!cell || ground.seenAt(*cell, t)) return std::nullopt;
  for (const auto& run : ground.seenRuns(*cell)) {
    const double from = ground.timeOf(run).from;
    if (from > t) return from;
  }
  return std::nullopt;
}

/// Where somebody stands, on their drawn way or on the one that was found, and how late they may set off from there.
struct Standing {
  geometry::Point at;
  std::optional<double> latestLeave;
};

/// Nothing for who walks or goes along.
std::optional<Standing> foundStanding(const answers::FoundRoute& route, double t) {
  Standing standing{route.at(t), std::nullopt};
  for (const auto& walk : route.walks) {
    if (walk.walk.span.from < t && t < walk.walk.span.until) return std::nullopt;
    if (walk.walk.span.from < t) continue;
    standing.latestLeave = walk.walk.latestLeave;
    break;
  }
  return standing;
}

std::optional<Standing> standingAt(const answers::Answers& answers, const snags::CrewAt& at, double t) {
  if (at.carried || at.walking) return std::nullopt;
  const auto* routes = answers.routes.get();
  if (!at.present) {
    const auto* route = routes ? routes->find(at.id) : nullptr;
    return route && route->found ? foundStanding(*route, t) : std::nullopt;
  }
  Standing standing{at.pos, std::nullopt};
  if (!routes) return standing;
  const auto next = std::find_if(routes->slips.begin(), routes->slips.end(), [&](const answers::DrawnSlip& slip) {
    return slip.id == at.id && slip.span.from >= t;
  });
  if (next != routes->slips.end()) standing.latestLeave = next->latestLeave;
  return standing;
}

}  // namespace

std::vector<GoneBy> goneBy(const answers::Answers& answers, const answers::Instant& instant) {
  std::vector<GoneBy> calls;
  if (!answers.ground) return calls;
  const plan::Plan& plan = answers.take->plan();
  const auto labels = crewLabels(plan);
  for (std::size_t i = 0; i < instant.crew.size() && i < labels.size(); ++i) {
    const auto& at = instant.crew[i];
    const auto standing = standingAt(answers, at, instant.time);
    if (!standing) continue;
    const auto seen = nextSeen(*answers.ground, standing->at, instant.time);
    if (!seen) continue;
    const double by = *seen - plan.sightRules.early;
    const bool slip = standing->latestLeave && *standing->latestLeave < by;
    calls.push_back({at.id, labels[i], *seen, slip ? *standing->latestLeave : by, slip});
  }
  std::stable_sort(calls.begin(), calls.end(), [](const GoneBy& a, const GoneBy& b) { return a.by < b.by; });
  return calls;
}

std::string goneByWords(const GoneBy& call, double t) {
  const bool past = t > call.by;
  const char* words =
      call.slip ? (past ? " had to set off by " : " sets off by ") : (past ? " had to be gone by " : " gone by ");
  return call.label + words + base::fixed(call.by, 1);
}

}  // namespace wend::sheets
