#include "core/crew/route_sweep.h"

#include <algorithm>
#include <bit>
#include <cmath>

#include "core/base/check.h"
#include "core/crew/cost_lanes.h"
#include "core/crew/route_bound.h"
#include "core/crew/step_maps.h"

namespace wend::crew {
namespace {

/// The costs of one instant in words of 64 cells, those only in which a state can be reached.
template <class Cost>
struct Layer {
  std::vector<std::int32_t> place;  ///< of each word in `costs`, or -1
  std::vector<Cost> costs;          ///< 64 of standing and 64 of walking for each word kept
};

/// to[i] = min(to[i], from[i] + price) for those of 64 cells whose bit is in `bits`.
template <class Cost>
void lower(Cost* to, const Cost* from, Cost price, std::uint64_t bits) {
  for (std::size_t i = 0; bits != 0; i += 8, bits >>= 8)
    if (const auto eight = static_cast<unsigned>(bits & 0xff)) lowerSome(to + i, from + i, price, eight);
}

struct State {
  bool walking;
  std::size_t bit, instant;
};

template <class Cost>
class Sweep {
 public:
  Sweep(const SweepInput& input, const BorderedGrid& grid, const StepMaps& stand, const StepMaps& move,
        const StepMaps* clear);
  /// False when cancelled.
  bool run(Cost most, const RouteBound* bound, const base::Cancel& cancel);
  /// Of the cheapest end, when the last run has one.
  std::optional<State> end() const { return end_; }
  /// Whether a state was left out of the last run as too dear.
  bool leftOut() const { return leftOut_; }
  Cost label(const State& state) const;
  std::vector<RouteState> path() const;
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
  Cost standPrice(std::size_t bit) const { return prices_.empty() ? 0 : prices_[bit]; }

  void begin();
  void settle(std::size_t instant);
  void settleWord(std::size_t word, std::size_t instant, Layer<Cost>& layer);
  std::uint64_t keep(Cost* costs, const float* toGo);
  void findEnd();
  void advance(std::size_t step);
  void shiftMaps(std::size_t step);
  void standOn(std::size_t word, std::size_t step);
  void walkOn(std::size_t word);
  void reach(std::size_t word, std::size_t move, std::uint64_t bits, Cost price);
  void touch(std::size_t firstBit);
  void wipe(Front& front);

  bool isReachedFrom(const State& from, Cost price, Cost& cost) const;
  std::optional<State> beforeByMove(const State& state, Cost& cost, std::size_t move) const;
  std::optional<State> beforeByMoves(const State& state, Cost& cost, bool brisk, std::size_t& lastMove) const;
  State before(const State& state, Cost& cost, std::size_t& lastMove) const;

