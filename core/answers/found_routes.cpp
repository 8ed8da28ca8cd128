// What a found route says of itself.
#include <algorithm>

#include "core/answers/route_words.h"
#include "core/answers/routes.h"

namespace wend::answers {

Point FoundRoute::at(double t) const {
  Point place = stands.empty() ? walks.front().path.front().at : stands.front().pos;
  for (const auto& walk : walks) {
    if (walk.path.front().time > t) break;
    for (std::size_t i = 1; i < walk.path.size(); ++i) {
      const crew::RoutePoint &from = walk.path[i - 1], &until = walk.path[i];
      if (from.time > t) break;
      const double share = std::min(1.0, (t - from.time) / (until.time - from.time));
      place = geometry::lerp(from.at, until.at, share);
    }
  }
  return place;
}

std::string FoundRoute::cures() const {
  std::vector<std::string> words;
  for (const auto& free : frees) words.push_back(free.words);
  return joined(words, "; ");
}

std::string FoundRoute::whole() const {
  if (why.empty() || !stuck) return why;
  return why + ". " + (frees.empty() ? "nothing tried frees it alone" : "any of these frees it: " + cures()) + ".";
}

snags::NoRoute noRouteOf(const FoundRoute& route) {
  const crew::Stuck& stuck = *route.stuck;
  snags::NoRoute none{route.id, {stuck.until, stuck.until}, std::nullopt, std::nullopt, route.why, route.cures()};
  if (!stuck.where.empty()) none.pos = stuck.where.front();
  if (stuck.least) none.least = stuck.least->seconds;
  if (stuck.exposures.empty()) return none;
  none.span = {stuck.exposures.front().span.from, stuck.exposures.back().span.until};
  none.pos = stuck.exposures.front().at;
  return none;
}

const FoundRoute* FoundRoutes::find(const std::string& id) const {
  const auto found =
      std::find_if(people.begin(), people.end(), [&](const FoundRoute& route) { return route.id == id; });
  return found == people.end() ? nullptr : &*found;
}

const crew::RouteReport* FoundRoutes::reportOf(const std::string& id) const {
  const auto known =
      std::find_if(drawn.begin(), drawn.end(), [&](const DrawnChecked& person) { return person.id == id; });
  return known == drawn.end() ? nullptr : &known->report;
}

}  // namespace wend::answers
