#include "core/crew/route_sweep.h"

#include <algorithm>
#include <bit>
#include <cmath>

#include "core/base/check.h"
#include "core/crew/cost_lanes.h"
#include "core/crew/route_bound.h"
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
  /// Of the cheapest end, when the last run has one.
  std::optional<SweepState> end() const { return end_; }
  /// Whether a state was left out of the last run as too dear.
  bool leftOut() const { return leftOut_; }
  SweepOutcome outcome() const;
  void addFurthest(SweepOutcome& outcome) const;

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
  std::uint64_t keep(Cost* costs, const float* toGo);
  void findEnd();
  void advance(std::size_t step);
  void shiftMaps(std::size_t step);
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
  Front now_, next_;
  // For each number of columns away, the step's map moved so that a cell's bit is that of the cell so far east.
  std::vector<std::vector<std::uint64_t>> movedBy_, clearBy_;
  std::vector<std::uint64_t> stack_, clearStack_;
  std::vector<CostLayer<Cost>> layers_;
  std::optional<SweepState> end_;
  bool leftOut_ = false;
};

template <class Cost>
Sweep<Cost>::Sweep(const SweepInput& input, const SweepMaps& maps)
    : input_(input), graph_(input, maps), moves_(*input.moves), grid_(maps.grid) {
  for (Front* front : {&now_, &next_}) {
    front->stand.assign(grid_.bits() + 2 * kMargin, kNever<Cost>);
    front->walk = front->stand;
    front->standing.assign(grid_.allWords(), 0);
    front->walking = front->standing;
    front->touched.assign(grid_.allWords(), 0);
  }
  const auto columns = static_cast<std::size_t>(2 * moves_.reach() + 1);
  movedBy_.assign(columns, std::vector<std::uint64_t>(grid_.allWords()));
  if (graph_.maps.clear) clearBy_ = movedBy_;
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

/// Those who arrive stand, those who stand set off, and what is too dear is left out.
template <class Cost>
void Sweep<Cost>::settle(std::size_t instant) {
  CostLayer<Cost>& layer = layers_.emplace_back();
  layer.place.assign(grid_.allWords(), -1);
  for (std::size_t word = 0; word < grid_.allWords(); ++word)
    if (now_.touched[word]) settleWord(word, instant, layer);
  WEND_CHECK(layers_.size() == instant + 1);
}

/// Leaves out of 64 cells what is too dear with the cost still to go, and tells the rest by their bits.
template <class Cost>
std::uint64_t Sweep<Cost>::keep(Cost* costs, const float* toGo) {
  std::uint64_t kept = 0;
  for (std::size_t i = 0; i < 64; ++i) {
    if (costs[i] == kNever<Cost>) continue;
    if (costs[i] + (toGo ? static_cast<Cost>(toGo[i / RouteBound::kBlock]) : 0) <= most_) {
      kept |= std::uint64_t{1} << i;
      continue;
    }
    costs[i] = kNever<Cost>;
    leftOut_ = true;
  }
  return kept;
}

template <class Cost>
void Sweep<Cost>::settleWord(std::size_t word, std::size_t instant, CostLayer<Cost>& layer) {
  Cost *stand = lanes(now_.stand, word * 64), *walk = lanes(now_.walk, word * 64);
  for (std::size_t i = 0; i < 64; ++i) stand[i] = std::min(stand[i], walk[i] + graph_.standPrice(word * 64 + i));
  for (std::size_t i = 0; i < 64; ++i) walk[i] = std::min(walk[i], stand[i] + graph_.perWalk);
  const std::uint64_t standing = keep(stand, bound_ ? bound_->standing(instant, word) : nullptr);
  const std::uint64_t walking = keep(walk, bound_ ? bound_->walking(instant, word) : nullptr);
  now_.standing[word] = standing;
  now_.walking[word] = walking;
  if ((standing | walking) == 0) return;
  layer.place[word] = static_cast<std::int32_t>(layer.costs.size());
  layer.costs.insert(layer.costs.end(), stand, stand + 64);
  layer.costs.insert(layer.costs.end(), walk, walk + 64);
}

template <class Cost>
void Sweep<Cost>::findEnd() {
  Cost least = kNever<Cost>;
  const auto look = [&](std::size_t cell) {
    const SweepState state{false, grid_.bitOf(cell), graph_.last};
    const Cost cost = costOf(layers_, state);
    if (cost < least) least = cost, end_ = state;
  };
  for (const std::size_t cell : input_.ends) look(cell);
  for (std::size_t cell = 0; input_.ends.empty() && cell < input_.grid.cells(); ++cell) look(cell);
}

template <class Cost>
void Sweep<Cost>::shiftMaps(std::size_t step) {
  const int reach = moves_.reach();
  for (int by = -reach; by <= reach; ++by) {
    const auto slot = static_cast<std::size_t>(by + reach);
    const auto shift = static_cast<unsigned>(std::abs(by));
    for (const bool clear : {false, true}) {
      if (clear && !graph_.maps.clear) continue;
      const std::uint64_t* map = (clear ? *graph_.maps.clear : graph_.maps.move).at(step);
      std::uint64_t* moved = (clear ? clearBy_ : movedBy_)[slot].data();
      // A row's neighbours bring nothing in: its first and last bits are border.
      const std::size_t words = grid_.allWords();
      for (std::size_t w = 0; w < words; ++w) {
        const std::uint64_t next = by > 0 && w + 1 < words ? map[w + 1] << (64 - shift) : 0;
        const std::uint64_t past = by < 0 && w > 0 ? map[w - 1] >> (64 - shift) : 0;
        moved[w] = by == 0 ? map[w] : by > 0 ? (map[w] >> shift) | next : (map[w] << shift) | past;
      }
    }
  }
}

template <class Cost>
void Sweep<Cost>::advance(std::size_t step) {
  shiftMaps(step);
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

/// Through the tree of moves: at each node, those of 64 cells from where everything passed so far is free.
template <class Cost>
void Sweep<Cost>::walkOn(std::size_t word) {
  const auto& tree = moves_.tree();
  const auto reachColumns = static_cast<std::size_t>(moves_.reach());
  for (std::size_t i = 0; i < tree.size();) {
    const MoveSet::Node& node = tree[i];
    const auto depth = static_cast<std::size_t>(node.depth);
    const std::size_t column = reachColumns + static_cast<std::size_t>(node.at.dx);
    const std::size_t there = word + static_cast<std::size_t>(node.at.dy) * grid_.words();
    const std::uint64_t free = (depth > 0 ? stack_[depth - 1] : now_.walking[word]) & movedBy_[column][there];
    stack_[depth] = free;
    if (free == 0) {
      i = node.after;
      continue;
    }
    std::uint64_t clear = free;
    if (graph_.maps.clear) {
      clear &= (depth > 0 ? clearStack_[depth - 1] : free) & clearBy_[column][there];
      clearStack_[depth] = clear;
    }
    if (node.move >= 0) {
      const auto move = static_cast<std::size_t>(node.move);
      reach(word, move, clear, graph_.lengths[move]);
      if (free != clear) reach(word, move, free & ~clear, graph_.lengths[move] + graph_.seenPrice);
    }
    ++i;
  }
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
void Sweep<Cost>::addFurthest(SweepOutcome& outcome) const {
  const auto hasStates = [](const CostLayer<Cost>& layer) { return !layer.costs.empty(); };
  outcome.furthest = layers_.size() - 1;
  while (!hasStates(layers_[outcome.furthest])) --outcome.furthest;
  for (std::size_t cell = 0; cell < input_.grid.cells(); ++cell) {
    const std::size_t bit = grid_.bitOf(cell);
    for (const bool walking : {false, true}) {
      if (costOf(layers_, {walking, bit, outcome.furthest}) == kNever<Cost>) continue;
      outcome.furthestCells.push_back(cell);
      break;
    }
  }
}

template <class Cost>
SweepOutcome Sweep<Cost>::outcome() const {
  SweepOutcome outcome;
  outcome.cost = static_cast<std::int64_t>(costOf(layers_, *end_));
  outcome.path = pathTo(*end_, graph_, layers_);
  return outcome;
}

std::shared_ptr<const RouteBound> boundOf(const SweepInput& input, const SweepMaps& maps) {
  RouteBound::Input bound{maps.stand, maps.move, *input.moves, input.stand->steps(), {}, 0, input.grid.cell};
  for (const std::size_t cell : input.ends) bound.ends.push_back(maps.grid.bitOf(cell));
  bound.perWalk = static_cast<float>(input.perWalk);
  return std::make_shared<const RouteBound>(maps.grid, bound);
}

template <class Cost>
std::optional<SweepOutcome> furthestOf(Sweep<Cost>& sweep, const base::Cancel& cancel) {
  if (!sweep.run(kNever<Cost>, nullptr, cancel)) return std::nullopt;
  SweepOutcome outcome;
  if (sweep.end()) return sweep.outcome();
  sweep.addFurthest(outcome);
  return outcome;
}

/// What a route costs more than the least bound is tried with this first, then with twice as much and so on.
constexpr float kFirstSlack = 2'000;

std::optional<SweepOutcome> sweepUnseen(const SweepInput& input, const base::Cancel& cancel) {
  const SweepMaps maps(input);
  if (cancel.fired()) return std::nullopt;
  const auto bound = input.bound ? input.bound : boundOf(input, maps);
  Sweep<float> sweep(input, maps);
  float least = kNever<float>;
  for (const std::size_t cell : input.starts) {
    const std::size_t bit = maps.grid.bitOf(cell);
    least = std::min(least, bound->standing(0, bit / 64)[bit % 64 / RouteBound::kBlock]);
  }
  bool leftOut = least < kNever<float>;
  for (float slack = kFirstSlack; leftOut; slack *= 2) {
    const float most = input.most ? static_cast<float>(*input.most) : least + slack;
    if (!sweep.run(most, &*bound, cancel)) return std::nullopt;
    if (sweep.end()) {
      SweepOutcome outcome = sweep.outcome();
      outcome.bound = bound;
      return outcome;
    }
    leftOut = sweep.leftOut() && !input.most;
  }
  if (input.most) return SweepOutcome{};
  return furthestOf(sweep, cancel);
}

std::optional<SweepOutcome> sweepSeen(const SweepInput& input, const base::Cancel& cancel) {
  const SweepMaps maps(input);
  Sweep<double> sweep(input, maps);
  return furthestOf(sweep, cancel);
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
