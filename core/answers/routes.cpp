#include "core/answers/routes.h"

#include <algorithm>
#include <memory>

#include "core/answers/route_ground.h"
#include "core/answers/route_needs.h"
#include "core/answers/route_words.h"
#include "core/crew/found_route.h"
#include "core/crew/route_stuck.h"
#include "core/crew/routes_together.h"
#include "core/snags/thresholds.h"

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

/// Whom to find a way for, and what they need.
struct Search {
  std::size_t member;
  std::vector<NeedGround> needs;

  /// Requires  both to outlive the task.
  crew::RouteTask task(const plan::Plan& plan, const crew::GroundTime& ground) const {
    crew::RouteTask task;
    task.ground = &ground;
    task.speed = plan.crew[member].speed;
    for (const auto& need : needs) task.needs.push_back(&need.met);
    task.starts = startsWhere(ground, [this](std::size_t cell) { return meetsNeeds(cell); });
    // Where the needs leave no start, one without them shows which of them to give up; the search bars it all the same.
    if (task.starts.empty()) task.starts = startsWhere(ground, [](std::size_t) { return true; });
    // Nowhere to start is told as a dead end at the start, not as no question.
    if (task.starts.empty()) task.starts.push_back(0);
    return task;
  }
  bool meetsNeeds(std::size_t cell) const {
    return std::all_of(needs.begin(), needs.end(), [cell](const NeedGround& need) { return need.met.at(cell, 0); });
  }
  template <class Where>
  static std::vector<std::size_t> startsWhere(const crew::GroundTime& ground, Where where) {
    std::vector<std::size_t> starts;
    for (std::size_t cell = 0; cell < ground.grid().cells(); ++cell)
      if (ground.stand().at(cell, 0) && ground.low().at(cell, 0) && where(cell)) starts.push_back(cell);
    return starts;
  }
};

/// Some people planned together, each keeping so much room. What the tasks point at lives here and with the searches.
struct Planned {
  std::vector<const Search*> who;
  double room = 0;
  std::vector<crew::GroundTime> alone;  ///< each one's ground without the others
  std::vector<crew::RouteTask> tasks;
  crew::CrewRoutes together;

  bool everybody() const {
    return std::all_of(together.people.begin(), together.people.end(), [](const auto& p) { return p.route; });
  }
};

class Finder {
 public:
  Finder(const Take& take, const RouteMaps& maps, const base::Cancel& cancel)
      : take_(take), plan_(take.plan()), maps_(maps), cancel_(cancel) {}

  /// Null when cancelled.
  std::shared_ptr<const FoundRoutes> found() {
    if (!addSearches()) return nullptr;
    if (searches_.empty()) return routes_;
    std::vector<const Search*> all;
    for (const auto& search : searches_) all.push_back(&search);
    const auto plain = planned(all, 0);
    if (!plain) return nullptr;
    std::vector<const Search*> free;
    for (std::size_t k = 0; k < all.size(); ++k) {
      if (plain->together.people[k].route)
        free.push_back(all[k]);
      else if (!explain(*all[k], plain->tasks[k], answerFor(*all[k])))
        return nullptr;
    }
    const auto best = withRoom(free);
    if (cancel_.fired()) return nullptr;
    const Planned& kept = best ? *best : *plain;
    for (std::size_t k = 0; k < kept.who.size(); ++k)
      if (const auto& route = kept.together.people[k].route) fill(kept, k, *route, answerFor(*kept.who[k]));
    return routes_;
  }

 private:
  FoundRoute& answerFor(const Search& search) {
    return routes_->people[places_[static_cast<std::size_t>(&search - searches_.data())]];
  }

  /// Null when cancelled.
  std::unique_ptr<Planned> planned(const std::vector<const Search*>& who, double room) const {
    auto plan = std::make_unique<Planned>(Planned{who, room, {}, {}, {}});
    for (const Search* search : who) {
      plan->alone.push_back(memberGround(take_, *maps_.upright, search->member, room));
      if (maps_.low)
        letCrouch(take_, *maps_.low, search->member, uprightSpans(take_, search->member), plan->alone.back());
    }
    for (std::size_t k = 0; k < who.size(); ++k) plan->tasks.push_back(who[k]->task(plan_, plan->alone[k]));
    auto together = crew::routesTogether(plan->tasks, sharedShelters(), {}, cancel_);
    if (!together) return nullptr;
    plan->together = std::move(*together);
    for (std::size_t k = 0; k < who.size(); ++k) plan->tasks[k].ground = &plan->together.grounds[k];
    return plan;
  }

  /// Those who have a way, with the most room that lets all of them through. Null when there is none to spare, or when
  /// cancelled.
  std::unique_ptr<Planned> withRoom(const std::vector<const Search*>& free) const {
    if (free.empty()) return nullptr;
    for (const char* rule : {"clearance-tight", "clearance-red"}) {
      const double room = snags::threshold(plan_, rule).value;
      auto plan = room > 0 ? planned(free, room) : nullptr;
      if (plan && plan->everybody()) return plan;
      if (cancel_.fired()) return nullptr;
    }
    return nullptr;
  }

