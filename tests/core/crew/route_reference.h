/// The route graph written down a second time, plainly, to hold the search against: every edge out of a state, heap
/// Dijkstra over them, and every route of a small task one after another.
#pragma once

#include <cmath>
#include <functional>
#include <map>
#include <optional>
#include <queue>
#include <set>
#include <vector>

#include "core/crew/route_search.h"

namespace wend::crew::reference {

struct Move {
  int dx, dy;
  std::int64_t length;
  bool brisk;
  std::vector<std::pair<int, int>> passed;
};

/// The cells whose inside the way meets, by clipping the way to each in whole numbers: the stretch of it with
/// |x - column| < 1/2, x = dx t, and alike in y, has a length.
inline bool passes(int dx, int dy, int column, int row) {
  // t in (low, high), as fractions over 2 |d|, compared crosswise.
  struct Fraction {
    long top, bottom;
    bool operator<(Fraction o) const { return top * o.bottom < o.top * bottom; }
  };
  Fraction low{0, 1}, high{1, 1};
  for (const auto& [d, at] : {std::pair{dx, column}, std::pair{dy, row}}) {
    if (d == 0) {
      if (at != 0) return false;
      continue;
    }
    const long size = std::abs(d), along = d > 0 ? at : -at;
    const Fraction in{2 * along - 1, 2 * size}, out{2 * along + 1, 2 * size};
    if (low < in) low = in;
    if (out < high) high = out;
  }
  return low < high;
}

inline std::vector<Move> movesWithin(double radius, double cell) {
  std::vector<Move> moves;
  const int r = static_cast<int>(radius);
  for (int dx = -r; dx <= r; ++dx) {
    for (int dy = -r; dy <= r; ++dy) {
      const double cells = std::hypot(dx, dy);
      if ((dx == 0 && dy == 0) || cells > radius + 1e-9) continue;
      Move move{dx, dy, std::llround(cells * cell * 1000), 2 * cells >= radius - 1e-9, {}};
      for (int x = -r; x <= r; ++x)
        for (int y = -r; y <= r; ++y)
          if (passes(dx, dy, x, y)) move.passed.push_back({x, y});
      moves.push_back(move);
    }
  }
  return moves;
}

struct State {
  std::size_t instant;
  int x, y;
  bool walking;
  auto operator<=>(const State&) const = default;
};

class Graph {
 public:
  /// Seen steps are barred, or cost `seenPrice` each.
  explicit Graph(const RouteTask& task, std::int64_t seenPrice = 0)
      : task_(task),
        ground_(*task.ground),
        moves_(movesWithin(task.speed * ground_.clock().step / ground_.grid().cell, ground_.grid().cell)),
        seenPrice_(seenPrice) {}

  /// visit(state, millimetres) for every edge out of a state.
  template <class Visit>
  void edges(const State& s, Visit visit) const {
    if (s.walking) {
      visit(State{s.instant, s.x, s.y, false}, standPrice(s.x, s.y));
    } else {
      visit(State{s.instant, s.x, s.y, true}, std::llround(task_.perWalk * 1000));
    }
    if (s.instant == ground_.clock().steps) return;
    if (!s.walking) {
      const auto price = priceAt(ground_.stand(), ground_.low(), s.x, s.y, s.instant);
      if (price && mayStand(cellOf(s.x, s.y), s.instant)) visit(State{s.instant + 1, s.x, s.y, false}, *price);
      return;
    }
    for (const Move& move : moves_) {
      const auto price = priceOf(move, s);
      if (!price) continue;
      const int x = s.x + move.dx, y = s.y + move.dy;
      const std::int64_t cost = move.length + *price;
      if (move.brisk)
        visit(State{s.instant + 1, x, y, true}, cost);
      else
        visit(State{s.instant + 1, x, y, false}, cost + standPrice(x, y));
    }
  }

  std::vector<State> starts() const {
    std::vector<State> states;
    for (const std::size_t cell : task_.starts)
      if (mayStand(cell, 0)) states.push_back({0, columnOf(cell), rowOf(cell), false});
    return states;
  }
  bool isEnd(const State& s) const {
    if (s.walking || s.instant != ground_.clock().steps) return false;
    if (!mayStand(cellOf(s.x, s.y), s.instant - 1)) return false;
    return task_.ends.empty() || std::count(task_.ends.begin(), task_.ends.end(), cellOf(s.x, s.y)) > 0;
  }
  bool mayStand(std::size_t cell, std::size_t step) const {
    return !task_.standWithin || task_.standWithin->at(cell, step);
  }
  bool mayWalk(std::size_t cell, std::size_t step) const {
    return !task_.walkWithin || task_.walkWithin->at(cell, step);
  }
  std::size_t cellOf(int x, int y) const { return std::size_t(y) * std::size_t(ground_.grid().nx) + std::size_t(x); }
  std::size_t index(const State& s) const {
    return (s.instant * ground_.grid().cells() + cellOf(s.x, s.y)) * 2 + s.walking;
  }
  std::size_t states() const { return (ground_.clock().steps + 1) * ground_.grid().cells() * 2; }
  State state(std::size_t index) const {
    const std::size_t cell = index / 2 % ground_.grid().cells();
    return {index / 2 / ground_.grid().cells(), columnOf(cell), rowOf(cell), index % 2 == 1};
  }

