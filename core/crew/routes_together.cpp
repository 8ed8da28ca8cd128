#include "core/crew/routes_together.h"

#include <algorithm>
#include <memory>

#include "core/base/check.h"
#include "core/crew/found_route.h"

namespace wend::crew {
namespace {

/// One person's found route in continuous time.
struct Path {
  Route route;
  DrawnRoute drawn;
  double radius = 0;
  std::vector<double> instants;

  bool standsAt(double t) const {
    return std::any_of(drawn.stands.begin(), drawn.stands.end(), [&](Span s) { return s.contains(t); });
  }
};

/// Of everybody, at their place; null for who has none, or does not count.
using Paths = std::vector<std::shared_ptr<const Path>>;

/// Standing or on their way: pacing to and fro in a shelter takes up a place in it, too.
bool isIn(const SharedShelter& shelter, const Path& path, double t) {
  return geometry::distance(path.drawn.at(t), shelter.pos) <= shelter.radius;
}
/// At some instant of a span in which the path is straight.
bool isIn(const SharedShelter& shelter, const Path& path, Span span) {
  const geometry::Segment way{path.drawn.at(span.from), path.drawn.at(span.until)};
  return geometry::distance(shelter.pos, way) <= shelter.radius;
}

/// The others as one person meets them.
class Others {
 public:
  Others(const Paths& paths, std::span<const SharedShelter> shelters) : shelters_(shelters) {
    for (const auto& path : paths)
      if (path) paths_.push_back(path.get());
    for (const Path* path : paths_) corners_.insert(corners_.end(), path->instants.begin(), path->instants.end());
    std::sort(corners_.begin(), corners_.end());
  }

  void takeFrom(GroundTime& ground) const {
    for (const Path* path : paths_) {
      const auto isThere = [this, path](double t) { return isInWay(*path, t); };
      ground.take(Mover{path->drawn.at, path->radius, isThere, corners_});
    }
    for (const SharedShelter& shelter : shelters_) closeWhileFull(shelter, ground);
  }

 private:
  /// At an instant, or at some instant of a span between corners.
  template <class When>
  bool isFull(const SharedShelter& shelter, When when) const {
    const auto in = std::count_if(paths_.begin(), paths_.end(), [&](const Path* p) { return isIn(shelter, *p, when); });
    return in >= shelter.holds;
  }
  bool isInWay(const Path& path, double t) const {
    const auto leavesRoom = [&](const SharedShelter& s) { return isIn(s, path, t) && !isFull(s, t); };
    return !path.standsAt(t) || std::none_of(shelters_.begin(), shelters_.end(), leavesRoom);
  }
  /// Everybody goes straight from corner to corner.
  void closeWhileFull(const SharedShelter& shelter, GroundTime& ground) const {
    for (std::size_t i = 1; i < corners_.size(); ++i) {
      const Span span{corners_[i - 1], corners_[i]};
      if (isFull(shelter, span)) ground.close(shelter.pos, shelter.radius, ground.clock().meeting(span));
    }
  }

  std::vector<const Path*> paths_;
  std::span<const SharedShelter> shelters_;
  std::vector<double> corners_;
};

Path pathOf(const Route& route, const GroundTime& ground) {
  Path path{route, drawnRoute(route, ground.grid(), ground.clock()), ground.radius(), {}};
  for (std::size_t i = 0; i <= ground.clock().steps; ++i) path.instants.push_back(ground.clock().at(i));
  return path;
}

bool isBetter(const RouteAnswer& next, const RouteAnswer& kept) {
  if (!next.route || !kept.route) return next.route.has_value();
  return next.route->cost < kept.route->cost ||
         (next.route->cost == kept.route->cost && next.route->margin > kept.route->margin);
}

/// Whether nothing is free on the one ground that is not on the other. Sight is taken for the same on both.
bool isNoFreer(const GroundTime& ground, const GroundTime& other) {
  return ground.stand().isWithin(other.stand()) && ground.move().isWithin(other.move());
}

/// The state of planning: what everyone has so far.
class Planning {
 public:
  Planning(std::span<const RouteTask> tasks, std::span<const SharedShelter> shelters, const NamedTasks& named)
      : tasks_(tasks), shelters_(shelters), named_(named), paths_(tasks.size()), searched_(tasks.size()) {
    WEND_CHECK(!named.memory || named.names.size() == tasks.size());
    routes_.people.resize(tasks.size());
  }

