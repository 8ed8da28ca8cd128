#include "core/answers/routes.h"

#include <algorithm>
#include <memory>

#include "core/answers/route_ground.h"
#include "core/answers/route_needs.h"
#include "core/answers/route_words.h"
#include "core/crew/found_route.h"
#include "core/crew/route_stuck.h"
#include "core/crew/routes_together.h"

namespace wend::answers {

using base::Result;
using geometry::Span;

namespace {

/// The map's answer is the same on any number.
constexpr int kThreads = 2;

base::Problem cancelled() {
  return {"cancelled", "", "", "", "a newer plan took its place"};
}

bool isSought(const Take& take, std::size_t member) {
  return !take.people().crew(member) && !isCarried(take.plan(), member);
}

std::vector<std::size_t> soughtOf(const Take& take) {
  std::vector<std::size_t> members;
  for (std::size_t i = 0; i < take.plan().crew.size(); ++i)
    if (isSought(take, i)) members.push_back(i);
  return members;
}

/// Why the map says nothing for a member; empty when it does.
std::string whyUncovered(const sight::GroundMapSpec& spec, const plan::Plan& plan, const plan::Crew& member) {
  constexpr double kSame = 1e-9;
  if (member.radius > spec.radius + kSame) return "wider than the map of the ground is for";
  const FloorRange floors = floorsOf(plan);
  const bool covered = floors.lowest >= spec.floor - kSame && floors.highest + member.height <= spec.top + kSame;
  return covered ? "" : "taller than the map of the ground is for";
}

/// One person's search: what the task points at lives here.
struct Search {
  std::size_t member;
  crew::GroundTime ground;
  std::vector<NeedGround> needs;

  crew::RouteTask task(const plan::Plan& plan) const {
    crew::RouteTask task;
    task.ground = &ground;
    task.speed = plan.crew[member].speed;
    for (const auto& need : needs) task.needs.push_back(&need.met);
    task.starts = startsWhere([this](std::size_t cell) { return meetsNeeds(cell); });
    // Where the needs leave no start, one without them shows which of them to give up; the search bars it all the same.
    if (task.starts.empty()) task.starts = startsWhere([](std::size_t) { return true; });
    // Nowhere to start is told as a dead end at the start, not as no question.
    if (task.starts.empty()) task.starts.push_back(0);
    return task;
  }
  bool meetsNeeds(std::size_t cell) const {
    return std::all_of(needs.begin(), needs.end(), [cell](const NeedGround& need) { return need.met.at(cell, 0); });
  }
  template <class Where>
  std::vector<std::size_t> startsWhere(Where where) const {
    std::vector<std::size_t> starts;
    for (std::size_t cell = 0; cell < ground.grid().cells(); ++cell)
      if (ground.stand().at(cell, 0) && ground.clear().at(cell, 0) && where(cell)) starts.push_back(cell);
    return starts;
  }
};

class Finder {
 public:
  Finder(const Take& take, const sight::GroundMap& map, const base::Cancel& cancel)
      : take_(take), plan_(take.plan()), map_(map), cancel_(cancel) {}

  /// Null when cancelled.
  std::shared_ptr<const FoundRoutes> found() {
    if (!addSearches()) return nullptr;
    if (searches_.empty()) return routes_;
    std::vector<crew::RouteTask> tasks;
    for (const auto& search : searches_) tasks.push_back(search->task(plan_));
    const auto together = crew::routesTogether(tasks, sharedShelters(), {}, cancel_);
    if (!together) return nullptr;
    for (std::size_t k = 0; k < tasks.size(); ++k) {
      tasks[k].ground = &together->grounds[k];
      FoundRoute& out = routes_->people[places_[k]];
      const auto& route = together->people[k].route;
      if (route)
        fill(*searches_[k], tasks[k], *route, out);
      else if (!explain(*searches_[k], tasks[k], out))
        return nullptr;
    }
    return routes_;
  }

