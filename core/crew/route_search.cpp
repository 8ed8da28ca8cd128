#include "core/crew/route_search.h"

#include <algorithm>
#include <limits>

#include "core/base/check.h"
#include "core/crew/route_reach.h"
#include "core/crew/route_sweep.h"

namespace wend::crew {
namespace {

bool mayStand(const RouteTask& task, std::size_t cell, std::size_t step) {
  return !task.standWithin || task.standWithin->at(cell, step);
}

/// Somewhere to end, where not everywhere is.
bool anyEnd(const RouteTask& task, std::size_t cells, std::size_t last) {
  for (std::size_t cell = 0; cell < cells; ++cell)
    if (mayStand(task, cell, last)) return true;
  return false;
}

void check(const RouteTask& task) {
  WEND_CHECK(task.ground && !task.starts.empty());
  const std::size_t cells = task.ground->grid().cells();
  WEND_CHECK(task.standPrice.empty() || task.standPrice.size() == cells);
  for (const std::size_t cell : task.starts) WEND_CHECK(cell < cells);
  const std::size_t last = task.ground->clock().steps - 1;
  for (const std::size_t cell : task.ends) WEND_CHECK(cell < cells && mayStand(task, cell, last));
  WEND_CHECK(anyEnd(task, cells, last));
}

/// The task as a search takes it: needs folded into the ground.
class PreparedTask {
 public:
  explicit PreparedTask(const RouteTask& task)
      : task_(task), moves_(movesOf(task)), stand_(task.ground->stand()), move_(task.ground->move()) {
    for (const CellTimes* need : task.needs) {
      stand_.keepOnly(*need);
      move_.keepOnly(*need);
    }
    if (task.walkWithin) move_.keepOnly(*task.walkWithin);
    if (task.standWithin) stand_.keepOnly(*task.standWithin);
    for (const std::size_t cell : task.starts)
      if (mayStand(task, cell, 0)) starts_.push_back(cell);
    for (std::size_t cell = 0; cell < stand_.cells() && task.standWithin && task.ends.empty(); ++cell)
      if (mayStand(task, cell, stand_.steps() - 1)) ends_.push_back(cell);
  }

  SweepInput input() const {
    SweepInput input;
    input.grid = task_.ground->grid();
    input.stand = &stand_;
    input.move = &move_;
    input.moves = &moves_;
    input.starts = starts_;
    input.ends = task_.ends.empty() ? ends_ : task_.ends;
    input.perWalk = millimetres(task_.perWalk);
    for (const double price : task_.standPrice) input.standPrice.push_back(millimetres(price));
    return input;
  }

  /// Without a start there is nothing to search.
  bool hasStart() const { return !starts_.empty(); }
  const CellTimes& stand() const { return stand_; }
  const CellTimes& move() const { return move_; }

  Route routeOf(const SweepOutcome& outcome) const;

 private:
  const RouteTask& task_;
  MoveSet moves_;
  CellTimes stand_, move_;
  std::vector<std::size_t> starts_, ends_;
};

Route PreparedTask::routeOf(const SweepOutcome& outcome) const {
  const geometry::Grid& grid = task_.ground->grid();
  Route route;
  for (std::size_t i = 0; i < outcome.path.size(); ++i) {
    const RouteState& state = outcome.path[i];
    if (i > 0 && state.instant == outcome.path[i - 1].instant) continue;
    if (i > 0) {
      const std::size_t from = route.cells.back();
      const bool walks = from != state.cell;
      route.metres += geometry::distance(grid.centre(from), grid.centre(state.cell));
      route.walks += walks && (route.walking.empty() || !route.walking.back());
      route.walking.push_back(walks);
    }
    route.cells.push_back(static_cast<std::uint32_t>(state.cell));
  }
  route.cost = static_cast<double>(*outcome.cost) / 1000;
  return route;
}

/// The task's ground as one unseen may use it.
struct UnseenGround {
  CellTimes stand, move;

  UnseenGround(const PreparedTask& prepared, const CellTimes& low, const CellTimes& clear)
      : stand(prepared.stand()), move(prepared.move()) {
    stand.keepOnly(low);
    move.keepOnly(clear);
  }
  UnseenGround(const PreparedTask& prepared, const GroundTime& ground)
      : UnseenGround(prepared, ground.low(), ground.clear()) {}
  static UnseenGround withMargin(const PreparedTask& prepared, const GroundTime& ground, std::size_t margin) {
    const long steps = static_cast<long>(margin);
    const CellTimes clear = ground.clear().withBarsMoved(steps, steps);
    if (&ground.low() == &ground.clear()) return {prepared, clear, clear};
    return {prepared, ground.low().withBarsMoved(steps, steps), clear};
  }
  SweepInput inputOf(const PreparedTask& prepared) const {
    SweepInput input = prepared.input();
    input.stand = &stand;
    input.move = &move;
    return input;
  }
};

/// The steps by which all bars may grow at both ends with the route still clear of them. Requires it to be unseen.
std::size_t ownMargin(const Route& route, const GroundTime& ground) {
  std::size_t margin = std::numeric_limits<std::size_t>::max();
  for (std::size_t step = 0; step < route.walking.size(); ++step) {
    const CellTimes& clear = route.walking[step] ? ground.clear() : ground.low();
    for (const std::size_t cell : cellsOf(route, step, ground.grid())) {
      const auto room = clear.roomAt(cell, step);
      WEND_CHECK(room);
      margin = std::min(margin, *room);
    }
  }
  return margin;
}

/// Looks for the route of a cost that leaves the most margin, by steps that grow and then by halving.
///
/// A route found with one margin may have more of its own. It is then the very route that would be found with that: of
/// the ways back that a search prefers to it none is there with less margin, so none with more.
class MarginSearch {
 public:
  MarginSearch(const RouteTask& task, const PreparedTask& prepared, const SweepOutcome& found)
      : task_(task), prepared_(prepared), found_(found) {}

