#include "core/answers/routes.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>
#include <utility>

#include "core/answers/drawn_routes.h"
#include "core/answers/found_passes.h"
#include "core/answers/full_shelters.h"
#include "core/answers/on_found_routes.h"
#include "core/answers/route_ground.h"
#include "core/answers/route_needs.h"
#include "core/answers/route_words.h"
#include "core/answers/shelter_at.h"
#include "core/answers/sight_steps.h"
#include "core/base/text.h"
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
  crew::StepClock clock;
  std::vector<NeedGround> needs;
  std::optional<KnownGround> known;  ///< where they may be sent at all

  /// Requires  both to outlive the task.
  crew::RouteTask task(const plan::Plan& plan, const crew::GroundTime& ground) const {
    crew::RouteTask task;
    task.ground = &ground;
    task.speed = plan.crew[member].speed;
    for (const auto& need : needs) task.needs.push_back(&need.met);
    if (known) task.standWithin = &known->stand, task.walkWithin = &known->walk;
    // Wherever nothing stands: what sight, needs and rooms leave of it is the search's business, so that a need given
    // up for a trial frees its starts as well, and who is seen from the start on has a least exposure.
    for (std::size_t cell = 0; cell < ground.grid().cells(); ++cell)
      if (ground.stand().at(cell, 0)) task.starts.push_back(cell);
    // Nowhere to start is told as a dead end at the start, not as no question.
    if (task.starts.empty()) task.starts.push_back(0);
    return task;
  }
};

/// Of a number of people, each at their place.
using Rooms = std::vector<double>;

/// Room to try, from the most to none.
std::vector<double> roomLadder(const plan::Plan& plan) {
  std::vector<double> ladder;
  for (const char* rule : {"clearance-tight", "clearance-red"}) {
    const double room = snags::threshold(plan, rule).value;
    if (room > 0 && (ladder.empty() || room < ladder.back())) ladder.push_back(room);
  }
  ladder.push_back(0);
  return ladder;
}

/// Some people planned together, each keeping so much room. What the tasks point at lives here and with the searches.
struct Planned {
  std::vector<const Search*> who;
  Rooms rooms;
  std::vector<std::shared_ptr<const crew::GroundTime>> alone;  ///< each one's ground without the others
  std::vector<crew::RouteTask> tasks;
  crew::CrewRoutes together;

  bool everybody() const {
    return std::all_of(together.people.begin(), together.people.end(), [](const auto& p) { return p.route; });
  }
  bool hasRoute(std::size_t k) const { return together.people[k].route.has_value(); }
};

class Finder {
 public:
  Finder(const Take& take, const RouteMaps& maps, const base::Cancel& cancel)
      : take_(take), plan_(take.plan()), maps_(maps), cancel_(cancel), shelters_(sharedShelters()) {}

  /// Null when cancelled.
  std::shared_ptr<const FoundRoutes> found() {
    if (!addSearches()) return nullptr;
    if (searches_.empty()) return routes_;
    std::vector<const Search*> all;
    for (const auto& search : searches_) all.push_back(&search);
    const auto plain = planned(all, Rooms(all.size(), 0));
    if (!plain) return nullptr;
    std::vector<const Search*> free;
    for (std::size_t k = 0; k < all.size(); ++k)
      if (plain->hasRoute(k)) placed_.push_back(all[k]->member);
    for (std::size_t k = 0; k < all.size(); ++k) {
      if (plain->hasRoute(k))
        free.push_back(all[k]);
      else if (!explain(*all[k], plain->tasks[k], answerFor(*all[k])))
        return nullptr;
    }
    const auto best = withRoom(free);
    if (cancel_.fired()) return nullptr;
    const Planned& fast = best ? *best : *plain;
    const auto slow = silent(fast);
    if (cancel_.fired()) return nullptr;
    const Planned& kept = slow ? *slow : fast;
    for (std::size_t k = 0; k < kept.who.size(); ++k)
      if (const auto& route = kept.together.people[k].route) fill(kept, k, *route, answerFor(*kept.who[k]));
    return routes_;
  }

  /// Whether one member has a way with that much room, nobody else being given any; nothing when cancelled.
  std::optional<bool> hasWay(std::size_t member, double room = 0) {
    if (searches_.empty() && !addSearches()) return std::nullopt;
    std::vector<const Search*> all;
    Rooms rooms;
    for (const auto& search : searches_) {
      all.push_back(&search);
      rooms.push_back(search.member == member ? room : 0);
    }
    const auto own = std::find_if(all.begin(), all.end(), [&](const Search* s) { return s->member == member; });
    if (own == all.end()) return false;
    // Whoever has none with nobody to get past has none, and is asked that without prices.
    const auto alone = aloneGround(**own, room);
    const auto outlook = crew::outlookOf((*own)->task(plan_, *alone), cancel_);
    if (!outlook) return std::nullopt;
    if (!outlook->exists || all.size() == 1) return outlook->exists;
    const auto plain = planned(all, rooms);
    if (!plain) return std::nullopt;
    return plain->hasRoute(static_cast<std::size_t>(own - all.begin()));
  }