 private:
  bool addSearches() {
    for (const std::size_t member : soughtOf(take_)) {
      const plan::Crew& crew = plan_.crew[member];
      FoundRoute route;
      route.id = crew.id.text();
      route.notes = needsLeftOut(plan_, member);
      route.why = whyUncovered(map_.spec(), plan_, crew);
      const bool covered = route.why.empty();
      routes_->people.push_back(std::move(route));
      if (!covered) continue;
      auto ground = memberGround(take_, map_, member);
      auto needs = needGrounds(take_, member, ground.grid(), ground.clock(), cancel_);
      if (!needs || cancel_.fired()) return false;
      searches_.push_back(std::make_unique<Search>(Search{member, std::move(ground), std::move(*needs)}));
      places_.push_back(routes_->people.size() - 1);
    }
    return true;
  }

  /// What the drawn crew leaves of each shelter at its fullest.
  std::vector<crew::SharedShelter> sharedShelters() const {
    std::vector<crew::SharedShelter> shelters;
    for (const auto& shelter : plan_.shelters) {
      int drawn = 0;
      for (const double t : take_.frameTimes()) drawn = std::max(drawn, drawnIn(take_, shelter.id.text(), t));
      if (shelter.holds > drawn) shelters.push_back({shelter.pos, shelter.radius, shelter.holds - drawn});
    }
    return shelters;
  }

  Span inTake(Span span) const { return {std::min(span.from, take_.length()), std::min(span.until, take_.length())}; }

  std::string shelterAt(Point pos) const {
    for (const auto& shelter : plan_.shelters)
      if (geometry::distance(pos, shelter.pos) <= shelter.radius) return shelter.id.text();
    return "";
  }

  void fill(const Search& search, const crew::RouteTask& task, const crew::Route& route, FoundRoute& out) const {
    crew::GroundTime ground = *task.ground;
    // Where a need is not met a walk may not be shifted to, as if one were seen there.
    crew::CellTimes clear = ground.clear();
    for (const auto& need : search.needs) clear.keepOnly(need.met);
    ground.setClear(std::move(clear));
    const crew::RouteReport report = crew::reportOf(route, ground, task.speed);
    const crew::DrawnRoute drawn = crew::drawnRoute(route, ground.grid(), ground.clock());
    out.found = true;
    out.metres = route.metres;
    out.margin = static_cast<double>(route.margin) * ground.clock().step;
    addStands(drawn, out);
    addWalks(route, ground, report, out);
    out.breaks = needBreaks(take_, search.member, drawn.at);
  }

  void addStands(const crew::DrawnRoute& drawn, FoundRoute& out) const {
    for (const Span& stand : drawn.stands) {
      const Span span = inTake(stand);
      if (span.until <= span.from) continue;
      const Point pos = drawn.at(span.from);
      out.stands.push_back({span, pos, shelterAt(pos)});
    }
  }

  void addWalks(const crew::Route& route, const crew::GroundTime& ground, const crew::RouteReport& report,
                FoundRoute& out) const {
    const auto stands = crew::standsOf(route);
    for (std::size_t i = 0; i < report.walks.size(); ++i) {
      FoundWalk walk{report.walks[i], {}};
      const crew::Steps steps{stands[i].until, stands[i + 1].from};
      walk.path = crew::cornersOf(route, steps, ground.grid(), ground.clock());
      walk.walk.span = inTake(walk.walk.span);
      out.walks.push_back(std::move(walk));
    }
  }

  bool explain(const Search& search, const crew::RouteTask& task, FoundRoute& out) const {
    const crew::FreeingLimits limits{2, plan_.sightRules.early, plan_.sightRules.late};
    const auto stuck = crew::whyStuck(task, limits, cancel_);
    if (!stuck) return false;
    std::vector<std::string> needs;
    for (const auto& need : search.needs) needs.push_back(need.words);
    out.why = stuckWords(*stuck);
    out.cures = freeingWords(*stuck, needs);
    out.stuck = *stuck;
    return true;
  }

