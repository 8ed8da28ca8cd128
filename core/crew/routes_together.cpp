#include "core/crew/routes_together.h"

#include <algorithm>

#include "core/base/check.h"
#include "core/crew/found_route.h"

namespace wend::crew {
namespace {

/// One person's found route in continuous time.
struct Path {
  DrawnRoute drawn;
  double radius = 0;
  std::vector<double> instants;

  bool standsAt(double t) const {
    return std::any_of(drawn.stands.begin(), drawn.stands.end(), [&](Span s) { return s.contains(t); });
  }
};

bool isIn(const SharedShelter& shelter, const Path& path, double t) {
  return path.standsAt(t) && geometry::distance(path.drawn.at(t), shelter.pos) <= shelter.radius;
}

/// The others as one person meets them.
class Others {
 public:
  Others(std::vector<const Path*> paths, std::span<const SharedShelter> shelters)
      : paths_(std::move(paths)), shelters_(shelters) {
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
  bool isFull(const SharedShelter& shelter, double t) const {
    const auto in = std::count_if(paths_.begin(), paths_.end(), [&](const Path* p) { return isIn(shelter, *p, t); });
    return in >= shelter.holds;
  }
  bool isInWay(const Path& path, double t) const {
    const auto leavesRoom = [&](const SharedShelter& s) { return isIn(s, path, t) && !isFull(s, t); };
    return std::none_of(shelters_.begin(), shelters_.end(), leavesRoom);
  }
  /// Who is in changes at corners only.
  void closeWhileFull(const SharedShelter& shelter, GroundTime& ground) const {
    for (std::size_t i = 1; i < corners_.size(); ++i) {
      const double middle = (corners_[i - 1] + corners_[i]) / 2;
      if (!isFull(shelter, middle)) continue;
      ground.takeStand(shelter.pos, shelter.radius, ground.clock().meeting({corners_[i - 1], corners_[i]}));
    }
  }

  std::vector<const Path*> paths_;
  std::span<const SharedShelter> shelters_;
  std::vector<double> corners_;
};

Path pathOf(const Route& route, const GroundTime& ground) {
  Path path{drawnRoute(route, ground.grid(), ground.clock()), ground.radius(), {}};
  for (std::size_t i = 0; i <= ground.clock().steps; ++i) path.instants.push_back(ground.clock().at(i));
  return path;
}

bool isBetter(const RouteAnswer& next, const RouteAnswer& kept) {
  if (!next.route || !kept.route) return next.route.has_value();
  return next.route->cost < kept.route->cost ||
         (next.route->cost == kept.route->cost && next.route->margin > kept.route->margin);
}

/// The state of planning: what everyone has so far.
class Planning {
 public:
  Planning(std::span<const RouteTask> tasks, std::span<const SharedShelter> shelters)
      : tasks_(tasks), shelters_(shelters), paths_(tasks.size()), planned_(tasks.size(), false) {
    routes_.people.resize(tasks.size());
    for (const RouteTask& task : tasks) routes_.grounds.push_back(*task.ground);
  }

  GroundTime groundFor(std::size_t person) const {
    std::vector<const Path*> others;
    for (std::size_t i = 0; i < paths_.size(); ++i)
      if (i != person && paths_[i]) others.push_back(&*paths_[i]);
    GroundTime ground = *tasks_[person].ground;
    Others(std::move(others), shelters_).takeFrom(ground);
    return ground;
  }

  enum class Turn { kept, better, cancelled };
  Turn plan(std::size_t person, const RouteLimits& limits, const base::Cancel& cancel) {
    const GroundTime ground = groundFor(person);
    RouteTask task = tasks_[person];
    task.ground = &ground;
    std::optional<RouteAnswer> answer = cheapestRoute(task, limits, cancel);
    if (!answer) return Turn::cancelled;
    RouteAnswer& kept = routes_.people[person];
    const bool better = isBetter(*answer, kept);
    if (better) paths_[person] = pathOf(*answer->route, ground);
    if (better || !planned_[person] || !kept.route) kept = std::move(*answer);
    planned_[person] = true;
    return better ? Turn::better : Turn::kept;
  }

  CrewRoutes finished(int rounds) {
    for (std::size_t i = 0; i < tasks_.size(); ++i) routes_.grounds[i] = groundFor(i);
    routes_.rounds = rounds;
    return std::move(routes_);
  }

 private:
  std::span<const RouteTask> tasks_;
  std::span<const SharedShelter> shelters_;
  std::vector<std::optional<Path>> paths_;
  std::vector<bool> planned_;
  CrewRoutes routes_;
};

}  // namespace

std::optional<CrewRoutes> routesTogether(std::span<const RouteTask> tasks, std::span<const SharedShelter> shelters,
                                         const RouteLimits& limits, const base::Cancel& cancel) {
  Planning planning(tasks, shelters);
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