 private:
  FoundRoute& answerFor(const Search& search) {
    return routes_->people[places_[static_cast<std::size_t>(&search - searches_.data())]];
  }

  /// One who keeps some room at some speed.
  struct Asker {
    std::size_t member;
    double room, speed;
    bool operator==(const Asker&) const = default;
  };
  std::size_t nameOf(const Asker& asker) {
    const auto known = std::find(askers_.begin(), askers_.end(), asker);
    if (known != askers_.end()) return static_cast<std::size_t>(known - askers_.begin());
    askers_.push_back(asker);
    return askers_.size() - 1;
  }

  std::shared_ptr<const crew::GroundTime> aloneGround(const Search& search, double room) {
    auto& kept = alone_[{search.member, room}];
    if (kept) return kept;
    crew::GroundTime ground = memberGround(take_, *maps_.upright, search.member, room);
    if (maps_.low) letCrouch(take_, *maps_.low, search.member, uprightSpans(take_, search.member), ground);
    keepPlaces(search, ground);
    return kept = std::make_shared<const crew::GroundTime>(std::move(ground));
  }

  /// A shelter's places are kept for those who have to stay in it then, from all who do not.
  void keepPlaces(const Search& search, crew::GroundTime& ground) const {
    const auto has = [this](std::size_t member, const std::string& shelter, double t) {
      const auto spans = staySpans(take_, member, shelter);
      return std::any_of(spans.begin(), spans.end(), [t](const Span& span) { return span.contains(t); });
    };
    const crew::StepClock& clock = ground.clock();
    for (const auto& shelter : plan_.shelters)
      for (std::size_t step = 0; step < clock.steps; ++step)
        for (const double t : {clock.at(step), clock.at(step) + clock.step / 2}) {
          if (has(search.member, shelter.id.text(), t)) continue;
          int kept = 0;
          for (const Search& other : searches_)
            if (other.member != search.member) kept += has(other.member, shelter.id.text(), t);
          if (kept > 0) kept += drawnIn(take_, shelter.id.text(), std::min(t, take_.length()));
          if (kept > 0 && kept >= shelter.holds) ground.close(shelter.pos, shelter.radius, {step, step + 1});
        }
  }

  /// Null when cancelled.
  /// Speeds of their own where `speeds` has any.
  std::unique_ptr<Planned> planned(const std::vector<const Search*>& who, const Rooms& rooms,
                                   const std::vector<double>& speeds = {}) {
    auto plan = std::make_unique<Planned>(Planned{who, rooms, {}, {}, {}});
    crew::NamedTasks named{{}, &memory_};
    for (std::size_t k = 0; k < who.size(); ++k) {
      plan->alone.push_back(aloneGround(*who[k], rooms[k]));
      plan->tasks.push_back(who[k]->task(plan_, *plan->alone[k]));
      if (!speeds.empty()) plan->tasks.back().speed = speeds[k];
      named.names.push_back(nameOf({who[k]->member, rooms[k], plan->tasks.back().speed}));
    }
    auto together = crew::routesTogether(plan->tasks, shelters_, {}, cancel_, named);
    if (!together) return nullptr;
    plan->together = std::move(*together);
    for (std::size_t k = 0; k < who.size(); ++k) plan->tasks[k].ground = &plan->together.grounds[k];
    return plan;
  }

  /// Those who have a way, with room. Everybody starts with the most; whoever is left without a way keeps one step of
  /// the ladder less, and the others only when that person has none left to give. Null when there is none to spare, or
  /// when cancelled.
  std::unique_ptr<Planned> withRoom(const std::vector<const Search*>& free) {
    const std::vector<double> ladder = roomLadder(plan_);
    std::vector<std::size_t> rungs(free.size(), 0);
    const auto lower = [&](std::size_t k) { return rungs[k] + 1 < ladder.size() && ++rungs[k] > 0; };
    while (!free.empty()) {
      Rooms rooms;
      for (const std::size_t rung : rungs) rooms.push_back(ladder[rung]);
      if (std::count(rooms.begin(), rooms.end(), 0.0) == static_cast<std::ptrdiff_t>(free.size())) return nullptr;
      auto plan = planned(free, rooms);
      if (!plan || plan->everybody()) return plan;
      bool lowered = false;
      for (std::size_t k = 0; k < free.size(); ++k)
        if (!plan->hasRoute(k)) lowered = lower(k) || lowered;
      for (std::size_t k = 0; k < free.size() && !lowered; ++k) lower(k);
    }
    return nullptr;
  }

