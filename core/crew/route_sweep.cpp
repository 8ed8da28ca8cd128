#include "core/crew/route_sweep.h"

#include <algorithm>
#include <bit>
#include <cmath>

#include "core/base/check.h"
#include "core/crew/cheapest_states.h"
#include "core/crew/cost_lanes.h"
#include "core/crew/move_walk.h"
#include "core/crew/route_bound.h"
#include "core/crew/route_reach.h"
#include "core/crew/sweep_graph.h"

namespace wend::crew {
namespace {

/// to[i] = min(to[i], from[i] + price) for those of 64 cells whose bit is in `bits`.
template <class Cost>
void lower(Cost* to, const Cost* from, Cost price, std::uint64_t bits) {
  for (std::size_t i = 0; bits != 0; i += 8, bits >>= 8)
    if (const auto eight = static_cast<unsigned>(bits & 0xff)) lowerSome(to + i, from + i, price, eight);
}

template <class Cost>
class Sweep {
 public:
  Sweep(const SweepInput& input, const SweepMaps& maps);
  /// False when cancelled.
  bool run(Cost most, const RouteBound* bound, const base::Cancel& cancel);
  /// The same through some states only, at what their routes cost.
  bool runThrough(const CheapestStates& only, const base::Cancel& cancel);
  /// Of all cheapest routes of the last run, which has one.
  CheapestStates cheapest() const;
  /// Of the cheapest end, when the last run has one.
  std::optional<SweepState> end() const { return end_; }
  /// Whether a state was left out of the last run as too dear.
  bool leftOut() const { return leftOut_; }
  SweepOutcome outcome() const;

 private:
  /// Costs of standing and of walking at an instant; a cell with no state is infinite.
  struct Front {
    std::vector<Cost> stand, walk;
    std::vector<std::uint64_t> standing, walking;  ///< bits of the finite ones
    std::vector<std::uint8_t> touched;             ///< words that may hold something
  };

  Cost* lanes(std::vector<Cost>& costs, std::size_t bit) const { return costs.data() + kMargin + bit; }
  const Cost* lanes(const std::vector<Cost>& costs, std::size_t bit) const { return costs.data() + kMargin + bit; }

  void begin();
  void settle(std::size_t instant);
  void settleWord(std::size_t word, std::size_t instant, CostLayer<Cost>& layer);
  std::uint64_t keep(Cost* costs, const float* toGo, std::uint64_t among);
  template <class Visit>
  void eachEnd(Visit visit) const;
  void findEnd();
  void advance(std::size_t step);
  void standOn(std::size_t word, std::size_t step);
  void walkOn(std::size_t word);
  void reach(std::size_t word, std::size_t move, std::uint64_t bits, Cost price);
  void touch(std::size_t firstBit);
  void wipe(Front& front);

