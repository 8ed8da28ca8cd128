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

/// Where somebody stands, on their drawn way or on the one that was found; nothing for who walks or goes along.
std::optional<geometry::Point> standsAt(const answers::Answers& answers, const snags::CrewAt& at, double t) {
  if (at.carried || at.walking) return std::nullopt;
  if (at.present) return at.pos;
  const auto* route = answers.routes ? answers.routes->find(at.id) : nullptr;
  if (!route || !route->found) return std::nullopt;
  for (const auto& walk : route->walks)
    if (walk.walk.span.from < t && t < walk.walk.span.until) return std::nullopt;
  return route->at(t);
}

}  // namespace

std::vector<GoneBy> goneBy(const answers::Answers& answers, const answers::Instant& instant) {
  std::vector<GoneBy> calls;
  if (!answers.ground) return calls;
  const plan::Plan& plan = answers.take->plan();
  const auto labels = crewLabels(plan);
  for (std::size_t i = 0; i < instant.crew.size() && i < labels.size(); ++i) {
    const auto& at = instant.crew[i];
    const auto place = standsAt(answers, at, instant.time);
    if (!place) continue;
    if (const auto seen = nextSeen(*answers.ground, *place, instant.time))
      calls.push_back({at.id, labels[i], *seen, *seen - plan.sightRules.early});
  }
  std::stable_sort(calls.begin(), calls.end(), [](const GoneBy& a, const GoneBy& b) { return a.by < b.by; });
  return calls;
}

std::string goneByWords(const GoneBy& call, double t) {
  return call.label + (t > call.by ? " had to be gone by " : " gone by ") + base::fixed(call.by, 1);
}

}  // namespace wend::sheets