  /// The same people with the same room, those who walk faster than is silent slowed down to that, where that leaves
  /// everybody with a way one still; else null.
  std::unique_ptr<Planned> silent(const Planned& fast) {
    const double pace = snags::threshold(plan_, "crew-speed").value;
    std::vector<double> speeds;
    bool any = false;
    for (std::size_t k = 0; k < fast.who.size(); ++k) {
      const crew::GroundTime& ground = *fast.alone[k];
      const double least = std::max(pace, ground.grid().cell / ground.clock().step);
      const double peak = fast.hasRoute(k) ? crew::peakSpeed(*fast.together.people[k].route, ground) : 0;
      speeds.push_back(peak > least + 1e-6 ? least : fast.tasks[k].speed);
      any = any || peak > least + 1e-6;
    }
    auto slow = any ? planned(fast.who, fast.rooms, speeds) : nullptr;
    for (std::size_t k = 0; slow && k < fast.who.size(); ++k)
      if (fast.hasRoute(k) && !slow->hasRoute(k)) return nullptr;
    return slow;
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
      const crew::StepClock clock = clockOf(take_, grid, member);
      auto needs = needGrounds(take_, member, grid, clock, cancel_);
      if (!needs || cancel_.fired()) return false;
      searches_.push_back(Search{member, clock, std::move(*needs), knownFor(grid, clock)});
      places_.push_back(routes_->people.size() - 1);
    }
    return true;
  }

  /// The same for all who go by one clock.
  std::optional<KnownGround> knownFor(const geometry::Grid& grid, const crew::StepClock& clock) const {
    const auto alike =
        std::find_if(searches_.begin(), searches_.end(), [&](const auto& s) { return s.clock == clock; });
    return alike == searches_.end() ? knownGround(plan_, grid, clock) : alike->known;
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

  void fill(const Planned& plan, std::size_t k, const crew::Route& route, FoundRoute& out) const {
    const Search& search = *plan.who[k];
    crew::GroundTime ground = *plan.tasks[k].ground;
    // Where a need is not met a walk may not be shifted to, as if one were seen there.
    for (const auto& need : search.needs) ground.keepClearOnly(need.met);
    const crew::RouteReport report = crew::reportOf(route, ground, plan.tasks[k].speed);
    const crew::DrawnRoute drawn = crew::drawnRoute(route, ground.grid(), ground.clock());
    out.found = true;
    out.metres = route.metres;
    out.room = plan.rooms[k];
    out.margin = static_cast<double>(route.margin) * ground.clock().step;
    out.marginMore = route.margin >= ground.clock().wholeSteps(crew::RouteLimits{}.margin);
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
      out.stands.push_back({span, pos, shelterAt(plan_, pos), crouch});
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
    crew::Stuck told = inTake(*stuck, task);
    if (told.speed && !findFreeingSpeed(search.member, told, out.notes)) return false;
    const auto full = fullShelters(take_, search.member, placed_);
    const auto frees = [&](const plan::Plan& trial) {
      const auto take = Take::of(std::make_shared<plan::Plan>(trial), take_.luminaires());
      return take && Finder(**take, maps_, cancel_).hasWay(search.member).value_or(false);
    };
    out.frees = freedPlaces(plan_, full, placed_, frees);
    if (cancel_.fired()) return false;
    for (auto& free : freeingsOf(told, needs)) out.frees.push_back(std::move(free));
    out.why = stuckWords(told);
    if (!full.empty()) out.why += ". " + fullWords(plan_, full);
    out.notes.push_back(gridWords(*task.ground));
    out.stuck = std::move(told);
    return true;
  }

  /// What a route on a grid gives away, whoever has none should know.
  static std::string gridWords(const crew::GroundTime& ground) {
    return "looked for on cells of " + base::fixed(ground.grid().cell, 2) + " m in steps of " +
           base::fixed(ground.clock().step, 2) +
           " s: a way drawn by hand may just get through, or at less pace; draw one to have it checked";
  }

  /// The last step may end after the take.
  crew::Stuck inTake(crew::Stuck stuck, const crew::RouteTask& task) const {
    const crew::StepClock& clock = task.ground->clock();
    const double over = std::max(0.0, clock.at(clock.steps) - take_.length());
    stuck.until = std::min(stuck.until, take_.length());
    for (auto& exposure : stuck.exposures) exposure.span = inTake(exposure.span);
    if (stuck.least && !stuck.least->seen.empty() && stuck.least->seen.back() + 1 == clock.steps)
      stuck.least->seconds -= over;
    return stuck;
  }

  /// A faster walker's steps are shorter, so that a speed that frees on these steps need not on those of its own: what
  /// is said is what was found for a plan with that speed, the first that leaves room enough not to stop the take, or
  /// else the first. False when cancelled.
  bool findFreeingSpeed(std::size_t member, crew::Stuck& stuck, std::vector<std::string>& notes) const {
    const double first = *std::exchange(stuck.speed, std::nullopt);
    const double red = snags::threshold(plan_, "clearance-red").value;
    for (const double more : {1.0, 1.03, 1.06, 1.1, 1.15, 1.2}) {
      const double speed = std::ceil(first * more * 100 - 1e-6) / 100;
      const auto room = roomAt(member, speed, red);
      if (cancel_.fired()) return false;
      if (!room) continue;
      if (!stuck.speed || *room >= red) stuck.speed = speed;
      if (*room >= red) return true;
    }
    if (stuck.speed)
      notes.push_back("at up to " + base::fixed(*stuck.speed, 2) + " m/s the way found has less than " +
                      base::fixed(red, 2) + " m to spare");
    return true;
  }

  /// The room of a way at that speed, `red` or none; nothing where there is no way, or when cancelled.
  std::optional<double> roomAt(std::size_t member, double speed, double red) const {
    auto plan = std::make_shared<plan::Plan>(plan_);
    plan::Crew crew = plan->crew[member];
    crew.speed = speed;
    plan->crew.replace(member, crew);
    const auto take = Take::of(plan, take_.luminaires());
    if (!take) return std::nullopt;
    Finder finder(**take, maps_, cancel_);
    if (!finder.hasWay(member).value_or(false)) return std::nullopt;
    return finder.hasWay(member, red).value_or(false) ? red : 0;
  }

  const Take& take_;
  const plan::Plan& plan_;
  const RouteMaps& maps_;
  const base::Cancel& cancel_;
  std::shared_ptr<FoundRoutes> routes_ = std::make_shared<FoundRoutes>();
  std::vector<Search> searches_;
  std::vector<std::size_t> places_;  ///< of each search among the people
  std::vector<crew::SharedShelter> shelters_;
  std::vector<std::size_t> placed_;  ///< members with a way before anybody is given room
  std::vector<Asker> askers_;        ///< by name
  std::map<std::pair<std::size_t, double>, std::shared_ptr<const crew::GroundTime>> alone_;
  crew::RouteMemory memory_;
};