  bool addSearches() {
    for (const std::size_t member : soughtOf(take_)) {
      const plan::Crew& crew = plan_.crew[member];
      FoundRoute route;
      route.id = crew.id.text();
      route.notes = needsLeftOut(plan_, member);
      route.why = whyUncovered(maps_.upright->spec(), plan_, crew);
      const bool covered = route.why.empty();
      routes_->people.push_back(std::move(route));
      if (!covered) continue;
      const geometry::Grid& grid = maps_.upright->spec().grid;
      auto needs = needGrounds(take_, member, grid, clockOf(take_, grid, member), cancel_);
      if (!needs || cancel_.fired()) return false;
      searches_.push_back(Search{member, std::move(*needs)});
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

  void fill(const Planned& plan, std::size_t k, const crew::Route& route, FoundRoute& out) const {
    const Search& search = *plan.who[k];
    crew::GroundTime ground = *plan.tasks[k].ground;
    // Where a need is not met a walk may not be shifted to, as if one were seen there.
    for (const auto& need : search.needs) ground.keepClearOnly(need.met);
    const crew::RouteReport report = crew::reportOf(route, ground, plan.tasks[k].speed);
    const crew::DrawnRoute drawn = crew::drawnRoute(route, ground.grid(), ground.clock());
    out.found = true;
    out.metres = route.metres;
    out.room = plan.room;
    out.margin = static_cast<double>(route.margin) * ground.clock().step;
    addStands(route, *plan.tasks[k].ground, drawn, out);
    addWalks(route, ground, report, out);
    out.breaks = needBreaks(take_, search.member, drawn.at);
  }

  void addStands(const crew::Route& route, const crew::GroundTime& ground, const crew::DrawnRoute& drawn,
                 FoundRoute& out) const {
    const auto steps = crew::standsOf(route);
    for (std::size_t i = 0; i < drawn.stands.size(); ++i) {
      const Span span = inTake(drawn.stands[i]);
      if (span.until <= span.from) continue;
      const Point pos = drawn.at(span.from);
      bool crouch = false;
      for (std::size_t step = steps[i].from; step < steps[i].until; ++step)
        crouch = crouch || !ground.clear().at(route.cells[step], step);
      out.stands.push_back({span, pos, shelterAt(pos), crouch});
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
  const RouteMaps& maps_;
  const base::Cancel& cancel_;
  std::shared_ptr<FoundRoutes> routes_ = std::make_shared<FoundRoutes>();
  std::vector<Search> searches_;
  std::vector<std::size_t> places_;  ///< of each search among the people
};

sight::GroundMapSpec specOf(const Take& take) {
  const plan::Plan& plan = take.plan();
  const FloorRange floors = floorsOf(plan);
  sight::GroundMapSpec spec{groundGrid(take), {0, take.length()}, 1 / take.rate(), 0, floors.lowest, floors.highest};
  for (const std::size_t member : soughtOf(take)) {
    spec.radius = std::max(spec.radius, plan.crew[member].radius);
    spec.top = std::max(spec.top, floors.highest + plan.crew[member].height);
  }
  return spec;
}

/// The crown of the tallest of them who crouches, on the highest floor.
double crouchTop(const Take& take) {
  double top = 0;
  for (const std::size_t member : soughtOf(take)) {
    const plan::Crew& crew = take.plan().crew[member];
    top = std::max(top, floorsOf(take.plan()).highest + std::min(crew.crouch, crew.height));
  }
  return top;
}

/// Null when cancelled.
std::shared_ptr<const sight::GroundMap> mapOf(const Take& take, const sight::GroundMapSpec& spec,
                                              const base::Cancel& cancel, const sight::GroundMap* earlier) {
  const double margin = take.plan().sightRules.margin;
  auto map = sight::GroundMap::over(
      take.scene(), [&](double t) { return take.eyeAt(t, margin); }, spec, kThreads, cancel, earlier);
  return map ? std::make_shared<const sight::GroundMap>(std::move(*map)) : nullptr;
}

bool anyShelterSeen(const plan::Plan& plan, const sight::GroundMap& map) {
  const geometry::Grid& grid = map.spec().grid;
  for (const auto& shelter : plan.shelters)
    for (std::size_t cell = 0; cell < grid.cells(); ++cell)
      if (geometry::distance(grid.centre(cell), shelter.pos) <= shelter.radius && !map.seenRuns(cell).empty())
        return true;
  return false;
}

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

Result<RouteMaps> routeGroundOf(const Take& take, const base::Cancel& cancel, const RouteMaps& earlier) {
  const plan::Plan& plan = take.plan();
  if (!plan.lens)
    return base::Problem{"no-lens", "/lens", "no lens", "a lens", "without one nothing is known of sight; add it"};
  if (!routesWanted(take)) return base::Problem{"nobody", "/crew", "", "somebody without marks", "all have their way"};
  sight::GroundMapSpec spec = specOf(take);
  RouteMaps maps;
  maps.upright = mapOf(take, spec, cancel, earlier.upright.get());
  if (!maps.upright) return cancelled();
  const double low = crouchTop(take);
  if (low >= spec.top || !anyShelterSeen(plan, *maps.upright)) return maps;
  spec.top = low;
  maps.low = mapOf(take, spec, cancel, earlier.low.get());
  if (!maps.low) return cancelled();
  return maps;
}

Result<std::shared_ptr<const FoundRoutes>> foundRoutes(const Take& take, const RouteMaps& ground,
                                                       const base::Cancel& cancel) {
  auto found = Finder(take, ground, cancel).found();
  if (!found) return cancelled();
  return found;
}

Result<AnswersPtr> withRoutes(const AnswersPtr& answers, const base::Cancel& cancel, const RouteMaps& earlier) {
  if (!routesWanted(*answers->take) || !answers->take->plan().lens) return answers;
  const auto ground = routeGroundOf(*answers->take, cancel, earlier);
  if (!ground) return ground.problems();
  const auto routes = foundRoutes(*answers->take, *ground, cancel);
  if (!routes) return routes.problems();
  auto more = std::make_shared<Answers>(*answers);
  more->routes = *routes;
  tellOfNone(**routes, *more);
  more->routeGround = *ground;
  return AnswersPtr(std::move(more));
}

}  // namespace wend::answers