  static constexpr std::size_t kMargin = 64;
  const SweepInput& input_;
  const SweepGraph<Cost> graph_;
  const MoveSet& moves_;
  const BorderedGrid& grid_;
  Cost most_ = 0;
  const RouteBound* bound_ = nullptr;
  const CheapestStates* only_ = nullptr;
  Front now_, next_;
  MovedMaps free_;
  std::optional<MovedMaps> clear_;  ///< where steps are priced that are not
  std::vector<std::uint64_t> stack_, clearStack_;
  std::vector<CostLayer<Cost>> layers_;
  std::optional<SweepState> end_;
  bool leftOut_ = false;
};

template <class Cost>
Sweep<Cost>::Sweep(const SweepInput& input, const SweepMaps& maps)
    : input_(input), graph_(input, maps), moves_(*input.moves), grid_(maps.grid), free_(grid_, moves_) {
  for (Front* front : {&now_, &next_}) {
    front->stand.assign(grid_.bits() + 2 * kMargin, kNever<Cost>);
    front->walk = front->stand;
    front->standing.assign(grid_.allWords(), 0);
    front->walking = front->standing;
    front->touched.assign(grid_.allWords(), 0);
  }
  if (graph_.maps.clear) clear_.emplace(grid_, moves_);
  stack_.resize(static_cast<std::size_t>(moves_.depth()));
  clearStack_ = stack_;
}

template <class Cost>
void Sweep<Cost>::wipe(Front& front) {
  for (std::size_t word = 0; word < grid_.allWords(); ++word) {
    if (!front.touched[word]) continue;
    std::fill_n(lanes(front.stand, word * 64), 64, kNever<Cost>);
    std::fill_n(lanes(front.walk, word * 64), 64, kNever<Cost>);
    front.standing[word] = front.walking[word] = 0;
    front.touched[word] = 0;
  }
}

template <class Cost>
void Sweep<Cost>::begin() {
  wipe(now_);
  wipe(next_);
  layers_.clear();
  end_.reset();
  leftOut_ = false;
  for (const std::size_t cell : input_.starts) {
    const std::size_t bit = grid_.bitOf(cell);
    *lanes(now_.stand, bit) = 0;
    now_.touched[bit / 64] = 1;
  }
}

template <class Cost>
bool Sweep<Cost>::run(Cost most, const RouteBound* bound, const base::Cancel& cancel) {
  most_ = most;
  bound_ = bound;
  begin();
  for (std::size_t instant = 0;; ++instant) {
    if (cancel.fired()) return false;
    settle(instant);
    if (instant == graph_.last) break;
    advance(instant);
    wipe(now_);
    std::swap(now_, next_);
  }
  findEnd();
  return true;
}

template <class Cost>
bool Sweep<Cost>::runThrough(const CheapestStates& only, const base::Cancel& cancel) {
  only_ = &only;
  const bool done = run(static_cast<Cost>(only.cost()), nullptr, cancel);
  only_ = nullptr;
  return done;
}

/// Those who arrive stand, those who stand set off, and what is too dear is left out.
template <class Cost>
void Sweep<Cost>::settle(std::size_t instant) {
  CostLayer<Cost>& layer = layers_.emplace_back();
  layer.place.assign(grid_.allWords(), -1);
  for (std::size_t word = 0; word < grid_.allWords(); ++word)
    if (now_.touched[word]) settleWord(word, instant, layer);
  WEND_CHECK(layers_.size() == instant + 1);
}

/// Leaves out of 64 cells those not `among` them and what is too dear with the cost still to go, and tells the rest by
/// their bits.
template <class Cost>
std::uint64_t Sweep<Cost>::keep(Cost* costs, const float* toGo, std::uint64_t among) {
  std::uint64_t kept = 0;
  for (std::size_t i = 0; i < 64; ++i) {
    if (costs[i] == kNever<Cost>) continue;
    if (!((among >> i) & 1)) {
      costs[i] = kNever<Cost>;
      continue;
    }
    const Cost whole = costs[i] + (toGo ? static_cast<Cost>(toGo[i / RouteBound::kBlock]) : 0);
    if (whole <= most_ && whole < kNever<Cost>) {
      kept |= std::uint64_t{1} << i;
      continue;
    }
    costs[i] = kNever<Cost>;
    // From where no end can be reached, being allowed more is of no help.
    leftOut_ = leftOut_ || !toGo || toGo[i / RouteBound::kBlock] < kNever<float>;
  }
  return kept;
}

template <class Cost>
void Sweep<Cost>::settleWord(std::size_t word, std::size_t instant, CostLayer<Cost>& layer) {
  constexpr std::uint64_t kAll = ~std::uint64_t{0};
  const std::uint64_t mayStand = only_ ? only_->standing(instant)[word] : kAll;
  const std::uint64_t mayWalk = only_ ? only_->walking(instant)[word] : kAll;
  if ((mayStand | mayWalk) == 0) return;
  Cost *stand = lanes(now_.stand, word * 64), *walk = lanes(now_.walk, word * 64);
  for (std::size_t i = 0; i < 64; ++i) stand[i] = std::min(stand[i], walk[i] + graph_.standPrice(word * 64 + i));
  for (std::size_t i = 0; i < 64; ++i) walk[i] = std::min(walk[i], stand[i] + graph_.perWalk);
  const std::uint64_t standing = keep(stand, bound_ ? bound_->standing(instant, word) : nullptr, mayStand);
  const std::uint64_t walking = keep(walk, bound_ ? bound_->walking(instant, word) : nullptr, mayWalk);
  now_.standing[word] = standing;
  now_.walking[word] = walking;
  if ((standing | walking) == 0) return;
  layer.place[word] = static_cast<std::int32_t>(layer.costs.size());
  layer.costs.insert(layer.costs.end(), stand, stand + 64);
  layer.costs.insert(layer.costs.end(), walk, walk + 64);
}

/// visit(state, cost), in the order of the ends or of the cells.
template <class Cost>
template <class Visit>
void Sweep<Cost>::eachEnd(Visit visit) const {
  const auto look = [&](std::size_t cell) {
    const SweepState state{false, grid_.bitOf(cell), graph_.last};
    visit(state, costOf(layers_, state));
  };
  for (const std::size_t cell : input_.ends) look(cell);
  for (std::size_t cell = 0; input_.ends.empty() && cell < input_.grid.cells(); ++cell) look(cell);
}

template <class Cost>
void Sweep<Cost>::findEnd() {
  Cost least = kNever<Cost>;
  eachEnd([&](const SweepState& state, Cost cost) {
    if (cost < least) least = cost, end_ = state;
  });
}

template <class Cost>
CheapestStates Sweep<Cost>::cheapest() const {
  std::vector<SweepState> ends;
  const Cost least = costOf(layers_, *end_);
  eachEnd([&](const SweepState& state, Cost cost) {
    if (cost == least) ends.push_back(state);
  });
  return cheapestStates(ends, graph_, layers_);
}

template <class Cost>
void Sweep<Cost>::advance(std::size_t step) {
  free_.set(graph_.maps.move.at(step));
  if (clear_) clear_->set(graph_.maps.clear->at(step));
  for (std::size_t word = 0; word < grid_.allWords(); ++word) {
    if (!now_.touched[word]) continue;
    if (now_.standing[word] != 0) standOn(word, step);
    if (now_.walking[word] != 0) walkOn(word);
  }
}

template <class Cost>
void Sweep<Cost>::standOn(std::size_t word, std::size_t step) {
  const std::uint64_t bits = now_.standing[word] & graph_.maps.stand.at(step)[word];
  if (bits == 0) return;
  const std::uint64_t clear = graph_.maps.clear ? bits & graph_.maps.still().at(step)[word] : bits;
  Cost* to = lanes(next_.stand, word * 64);
  const Cost* from = lanes(now_.stand, word * 64);
  lower(to, from, Cost{0}, clear);
  if (bits != clear) lower(to, from, graph_.seenPrice, bits & ~clear);
  next_.touched[word] = 1;
}

template <class Cost>
void Sweep<Cost>::walkOn(std::size_t word) {
  walkTree(moves_, free_, word, now_.walking[word], stack_, [&](const MoveSet::Node& node, std::uint64_t free) {
    std::uint64_t clear = free;
    if (clear_) {
      const auto depth = static_cast<std::size_t>(node.depth);
      clear &= (depth > 0 ? clearStack_[depth - 1] : free) & clear_->beside(word, node.at);
      clearStack_[depth] = clear;
    }
    if (node.move < 0) return;
    const auto move = static_cast<std::size_t>(node.move);
    reach(word, move, clear, graph_.lengths[move]);
    if (free != clear) reach(word, move, free & ~clear, graph_.lengths[move] + graph_.seenPrice);
  });
}

template <class Cost>
void Sweep<Cost>::touch(std::size_t firstBit) {
  next_.touched[firstBit / 64] = 1;
  if (firstBit % 64 != 0 && firstBit / 64 + 1 < grid_.allWords()) next_.touched[firstBit / 64 + 1] = 1;
}

template <class Cost>
void Sweep<Cost>::reach(std::size_t word, std::size_t move, std::uint64_t bits, Cost price) {
  if (bits == 0) return;
  const Move& way = moves_.moves()[move];
  const std::size_t to = word * 64 + static_cast<std::size_t>(grid_.step(way.to));
  const Cost* from = lanes(now_.walk, word * 64);
  touch(to);
  if (way.brisk || graph_.prices.empty())
    return lower(lanes(way.brisk ? next_.walk : next_.stand, to), from, price, bits);
  for (std::uint64_t rest = bits; rest != 0; rest &= rest - 1) {
    const auto i = static_cast<std::size_t>(std::countr_zero(rest));
    Cost& stand = *lanes(next_.stand, to + i);
    stand = std::min(stand, from[i] + price + graph_.prices[to + i]);
  }
}

template <class Cost>
SweepOutcome Sweep<Cost>::outcome() const {
  SweepOutcome outcome;
  outcome.cost = static_cast<std::int64_t>(costOf(layers_, *end_));
  outcome.path = pathTo(*end_, graph_, layers_);
  return outcome;
}

RouteBound boundOf(const SweepInput& input, const SweepMaps& maps) {
  RouteBound::Input bound{maps.stand, maps.move, *input.moves, input.stand->steps(), {}, 0, input.grid.cell};
  for (const std::size_t cell : input.ends) bound.ends.push_back(maps.grid.bitOf(cell));
  bound.perWalk = static_cast<float>(input.perWalk);
  return RouteBound(maps.grid, bound);
}

SweepOutcome withoutPath(Reach reach) {
  WEND_CHECK(!reach.end);
  SweepOutcome outcome;
  outcome.furthest = reach.furthest;
  outcome.furthestCells = std::move(reach.cells);
  return outcome;
}

/// What a route costs more than the least bound is tried with this first, then with twice as much and so on.
constexpr float kFirstSlack = 2'000;

std::optional<SweepOutcome> sweepUnseen(const SweepInput& input, const base::Cancel& cancel) {
  const SweepMaps maps(input);
  if (cancel.fired()) return std::nullopt;
  Sweep<float> sweep(input, maps);
  if (input.only) {
    if (!sweep.runThrough(*input.only, cancel)) return std::nullopt;
    return sweep.end() ? sweep.outcome() : SweepOutcome{};
  }
  const RouteBound bound = boundOf(input, maps);
  float least = kNever<float>;
  for (const std::size_t cell : input.starts) {
    const std::size_t bit = maps.grid.bitOf(cell);
    least = std::min(least, bound.standing(0, bit / 64)[bit % 64 / RouteBound::kBlock]);
  }
  // Once the first try fails, whether there is a route at all is the cheaper question.
  std::optional<Reach> reach;
  bool leftOut = least < kNever<float>;
  for (float slack = kFirstSlack; leftOut; slack *= 2) {
    if (!sweep.run(least + slack, &bound, cancel)) return std::nullopt;
    if (sweep.end()) {
      SweepOutcome outcome = sweep.outcome();
      if (input.tellsCheapest) outcome.cheapest = std::make_shared<const CheapestStates>(sweep.cheapest());
      return outcome;
    }
    leftOut = sweep.leftOut();
    if (!leftOut || reach) continue;
    if (!(reach = reachOf(input, cancel))) return std::nullopt;
    leftOut = reach->end;
  }
  if (!reach && !(reach = reachOf(input, cancel))) return std::nullopt;
  return withoutPath(std::move(*reach));
}

std::optional<SweepOutcome> sweepSeen(const SweepInput& input, const base::Cancel& cancel) {
  const SweepMaps maps(input);
  Sweep<double> sweep(input, maps);
  if (!sweep.run(kNever<double>, nullptr, cancel)) return std::nullopt;
  if (sweep.end()) return sweep.outcome();
  auto reach = reachOf(input, cancel);
  return reach ? std::optional(withoutPath(std::move(*reach))) : std::nullopt;
}

}  // namespace

std::int64_t millimetres(double metres) {
  return std::llround(metres * 1000);
}

std::optional<SweepOutcome> sweep(const SweepInput& input, const base::Cancel& cancel) {
  WEND_CHECK(input.stand && input.move && input.moves && input.stand->cells() == input.grid.cells());
  WEND_CHECK(input.move->steps() == input.stand->steps() && !input.starts.empty());
  return input.clear ? sweepSeen(input, cancel) : sweepUnseen(input, cancel);
}

}  // namespace wend::crew