  enum class Turn { kept, better, cancelled };
  Turn plan(std::size_t person, const RouteLimits& limits, const base::Cancel& cancel) {
    std::optional<Searched>& last = searched_[person];
    Paths others = othersOf(person);
    if (last && last->others == others) return Turn::kept;
    if (last && !lookBack(person, *last, std::move(others), cancel)) return Turn::cancelled;
    if (last && last->holds) return Turn::kept;
    if (!last) last = Searched{std::move(others), std::nullopt, false};
    std::optional<RouteAnswer> answer = answerTo(person, *last, limits, cancel);
    if (!answer) return Turn::cancelled;
    RouteAnswer& kept = routes_.people[person];
    const bool better = isBetter(*answer, kept);
    if (better) paths_[person] = std::make_shared<const Path>(pathOf(*answer->route, *tasks_[person].ground));
    if (better || !kept.route) kept = std::move(*answer);
    return better ? Turn::better : Turn::kept;
  }

  CrewRoutes finished(int rounds) {
    for (std::size_t i = 0; i < tasks_.size(); ++i) {
      const Paths others = othersOf(i);
      const bool isKnown = searched_[i] && searched_[i]->others == others && searched_[i]->ground;
      routes_.grounds.push_back(isKnown ? std::move(*searched_[i]->ground) : groundPast(i, others));
    }
    routes_.rounds = rounds;
    return std::move(routes_);
  }

 private:
  /// Whom somebody was planned past last.
  struct Searched {
    Paths others;
    std::optional<GroundTime> ground;  ///< when it had to be made
    bool holds = false;                ///< what was answered before is still the answer
  };

  Paths othersOf(std::size_t person) const {
    Paths others = paths_;
    others[person] = nullptr;
    return others;
  }
  GroundTime groundPast(std::size_t person, const Paths& others) const {
    GroundTime ground = *tasks_[person].ground;
    Others(others, shelters_).takeFrom(ground);
    return ground;
  }
  RouteTask taskOn(std::size_t person, const GroundTime& ground) const {
    RouteTask task = tasks_[person];
    task.ground = &ground;
    return task;
  }

  /// Past the others as they are now. Where their ground is no freer than the last, what was the best then is not
  /// bettered, and who had no way has none: only where it ends may have moved. False when cancelled.
  bool lookBack(std::size_t person, Searched& last, Paths others, const base::Cancel& cancel) {
    if (!last.ground) last.ground = groundPast(person, last.others);
    GroundTime ground = groundPast(person, others);
    last.holds = isNoFreer(ground, *last.ground);
    last.ground = std::move(ground);
    last.others = std::move(others);
    if (!last.holds || routes_.people[person].route) return true;
    auto outlook = outlookOf(taskOn(person, *last.ground), cancel);
    if (!outlook) return false;
    WEND_CHECK(!outlook->exists);
    routes_.people[person].deadEnd = std::move(outlook->deadEnd);
    return true;
  }

  RouteMemory::Question questionOf(std::size_t person, const Paths& others) const {
    RouteMemory::Question question{named_.names[person], {}};
    for (std::size_t i = 0; i < others.size(); ++i)
      if (others[i]) question.others.push_back({named_.names[i], others[i]->route.cells, others[i]->route.walking});
    return question;
  }

  /// Nothing when cancelled.
  std::optional<RouteAnswer> answerTo(std::size_t person, Searched& asked, const RouteLimits& limits,
                                      const base::Cancel& cancel) const {
    if (cancel.fired()) return std::nullopt;
    std::optional<RouteMemory::Question> question;
    if (named_.memory) {
      question = questionOf(person, asked.others);
      if (const RouteAnswer* known = named_.memory->find(*question)) return *known;
    }
    if (!asked.ground) asked.ground = groundPast(person, asked.others);
    auto answer = cheapestRoute(taskOn(person, *asked.ground), limits, cancel);
    if (answer && question) named_.memory->keep(std::move(*question), *answer);
    return answer;
  }

  std::span<const RouteTask> tasks_;
  std::span<const SharedShelter> shelters_;
  const NamedTasks& named_;
  Paths paths_;
  std::vector<std::optional<Searched>> searched_;
  CrewRoutes routes_;
};

}  // namespace

std::optional<CrewRoutes> routesTogether(std::span<const RouteTask> tasks, std::span<const SharedShelter> shelters,
                                         const RouteLimits& limits, const base::Cancel& cancel,
                                         const NamedTasks& named) {
  Planning planning(tasks, shelters, named);
  int rounds = 0;
  for (bool better = true; better;) {
    better = false;
    ++rounds;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      const Planning::Turn turn = planning.plan(i, limits, cancel);
      if (turn == Planning::Turn::cancelled) return std::nullopt;
      better = better || turn == Planning::Turn::better;
    }
    // Nobody is in anybody's way when there is one.
    if (tasks.size() < 2) break;
  }
  return planning.finished(rounds);
}

}  // namespace wend::crew