 private:
  int columnOf(std::size_t cell) const { return int(cell % std::size_t(ground_.grid().nx)); }
  int rowOf(std::size_t cell) const { return int(cell / std::size_t(ground_.grid().nx)); }
  std::int64_t standPrice(int x, int y) const {
    return task_.standPrice.empty() ? 0 : std::llround(task_.standPrice[cellOf(x, y)] * 1000);
  }
  std::optional<std::int64_t> priceAt(const CellTimes& free, const CellTimes& clear, int x, int y,
                                      std::size_t step) const {
    if (x < 0 || y < 0 || x >= ground_.grid().nx || y >= ground_.grid().ny) return std::nullopt;
    const std::size_t cell = cellOf(x, y);
    if (!free.at(cell, step)) return std::nullopt;
    for (const CellTimes* need : task_.needs)
      if (!need->at(cell, step)) return std::nullopt;
    if (clear.at(cell, step)) return 0;
    return seenPrice_ > 0 ? std::optional(seenPrice_) : std::nullopt;
  }
  std::optional<std::int64_t> priceOf(const Move& move, const State& s) const {
    std::int64_t most = 0;
    for (const auto& [dx, dy] : move.passed) {
      const auto price = priceAt(ground_.move(), ground_.clear(), s.x + dx, s.y + dy, s.instant);
      if (!price || !mayWalk(cellOf(s.x + dx, s.y + dy), s.instant)) return std::nullopt;
      most = std::max(most, *price);
    }
    return most;
  }

  const RouteTask& task_;
  const GroundTime& ground_;
  std::vector<Move> moves_;
  std::int64_t seenPrice_;
};

struct Found {
  std::optional<std::int64_t> cost;
  std::size_t furthest = 0;             ///< without a route
  std::set<std::size_t> furthestCells;  ///< without a route
  std::size_t settled = 0;
};

/// Stops at the end it settles first.
inline Found dijkstra(const Graph& graph) {
  std::vector<std::int64_t> best(graph.states(), -1);
  std::vector<bool> done(graph.states());
  using Entry = std::pair<std::int64_t, std::size_t>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> queue;
  const auto reach = [&](const State& state, std::int64_t cost) {
    const std::size_t index = graph.index(state);
    if (best[index] >= 0 && best[index] <= cost) return;
    best[index] = cost;
    queue.push({cost, index});
  };
  Found found;
  for (const State& start : graph.starts()) reach(start, 0);
  while (!queue.empty()) {
    const auto [cost, index] = queue.top();
    queue.pop();
    if (done[index]) continue;
    done[index] = true;
    ++found.settled;
    const State state = graph.state(index);
    if (graph.isEnd(state)) {
      found.cost = cost;
      return found;
    }
    if (state.instant > found.furthest) found.furthestCells.clear();
    found.furthest = std::max(found.furthest, state.instant);
    if (state.instant == found.furthest) found.furthestCells.insert(graph.cellOf(state.x, state.y));
    const std::int64_t base = cost;
    graph.edges(state, [&](const State& to, std::int64_t price) { reach(to, base + price); });
  }
  return found;
}

/// Tries every route: for the smallest tasks only.
class Exhaustive {
 public:
  explicit Exhaustive(const Graph& graph) : graph_(graph) {
    for (const State& start : graph.starts()) from(start, 0);
  }
  std::optional<std::int64_t> cost() const { return best_; }
  std::size_t routes() const { return routes_; }

 private:
  /// Setting off and arriving in one instant and again leads in circles and is never cheaper: `turned` stops it.
  void from(const State& state, std::int64_t cost, bool turned = false) {
    if (graph_.isEnd(state)) {
      ++routes_;
      if (!best_ || cost < *best_) best_ = cost;
    }
    graph_.edges(state, [&](const State& to, std::int64_t price) {
      const bool turns = to.instant == state.instant;
      if (!(turned && turns)) from(to, cost + price, turns);
    });
  }

  const Graph& graph_;
  std::optional<std::int64_t> best_;
  std::size_t routes_ = 0;
};

}  // namespace wend::crew::reference