sight::GroundMapSpec specOf(const Take& take) {
  const plan::Plan& plan = take.plan();
  const FloorRange floors = floorsOf(plan);
  sight::GroundMapSpec spec{groundGrid(take), {0, take.length()}, 1 / sightRate(take), 0,
                            floors.lowest,    floors.highest};
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

/// Those who were looked for in vain, and what hangs on the ways of the others, as evidence with the snags that come of
/// it.
void tell(FoundRoutes& routes, const base::Cancel& cancel, Answers& answers) {
  if (!answers.evidence) return;
  std::vector<snags::NoRoute> none;
  for (const auto& route : routes.people)
    if (route.stuck) none.push_back(noRouteOf(route));
  auto evidence = std::make_shared<Evidence>(*answers.evidence);
  Evidence forRules;
  const bool routed = putOnFoundRoutes(*answers.take, routes, cancel, *evidence, &forRules);
  if (!routed && none.empty()) return;
  tellNearest(forRules.clearances, routes);
  evidence->noRoutes = none;
  forRules.noRoutes = std::move(none);
  answers.snags = std::make_shared<const snags::Snags>(snags::snagsOf(routed ? forRules : *evidence));
  answers.evidence = std::move(evidence);
}

}  // namespace

bool routesWanted(const Take& take) {
  return !soughtOf(take).empty();
}

bool routesSearched(const Answers& answers) {
  return !answers.routes && answers.take->plan().lens && routesWanted(*answers.take);
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
  if (!answers->take->plan().lens) return answers;
  auto more = std::make_shared<Answers>(*answers);
  auto routes = std::make_shared<FoundRoutes>();
  const bool wanted = routesWanted(*answers->take);
  if (wanted) {
    const auto ground = routeGroundOf(*answers->take, cancel, earlier);
    if (!ground) return ground.problems();
    const auto found = foundRoutes(*answers->take, *ground, cancel);
    if (!found) return found.problems();
    *routes = **found;
    promiseAsDrawn(*answers->take, *routes);
    tellMovers(*answers->take, *routes);
    tell(*routes, cancel, *more);
    more->routeGround = *ground;
  }
  // Whoever has the map of the ground tells when people have to be gone from it, on drawn ways as well.
  if (answers->ground) routes->drawn = drawnChecked(*answers->take);
  routes->slips = slipsOf(routes->drawn);
  if (cancel.fired()) return cancelled();
  if (!wanted && routes->drawn.empty()) return answers;
  more->routes = std::move(routes);
  return AnswersPtr(std::move(more));
}

}  // namespace wend::answers
