/// Routes for several people who must not meet.
///
/// Frame     everyone has their own ground with their own clock, without the others of the list in it.
#pragma once

#include <map>
#include <span>

#include "core/crew/route_search.h"

namespace wend::crew {

/// Who is within `radius` of `pos`, standing or walking, is in the shelter; it holds so many.
struct SharedShelter {
  Point pos;
  double radius = 0.5;
  int holds = 1;
};

struct CrewRoutes {
  std::vector<RouteAnswer> people;  ///< in the order of the tasks
  std::vector<GroundTime> grounds;  ///< for each, the ground with all the others in it
  int rounds = 0;                   ///< how often everyone was planned
};

/// What was answered before, so that planning some of the same people again searches no question twice.
///
/// Requires  the same shelters and limits each time, and a name to stand for the same task each time: the ground
///           without the others, the speed and all else of it.
class RouteMemory {
 public:
  /// Somebody to be got past.
  struct Passed {
    std::size_t name = 0;
    std::vector<std::uint32_t> cells;
    std::vector<bool> walking;
    auto operator<=>(const Passed&) const = default;
  };
  struct Question {
    std::size_t name = 0;
    std::vector<Passed> others;
    auto operator<=>(const Question&) const = default;
  };
  const RouteAnswer* find(const Question& question) const {
    const auto found = answers_.find(question);
    return found == answers_.end() ? nullptr : &found->second;
  }
  void keep(Question question, const RouteAnswer& answer) { answers_.emplace(std::move(question), answer); }

 private:
  std::map<Question, RouteAnswer> answers_;
};

/// One name for each task.
struct NamedTasks {
  std::vector<std::size_t> names;
  RouteMemory* memory = nullptr;
};

/// Everyone in order of the list, past those before them; then everyone again past all the others, for as long as that
/// makes a route cheaper, or wider in its margin at the same cost, or finds one at all.
///
/// Requires  as `cheapestRoute` does of every task.
/// Ensures   (1) two people are never nearer than their radii, but for (2); (2) somebody who stands in a shelter that
///           holds one more is in nobody's way, and nobody is in one that is full; (3) no route is dearer than the
///           one first found; (4) nobody can do better alone, the others as they are; (5) same input, same routes.
/// Stops holding as the best for all together: that may need two to change at once.
/// Fails     when cancelled: nothing.
/// Cost      a search for each person, and another whenever the others leave ground that was not free when they were
///           last searched for; none for what `named` remembers.
std::optional<CrewRoutes> routesTogether(std::span<const RouteTask> tasks, std::span<const SharedShelter> shelters,
                                         const RouteLimits& limits = {}, const base::Cancel& cancel = {},
                                         const NamedTasks& named = {});

}  // namespace wend::crew