  const Take& take_;
  const plan::Plan& plan_;
  const sight::GroundMap& map_;
  const base::Cancel& cancel_;
  std::shared_ptr<FoundRoutes> routes_ = std::make_shared<FoundRoutes>();
  std::vector<std::unique_ptr<Search>> searches_;
  std::vector<std::size_t> places_;  ///< of each search among the people
};

snags::NoRoute noRouteOf(const FoundRoute& route) {
  const crew::Stuck& stuck = *route.stuck;
  snags::NoRoute none{route.id, {stuck.until, stuck.until}, std::nullopt, std::nullopt, route.why, route.cures};
  if (!stuck.where.empty()) none.pos = stuck.where.front();
  if (stuck.least) none.least = stuck.least->seconds;
  if (stuck.exposures.empty()) return none;
  none.span = {stuck.exposures.front().span.from, stuck.exposures.back().span.until};
  none.pos = stuck.exposures.front().at;
  return none;
}

/// Those who were looked for in vain, as evidence with the snags that come of it.
void tellOfNone(const FoundRoutes& routes, Answers& answers) {
  if (!answers.evidence) return;
  std::vector<snags::NoRoute> none;
  for (const auto& route : routes.people)
    if (route.stuck) none.push_back(noRouteOf(route));
  if (none.empty()) return;
  auto evidence = std::make_shared<Evidence>(*answers.evidence);
  evidence->noRoutes = std::move(none);
  answers.snags = std::make_shared<const snags::Snags>(snags::snagsOf(*evidence));
  answers.evidence = std::move(evidence);
}

}  // namespace

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

std::string FoundRoute::whole() const {
  if (why.empty() || !stuck) return why;
  return why + ". " + (cures.empty() ? "nothing tried frees it alone" : "any of these frees it: " + cures) + ".";
}

const FoundRoute* FoundRoutes::find(const std::string& id) const {
  const auto found =
      std::find_if(people.begin(), people.end(), [&](const FoundRoute& route) { return route.id == id; });
  return found == people.end() ? nullptr : &*found;
}

bool routesWanted(const Take& take) {
  return !soughtOf(take).empty();
}

Result<std::shared_ptr<const sight::GroundMap>> routeGroundOf(const Take& take, const base::Cancel& cancel,
                                                              const sight::GroundMap* earlier) {
  const plan::Plan& plan = take.plan();
  if (!plan.lens)
    return base::Problem{"no-lens", "/lens", "no lens", "a lens", "without one nothing is known of sight; add it"};
  if (!routesWanted(take)) return base::Problem{"nobody", "/crew", "", "somebody without marks", "all have their way"};
  const FloorRange floors = floorsOf(plan);
  sight::GroundMapSpec spec{groundGrid(take), {0, take.length()}, 1 / take.rate(), 0, floors.lowest, floors.highest};
  for (const std::size_t member : soughtOf(take)) {
    spec.radius = std::max(spec.radius, plan.crew[member].radius);
    spec.top = std::max(spec.top, floors.highest + plan.crew[member].height);
  }
  const double margin = plan.sightRules.margin;
  auto map = sight::GroundMap::over(
      take.scene(), [&](double t) { return take.eyeAt(t, margin); }, spec, kThreads, cancel, earlier);
  if (!map) return cancelled();
  return std::shared_ptr<const sight::GroundMap>(std::make_shared<sight::GroundMap>(std::move(*map)));
}

Result<std::shared_ptr<const FoundRoutes>> foundRoutes(const Take& take, const sight::GroundMap& ground,
                                                       const base::Cancel& cancel) {
  auto found = Finder(take, ground, cancel).found();
  if (!found) return cancelled();
  return found;
}

Result<AnswersPtr> withRoutes(const AnswersPtr& answers, const base::Cancel& cancel, const sight::GroundMap* earlier) {
  if (!routesWanted(*answers->take) || !answers->take->plan().lens) return answers;
  const auto ground = routeGroundOf(*answers->take, cancel, earlier);
  if (!ground) return ground.problems();
  const auto routes = foundRoutes(*answers->take, **ground, cancel);
  if (!routes) return routes.problems();
  auto more = std::make_shared<Answers>(*answers);
  more->routes = *routes;
  tellOfNone(**routes, *more);
  more->routeGround = *ground;
  return AnswersPtr(std::move(more));
}

}  // namespace wend::answers