  /// False when cancelled.
  bool widen(Route& route, std::size_t most, const base::Cancel& cancel) const {
    setMargin(route, most);
    std::size_t bad = most + 1;
    for (std::size_t stride = 1; route.margin + 1 < bad; stride *= 2) {
      const bool halves = bad <= most;
      const std::size_t next = halves ? (route.margin + bad) / 2 : std::min(most, route.margin + stride);
      const auto outcome = with(next, cancel);
      if (!outcome) return false;
      if (outcome->cost) {
        route = prepared_.routeOf(*outcome);
        setMargin(route, most);
      } else {
        bad = next;
      }
    }
    return true;
  }

 private:
  void setMargin(Route& route, std::size_t most) const {
    route.margin = most > 0 ? std::min(most, ownMargin(route, *task_.ground)) : 0;
  }

  std::optional<SweepOutcome> with(std::size_t margin, const base::Cancel& cancel) const {
    const UnseenGround unseen = UnseenGround::withMargin(prepared_, *task_.ground, margin);
    SweepInput input = unseen.inputOf(prepared_);
    input.only = found_.cheapest;
    return sweep(input, cancel);
  }

  const RouteTask& task_;
  const PreparedTask& prepared_;
  const SweepOutcome& found_;
};

/// More than all a route can walk and stop for, so that a seen step outweighs it.
std::int64_t priceOfSeeing(const SweepInput& input) {
  std::int64_t stop = input.perWalk;
  for (const std::int64_t price : input.standPrice) stop = std::max(stop, input.perWalk + price);
  const auto steps = static_cast<std::int64_t>(input.stand->steps());
  return steps * (stop + millimetres(input.moves->radius() * input.grid.cell)) + 1;
}

}  // namespace

MoveSet movesOf(const RouteTask& task) {
  return MoveSet(task.speed * task.ground->clock().step / task.ground->grid().cell + 1e-9);
}

std::optional<RouteAnswer> cheapestRoute(const RouteTask& task, const RouteLimits& limits, const base::Cancel& cancel) {
  check(task);
  const PreparedTask prepared(task);
  if (!prepared.hasStart()) return RouteAnswer{std::nullopt, DeadEnd{}};
  const UnseenGround unseen(prepared, *task.ground);
  const std::size_t most = task.ground->clock().wholeSteps(limits.margin);
  SweepInput input = unseen.inputOf(prepared);
  input.tellsCheapest = most > 0;
  const auto outcome = sweep(input, cancel);
  if (!outcome) return std::nullopt;
  RouteAnswer answer;
  if (!outcome->cost) {
    answer.deadEnd = {outcome->furthest, outcome->furthestCells};
    return answer;
  }
  answer.route = prepared.routeOf(*outcome);
  if (!MarginSearch(task, prepared, *outcome).widen(*answer.route, most, cancel)) return std::nullopt;
  return answer;
}

std::optional<RouteOutlook> outlookOf(const RouteTask& task, const base::Cancel& cancel) {
  check(task);
  const PreparedTask prepared(task);
  if (!prepared.hasStart()) return RouteOutlook{};
  const UnseenGround unseen(prepared, *task.ground);
  auto reach = reachOf(unseen.inputOf(prepared), cancel);
  if (!reach) return std::nullopt;
  if (reach->end) return RouteOutlook{true, {}};
  return RouteOutlook{false, {reach->furthest, std::move(reach->cells)}};
}

std::optional<ExposureAnswer> leastExposedRoute(const RouteTask& task, const base::Cancel& cancel) {
  check(task);
  const PreparedTask prepared(task);
  if (!prepared.hasStart()) return ExposureAnswer{std::nullopt, DeadEnd{}};
  SweepInput input = prepared.input();
  input.clear = &task.ground->clear();
  input.low = &task.ground->low();
  input.seenPrice = priceOfSeeing(input);
  const auto outcome = sweep(input, cancel);
  if (!outcome) return std::nullopt;
  if (!outcome->cost) return ExposureAnswer{std::nullopt, {outcome->furthest, outcome->furthestCells}};
  ExposedRoute exposed;
  exposed.route = prepared.routeOf(*outcome);
  exposed.seen = seenSteps(exposed.route, *task.ground);
  exposed.route.cost -= static_cast<double>(static_cast<std::int64_t>(exposed.seen.size()) * input.seenPrice) / 1000;
  exposed.seconds = static_cast<double>(exposed.seen.size()) * task.ground->clock().step;
  return ExposureAnswer{exposed, {}};
}

std::vector<std::size_t> cellsOf(const Route& route, std::size_t step, const geometry::Grid& grid) {
  const long wide = grid.nx, from = route.cells[step], to = route.cells[step + 1];
  const CellOffset way{static_cast<int>(to % wide - from % wide), static_cast<int>(to / wide - from / wide)};
  std::vector<std::size_t> cells;
  for (const CellOffset o : cellsPassed(way)) cells.push_back(static_cast<std::size_t>(from + o.dy * wide + o.dx));
  return cells;
}

std::vector<std::size_t> seenSteps(const Route& route, const GroundTime& ground) {
  std::vector<std::size_t> seen;
  for (std::size_t step = 0; step < route.walking.size(); ++step) {
    const CellTimes& clear = route.walking[step] ? ground.clear() : ground.low();
    const auto cells = cellsOf(route, step, ground.grid());
    const auto isSeen = [&](std::size_t cell) { return !clear.at(cell, step); };
    if (std::any_of(cells.begin(), cells.end(), isSeen)) seen.push_back(step);
  }
  return seen;
}

}  // namespace wend::crew