  static constexpr std::size_t kMargin = 64;
  const SweepInput& input_;
  const MoveSet& moves_;
  const BorderedGrid& grid_;
  const StepMaps &stand_, &move_;
  const StepMaps* clear_;
  std::size_t last_;
  Cost perWalk_, seenPrice_, most_ = 0;
  const RouteBound* bound_ = nullptr;
  std::vector<Cost> lengths_, prices_;
  Front now_, next_;
  // For each number of columns away, the step's map moved so that a cell's bit is that of the cell so far east.
  std::vector<std::vector<std::uint64_t>> movedBy_, clearBy_;
  std::vector<std::uint64_t> stack_, clearStack_;
  std::vector<Layer<Cost>> layers_;
  std::optional<State> end_;
  bool leftOut_ = false;
};

template <class Cost>
Sweep<Cost>::Sweep(const SweepInput& input, const BorderedGrid& grid, const StepMaps& stand, const StepMaps& move,
                   const StepMaps* clear)
    : input_(input),
      moves_(*input.moves),
      grid_(grid),
      stand_(stand),
      move_(move),
      clear_(clear),
      last_(input.stand->steps()),
      perWalk_(static_cast<Cost>(input.perWalk)),
      seenPrice_(static_cast<Cost>(input.seenPrice)) {
  for (const Move& move_set : moves_.moves())
    lengths_.push_back(static_cast<Cost>(millimetres(move_set.cells * input.grid.cell)));
  if (!input.standPrice.empty()) prices_.assign(grid.bits(), 0);
  for (std::size_t i = 0; i < input.standPrice.size(); ++i)
    prices_[grid.bitOf(i)] = static_cast<Cost>(input.standPrice[i]);
  for (Front* front : {&now_, &next_}) {
    front->stand.assign(grid.bits() + 2 * kMargin, kNever<Cost>);
    front->walk = front->stand;
    front->standing.assign(grid.allWords(), 0);
    front->walking = front->standing;
    front->touched.assign(grid.allWords(), 0);
  }
  const auto columns = static_cast<std::size_t>(2 * moves_.reach() + 1);
  movedBy_.assign(columns, std::vector<std::uint64_t>(grid.allWords()));
  if (clear_) clearBy_ = movedBy_;
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
    if (instant == last_) break;
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
  Layer<Cost>& layer = layers_.emplace_back();
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
void Sweep<Cost>::settleWord(std::size_t word, std::size_t instant, Layer<Cost>& layer) {
  Cost *stand = lanes(now_.stand, word * 64), *walk = lanes(now_.walk, word * 64);
  for (std::size_t i = 0; i < 64; ++i) stand[i] = std::min(stand[i], walk[i] + standPrice(word * 64 + i));
  for (std::size_t i = 0; i < 64; ++i) walk[i] = std::min(walk[i], stand[i] + perWalk_);
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
    const State state{false, grid_.bitOf(cell), last_};
    const Cost cost = label(state);
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
      if (clear && !clear_) continue;
      const std::uint64_t* map = (clear ? *clear_ : move_).at(step);
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
  const std::uint64_t bits = now_.standing[word] & stand_.at(step)[word];
  if (bits == 0) return;
  const std::uint64_t clear = clear_ ? bits & clear_->at(step)[word] : bits;
  Cost* to = lanes(next_.stand, word * 64);
  const Cost* from = lanes(now_.stand, word * 64);
  lower(to, from, Cost{0}, clear);
  if (bits != clear) lower(to, from, seenPrice_, bits & ~clear);
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
    if (clear_) {
      clear &= (depth > 0 ? clearStack_[depth - 1] : free) & clearBy_[column][there];
      clearStack_[depth] = clear;
    }
    if (node.move >= 0) {
      const auto move = static_cast<std::size_t>(node.move);
      reach(word, move, clear, lengths_[move]);
      if (free != clear) reach(word, move, free & ~clear, lengths_[move] + seenPrice_);
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
  if (way.brisk || prices_.empty()) return lower(lanes(way.brisk ? next_.walk : next_.stand, to), from, price, bits);
  for (std::uint64_t rest = bits; rest != 0; rest &= rest - 1) {
    const auto i = static_cast<std::size_t>(std::countr_zero(rest));
    Cost& stand = *lanes(next_.stand, to + i);
    stand = std::min(stand, from[i] + price + prices_[to + i]);
  }
}

template <class Cost>
Cost Sweep<Cost>::label(const State& state) const {
  const Layer<Cost>& layer = layers_[state.instant];
  const std::int32_t place = layer.place[state.bit / 64];
  if (place < 0) return kNever<Cost>;
  return layer.costs[static_cast<std::size_t>(place) + (state.walking ? 64 : 0) + state.bit % 64];
}

template <class Cost>
bool Sweep<Cost>::isReachedFrom(const State& from, Cost price, Cost& cost) const {
  if (label(from) != cost - price) return false;
  cost -= price;
  return true;
}

template <class Cost>
std::optional<State> Sweep<Cost>::beforeByMove(const State& state, Cost& cost, std::size_t move) const {
  const CellOffset to = moves_.moves()[move].to;
  const State from{true, state.bit - static_cast<std::size_t>(grid_.step(to)), state.instant - 1};
  bool clear = true;
  for (const CellOffset o : cellsPassed(to)) {
    const std::size_t bit = from.bit + static_cast<std::size_t>(grid_.step(o));
    if (!move_.at(from.instant, bit)) return std::nullopt;
    clear = clear && (!clear_ || clear_->at(from.instant, bit));
  }
  Cost price = lengths_[move] + (clear ? 0 : seenPrice_);
  if (!state.walking) price += standPrice(state.bit);
  if (!isReachedFrom(from, price, cost)) return std::nullopt;
  return from;
}

template <class Cost>
std::optional<State> Sweep<Cost>::beforeByMoves(const State& state, Cost& cost, bool brisk,
                                                std::size_t& lastMove) const {
  if (state.instant == 0) return std::nullopt;
  const std::size_t count = moves_.moves().size();
  if (brisk && lastMove < count)
    if (const auto from = beforeByMove(state, cost, lastMove)) return from;
  for (std::size_t move = 0; move < count; ++move) {
    if (moves_.moves()[move].brisk != brisk) continue;
    if (const auto from = beforeByMove(state, cost, move)) {
      lastMove = brisk ? move : count;
      return from;
    }
  }
  return std::nullopt;
}

/// A state one cheapest way to this one comes from: standing on before walking, and straight on before turning.
template <class Cost>
State Sweep<Cost>::before(const State& state, Cost& cost, std::size_t& lastMove) const {
  if (!state.walking) {
    if (state.instant > 0 && stand_.at(state.instant - 1, state.bit)) {
      const State stood{false, state.bit, state.instant - 1};
      const bool clear = !clear_ || clear_->at(stood.instant, state.bit);
      if (isReachedFrom(stood, clear ? 0 : seenPrice_, cost)) return stood;
    }
    lastMove = moves_.moves().size();
    const State arrived{true, state.bit, state.instant};
    if (isReachedFrom(arrived, standPrice(state.bit), cost)) return arrived;
    if (const auto from = beforeByMoves(state, cost, false, lastMove)) return *from;
  } else {
    if (const auto from = beforeByMoves(state, cost, true, lastMove)) return *from;
    const State stood{false, state.bit, state.instant};
    if (isReachedFrom(stood, perWalk_, cost)) return stood;
  }
  const bool hasWayToIt = false;
  WEND_CHECK(hasWayToIt);
  return state;
}

template <class Cost>
std::vector<RouteState> Sweep<Cost>::path() const {
  std::vector<RouteState> states;
  Cost cost = label(*end_);
  std::size_t lastMove = moves_.moves().size();
  for (State state = *end_;; state = before(state, cost, lastMove)) {
    states.push_back({state.walking, grid_.cellOf(state.bit), state.instant});
    if (!state.walking && state.instant == 0) break;
  }
  std::reverse(states.begin(), states.end());
  return states;
}

template <class Cost>
void Sweep<Cost>::addFurthest(SweepOutcome& outcome) const {
  const auto hasStates = [](const Layer<Cost>& layer) { return !layer.costs.empty(); };
  outcome.furthest = layers_.size() - 1;
  while (!hasStates(layers_[outcome.furthest])) --outcome.furthest;
  for (std::size_t cell = 0; cell < input_.grid.cells(); ++cell) {
    const std::size_t bit = grid_.bitOf(cell);
    for (const bool walking : {false, true}) {
      if (label({walking, bit, outcome.furthest}) == kNever<Cost>) continue;
      outcome.furthestCells.push_back(cell);
      break;
    }
  }
}

/// What the input says, turned round step by step.
struct Maps {
  BorderedGrid grid;
  StepMaps stand, move;
  std::optional<StepMaps> clear;

  explicit Maps(const SweepInput& input)
      : grid(input.grid, input.moves->reach()), stand(*input.stand, grid), move(*input.move, grid) {
    if (input.clear) clear.emplace(*input.clear, grid);
  }

  std::shared_ptr<const RouteBound> boundOf(const SweepInput& input) const {
    RouteBound::Input bound{stand, move, *input.moves, input.stand->steps(), {}, 0, input.grid.cell};
    for (const std::size_t cell : input.ends) bound.ends.push_back(grid.bitOf(cell));
    bound.perWalk = static_cast<float>(input.perWalk);
    return std::make_shared<const RouteBound>(grid, bound);
  }
};

template <class Cost>
SweepOutcome outcomeOf(const Sweep<Cost>& sweep) {
  SweepOutcome outcome;
  outcome.cost = static_cast<std::int64_t>(sweep.label(*sweep.end()));
  outcome.path = sweep.path();
  return outcome;
}

template <class Cost>
std::optional<SweepOutcome> furthestOf(Sweep<Cost>& sweep, const base::Cancel& cancel) {
  if (!sweep.run(kNever<Cost>, nullptr, cancel)) return std::nullopt;
  SweepOutcome outcome;
  if (sweep.end()) return outcomeOf(sweep);
  sweep.addFurthest(outcome);
  return outcome;
}

/// What a route costs more than the least bound is tried with this first, then with twice as much and so on.
constexpr float kFirstSlack = 2'000;

std::optional<SweepOutcome> sweepUnseen(const SweepInput& input, const base::Cancel& cancel) {
  const Maps maps(input);
  if (cancel.fired()) return std::nullopt;
  const auto bound = input.bound ? input.bound : maps.boundOf(input);
  Sweep<float> sweep(input, maps.grid, maps.stand, maps.move, nullptr);
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
      SweepOutcome outcome = outcomeOf(sweep);
      outcome.bound = bound;
      return outcome;
    }
    leftOut = sweep.leftOut() && !input.most;
  }
  if (input.most) return SweepOutcome{};
  return furthestOf(sweep, cancel);
}

std::optional<SweepOutcome> sweepSeen(const SweepInput& input, const base::Cancel& cancel) {
  const Maps maps(input);
  Sweep<double> sweep(input, maps.grid, maps.stand, maps.move, &*maps.clear);
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
