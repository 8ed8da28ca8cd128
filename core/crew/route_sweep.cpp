#include "core/crew/route_sweep.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"
#include "core/crew/instant_events.h"

namespace wend::crew {
namespace {

enum Mode : std::uint8_t { standing = 0, walking = 1 };
constexpr std::size_t kBits = 128;
constexpr std::size_t kPollEvery = 256;

/// The grid with a border that no move leaves.
struct PaddedGrid {
  std::size_t border, nx, ny;
  std::size_t wide() const { return nx + 2 * border; }
  std::size_t cells() const { return wide() * (ny + 2 * border); }
  std::size_t of(std::size_t cell) const { return (cell / nx + border) * wide() + cell % nx + border; }
  std::size_t plain(std::size_t padded) const { return (padded / wide() - border) * nx + padded % wide() - border; }
  std::ptrdiff_t step(CellOffset o) const { return o.dy * static_cast<std::ptrdiff_t>(wide()) + o.dx; }
};

/// Instants of every cell, in blocks.
class InstantRows {
 public:
  InstantRows() = default;
  InstantRows(std::size_t cells, std::size_t blocks) : blocks_(blocks), bits_(cells * blocks, InstantBlock{}) {}
  bool empty() const { return bits_.empty(); }
  InstantBlock* of(std::size_t cell) { return bits_.data() + cell * blocks_; }
  const InstantBlock* of(std::size_t cell) const { return bits_.data() + cell * blocks_; }
  bool at(std::size_t cell, std::size_t bit) const {
    return (of(cell)[bit / kBits].word[(bit / 64) % 2] >> (bit % 64)) & 1;
  }
  /// Step k of a cell becomes bit k + shift, shift 0 or 1.
  void read(const CellTimes& times, const PaddedGrid& grid, int shift);

 private:
  std::size_t blocks_ = 0;
  std::vector<InstantBlock> bits_;
};

void InstantRows::read(const CellTimes& times, const PaddedGrid& grid, int shift) {
  for (std::size_t cell = 0; cell < times.cells(); ++cell) {
    InstantBlock* row = of(grid.of(cell));
    std::uint64_t carried = 0;
    for (std::size_t w = 0; w < blocks_ * 2; ++w) {
      const std::uint64_t word = w < times.words() ? times.of(cell)[w] : 0;
      row[w / 2].word[w % 2] = shift ? (word << 1) | carried : word;
      carried = word >> 63;
    }
  }
}

/// Bits one instant later, from one range of blocks into another that starts with it and may be a block longer.
void shiftOne(const InstantBlock* bits, std::size_t count, InstantBlock* out, std::size_t outCount) {
  std::uint64_t carried = 0;
  for (std::size_t b = 0; b < outCount; ++b) {
    const std::uint64_t low = b < count ? bits[b].word[0] : 0, high = b < count ? bits[b].word[1] : 0;
    out[b].word[0] = (low << 1) | carried;
    out[b].word[1] = (high << 1) | (low >> 63);
    carried = high >> 63;
  }
}

/// What standing makes of the instants at which it begins: the carries of an addition run through the steps that may
/// be stood in. `steps` and `out` from the same block on.
void flood(InstantBlock* bits, const InstantBlock* steps, std::size_t count) {
  std::uint64_t carry = 0;
  for (std::size_t w = 0; w < count * 2; ++w) {
    const std::uint64_t a = steps[w / 2].word[w % 2], b = a & bits[w / 2].word[w % 2];
    const std::uint64_t half = a + b, sum = half + carry;
    const std::uint64_t overflow = (half < a) | (sum < half);
    bits[w / 2].word[w % 2] |= sum ^ a ^ b;
    carry = overflow;
  }
}

struct State {
  std::uint8_t mode;
  std::size_t cell, instant;  // of the padded grid
};

class Sweep {
 public:
  explicit Sweep(const SweepInput& input);
  std::optional<SweepOutcome> outcome(const base::Cancel& cancel);

 private:
  bool priced() const { return input_.clear != nullptr; }
  std::int64_t standPrice(std::size_t cell) const { return prices_.empty() ? 0 : prices_[cell]; }

  void offer(std::uint8_t mode, std::size_t cell, std::int64_t cost, const InstantBlock* bits, BlockRange range);
  void offerStanding(std::size_t cell, std::int64_t cost, const InstantBlock* bits, BlockRange range);
  bool settle(std::int32_t index);
  void fromStanding(const InstantEvent& event);
  void fromWalking(const InstantEvent& event);
  void standExposed(const InstantEvent& event);
  template <bool isPriced>
  void walk(std::size_t cell, std::int64_t cost, BlockRange range);
  void arrive(const Move& move, std::size_t cell, std::int64_t cost, const InstantBlock* bits, BlockRange range);

  std::optional<std::int64_t> label(const State& state) const;
  State before(const State& state, std::int64_t& cost, int& lastMove) const;
  bool isBefore(const State& state, std::int64_t price, std::int64_t& cost) const;
  std::optional<State> beforeByMove(const State& state, std::int64_t& cost, bool brisk, int& lastMove) const;
  std::optional<State> beforeByMove(const State& state, std::int64_t& cost, int move) const;
  std::vector<RouteState> path(State end) const;
  void addFurthest(SweepOutcome& outcome) const;

  const SweepInput& input_;
  const MoveSet& moves_;
  PaddedGrid grid_;
  std::size_t last_, blocks_;
  std::vector<std::int64_t> lengths_, prices_;
  std::vector<std::ptrdiff_t> nodeSteps_;
  std::vector<std::uint8_t> isEnd_;
  // Steps stood in at bit k, steps moved in at bit k + 1 where the move arrives.
  InstantRows stand_, move_, standClear_, moveClear_;
  InstantRows settled_[2], offered_[2];
  // Every instant ever offered at up to this cost is in `offered_`.
  std::vector<std::int64_t> offeredCost_[2];
  std::vector<std::int32_t> list_[2];
  InstantQueue queue_;
  std::vector<InstantBlock> stack_, clearStack_, scratch_, copy_;
  std::optional<State> end_;
};

std::int64_t dearestEdge(const SweepInput& input) {
  std::int64_t price = input.perWalk;
  for (const std::int64_t stand : input.standPrice) price = std::max(price, stand);
  return price + input.seenPrice + millimetres(input.moves->radius() * input.grid.cell) + 1;
}

Sweep::Sweep(const SweepInput& input)
    : input_(input),
      moves_(*input.moves),
      grid_{static_cast<std::size_t>(moves_.reach()), static_cast<std::size_t>(input.grid.nx),
            static_cast<std::size_t>(input.grid.ny)},
      last_(input.stand->steps()),
      blocks_(last_ / kBits + 1),
      stand_(grid_.cells(), blocks_),
      move_(stand_),
      queue_(dearestEdge(input)) {
  stand_.read(*input.stand, grid_, 0);
  move_.read(*input.move, grid_, 1);
  if (priced()) {
    CellTimes clear = *input.stand;
    clear.keepOnly(*input.clear);
    (standClear_ = InstantRows(grid_.cells(), blocks_)).read(clear, grid_, 0);
    clear = *input.move;
    clear.keepOnly(*input.clear);
    (moveClear_ = InstantRows(grid_.cells(), blocks_)).read(clear, grid_, 1);
  }
  for (const Move& move : moves_.moves()) lengths_.push_back(millimetres(move.cells * input.grid.cell));
  for (const MoveSet::Node& node : moves_.tree()) nodeSteps_.push_back(grid_.step(node.at));
  isEnd_.assign(grid_.cells(), input.ends.empty());
  for (const std::size_t cell : input.ends) isEnd_[grid_.of(cell)] = 1;
  if (!input.standPrice.empty()) prices_.assign(grid_.cells(), 0);
  for (std::size_t i = 0; i < input.standPrice.size(); ++i) prices_[grid_.of(i)] = input.standPrice[i];
  for (const Mode mode : {standing, walking}) {
    settled_[mode] = offered_[mode] = InstantRows(grid_.cells(), blocks_);
    offeredCost_[mode].assign(grid_.cells(), 0);
    list_[mode].assign(grid_.cells(), -1);
  }
  stack_.resize(static_cast<std::size_t>(moves_.depth()) * blocks_);
  if (priced()) clearStack_ = stack_;
  scratch_.resize(blocks_);
}

/// Queues what the cell has not been offered at this cost or a lower one.
void Sweep::offer(std::uint8_t mode, std::size_t cell, std::int64_t cost, const InstantBlock* bits, BlockRange range) {
  if (cost > input_.most) return;
  const bool dearest = cost >= offeredCost_[mode][cell];
  const InstantBlock* known = (dearest ? offered_ : settled_)[mode].of(cell);
  while (range.from < range.until && !InstantBlock{bits->word & ~known[range.from].word}.any()) ++range.from, ++bits;
  if (range.from == range.until) return;
  InstantBlock* fresh = queue_.room(range.until - range.from);
  InstantBlock* offered = offered_[mode].of(cell);
  for (std::size_t b = range.from; b < range.until; ++b) {
    fresh[b - range.from].word = bits[b - range.from].word & ~known[b].word;
    offered[b].word |= fresh[b - range.from].word;
  }
  while (!fresh[range.until - range.from - 1].any()) --range.until;
  if (dearest) offeredCost_[mode][cell] = cost;
  queue_.push(cost, static_cast<std::uint32_t>(cell), mode, range);
}

void Sweep::offerStanding(std::size_t cell, std::int64_t cost, const InstantBlock* bits, BlockRange range) {
  for (std::size_t b = range.from; b < blocks_; ++b)
    scratch_[b] = b < range.until ? bits[b - range.from] : InstantBlock{};
  flood(&scratch_[range.from], (priced() ? standClear_ : stand_).of(cell) + range.from, blocks_ - range.from);
  offer(standing, cell, cost, &scratch_[range.from], {range.from, blocks_});
}

/// Standing on where one is seen: a step at a time, each at its price.
void Sweep::standExposed(const InstantEvent& event) {
  const InstantBlock *bits = queue_.bits(event), *all = stand_.of(event.cell), *clear = standClear_.of(event.cell);
  const std::size_t count = event.range().until - event.range().from;
  const std::size_t outCount = std::min(count + 1, blocks_ - event.from);
  std::vector<InstantBlock> exposed(bits, bits + count), later(outCount);
  for (std::size_t b = 0; b < count; ++b) exposed[b].word &= all[event.from + b].word & ~clear[event.from + b].word;
  shiftOne(exposed.data(), count, later.data(), outCount);
  offerStanding(event.cell, event.cost + input_.seenPrice, later.data(), {event.from, event.from + outCount});
}

void Sweep::fromStanding(const InstantEvent& event) {
  if (isEnd_[event.cell] && settled_[standing].at(event.cell, last_)) {
    end_ = State{standing, event.cell, last_};
    return;
  }
  if (priced()) standExposed(event);
  copy_.assign(queue_.bits(event), queue_.bits(event) + (event.range().until - event.range().from));
  offer(walking, event.cell, event.cost + input_.perWalk, copy_.data(), event.range());
}

void Sweep::fromWalking(const InstantEvent& event) {
  const std::size_t count = event.range().until - event.range().from;
  const std::size_t outCount = std::min(count + 1, blocks_ - event.from);
  shiftOne(queue_.bits(event), count, stack_.data(), outCount);
  copy_.assign(queue_.bits(event), queue_.bits(event) + count);
  offerStanding(event.cell, event.cost + standPrice(event.cell), copy_.data(), event.range());
  if (priced()) {
    std::copy_n(stack_.begin(), outCount, clearStack_.begin());
    walk<true>(event.cell, event.cost, {event.from, event.from + outCount});
  } else {
    walk<false>(event.cell, event.cost, {event.from, event.from + outCount});
  }
}

/// Through the tree of moves, from the instants at the bottom of the stack: below each node lie the instants at which
/// everything up to it is free.
template <bool isPriced>
void Sweep::walk(std::size_t cell, std::int64_t cost, BlockRange range) {
  const auto& tree = moves_.tree();
  const std::size_t count = range.until - range.from;
  for (std::size_t i = 0; i < tree.size();) {
    const auto depth = static_cast<std::size_t>(tree[i].depth);
    const std::size_t at = cell + static_cast<std::size_t>(nodeSteps_[i]);
    const InstantBlock* free = move_.of(at) + range.from;
    const InstantBlock* above = &stack_[(depth > 0 ? depth - 1 : 0) * count];
    InstantBlock* here = &stack_[depth * count];
    InstantBlock any{};
    for (std::size_t b = 0; b < count; ++b) any.word |= here[b].word = above[b].word & free[b].word;
    if (!any.any()) {
      i = tree[i].after;
      continue;
    }
    if constexpr (isPriced) {
      const InstantBlock* clear = moveClear_.of(at) + range.from;
      const InstantBlock* clearAbove = &clearStack_[(depth > 0 ? depth - 1 : 0) * count];
      for (std::size_t b = 0; b < count; ++b) clearStack_[depth * count + b].word = clearAbove[b].word & clear[b].word;
    }
    if (tree[i].move >= 0) {
      const auto move = static_cast<std::size_t>(tree[i].move);
      if constexpr (isPriced)
        arrive(moves_.moves()[move], at, cost + lengths_[move], &clearStack_[depth * count], range);
      arrive(moves_.moves()[move], at, cost + lengths_[move] + (isPriced ? input_.seenPrice : 0), here, range);
    }
    ++i;
  }
}

void Sweep::arrive(const Move& move, std::size_t cell, std::int64_t cost, const InstantBlock* bits, BlockRange range) {
  if (move.brisk)
    offer(walking, cell, cost, bits, range);
  else
    offerStanding(cell, cost + standPrice(cell), bits, range);
}

/// Keeps what is new of the event and goes on from it. False when the end is reached.
bool Sweep::settle(std::int32_t index) {
  InstantEvent& event = queue_.event(index);
  InstantBlock *bits = queue_.bits(event), *known = settled_[event.mode].of(event.cell) + event.from;
  InstantBlock any{};
  for (std::size_t b = 0; b < event.range().until - event.range().from; ++b) {
    any.word |= bits[b].word &= ~known[b].word;
    known[b].word |= bits[b].word;
  }
  if (!any.any()) return true;
  event.next = list_[event.mode][event.cell];
  list_[event.mode][event.cell] = index;
  const InstantEvent copy = event;
  copy.mode == standing ? fromStanding(copy) : fromWalking(copy);
  return !end_;
}

std::optional<SweepOutcome> Sweep::outcome(const base::Cancel& cancel) {
  const InstantBlock atOnce{{1, 0}};
  for (const std::size_t cell : input_.starts) offerStanding(grid_.of(cell), 0, &atOnce, {0, 1});
  std::size_t settled = 0;
  for (std::optional<std::int32_t> index; (index = queue_.take());) {
    if (settled++ % kPollEvery == 0 && cancel.fired()) return std::nullopt;
    if (!settle(*index)) break;
  }
  SweepOutcome outcome;
  outcome.events = queue_.pushed();
  if (end_) {
    outcome.cost = label(*end_);
    outcome.path = path(*end_);
  } else {
    addFurthest(outcome);
  }
  return outcome;
}

std::optional<std::int64_t> Sweep::label(const State& state) const {
  const std::size_t block = state.instant / kBits;
  for (std::int32_t i = list_[state.mode][state.cell]; i >= 0; i = queue_.event(i).next) {
    const InstantEvent& event = queue_.event(i);
    if (block < event.from || block >= event.until) continue;
    const std::uint64_t word = queue_.bits(event)[block - event.from].word[(state.instant / 64) % 2];
    if ((word >> (state.instant % 64)) & 1) return event.cost;
  }
  return std::nullopt;
}

bool Sweep::isBefore(const State& state, std::int64_t price, std::int64_t& cost) const {
  if (label(state) != cost - price) return false;
  cost -= price;
  return true;
}

std::optional<State> Sweep::beforeByMove(const State& state, std::int64_t& cost, int move) const {
  const CellOffset to = moves_.moves()[static_cast<std::size_t>(move)].to;
  const State from{walking, state.cell - static_cast<std::size_t>(grid_.step(to)), state.instant - 1};
  bool clear = true;
  for (const CellOffset o : cellsPassed(to)) {
    const std::size_t cell = from.cell + static_cast<std::size_t>(grid_.step(o));
    if (!move_.at(cell, state.instant)) return std::nullopt;
    clear = clear && (!priced() || moveClear_.at(cell, state.instant));
  }
  std::int64_t price = lengths_[static_cast<std::size_t>(move)] + (clear ? 0 : input_.seenPrice);
  if (state.mode == standing) price += standPrice(state.cell);
  if (!isBefore(from, price, cost)) return std::nullopt;
  return from;
}

std::optional<State> Sweep::beforeByMove(const State& state, std::int64_t& cost, bool brisk, int& lastMove) const {
  if (state.instant == 0) return std::nullopt;
  if (brisk && lastMove >= 0)
    if (const auto from = beforeByMove(state, cost, lastMove)) return from;
  for (int move = 0; move < static_cast<int>(moves_.moves().size()); ++move) {
    if (moves_.moves()[static_cast<std::size_t>(move)].brisk != brisk) continue;
    if (const auto from = beforeByMove(state, cost, move)) return lastMove = brisk ? move : -1, from;
  }
  return std::nullopt;
}

/// A state one cheapest way to this one comes from: standing on before walking, and straight on before turning.
State Sweep::before(const State& state, std::int64_t& cost, int& lastMove) const {
  if (state.mode == standing) {
    if (state.instant > 0 && stand_.at(state.cell, state.instant - 1)) {
      const State stood{standing, state.cell, state.instant - 1};
      const bool clear = !priced() || standClear_.at(state.cell, stood.instant);
      if (isBefore(stood, clear ? 0 : input_.seenPrice, cost)) return stood;
    }
    lastMove = -1;
    const State arrived{walking, state.cell, state.instant};
    if (isBefore(arrived, standPrice(state.cell), cost)) return arrived;
    if (const auto from = beforeByMove(state, cost, false, lastMove)) return *from;
  } else {
    if (const auto from = beforeByMove(state, cost, true, lastMove)) return *from;
    const State stood{standing, state.cell, state.instant};
    if (isBefore(stood, input_.perWalk, cost)) return stood;
  }
  WEND_CHECK(!"a state without a way to it");
  return state;
}

std::vector<RouteState> Sweep::path(State end) const {
  std::vector<RouteState> states;
  std::int64_t cost = *label(end);
  int lastMove = -1;
  for (State state = end;; state = before(state, cost, lastMove)) {
    states.push_back({state.mode == walking, grid_.plain(state.cell), state.instant});
    if (state.mode == standing && state.instant == 0) break;
  }
  std::reverse(states.begin(), states.end());
  return states;
}

void Sweep::addFurthest(SweepOutcome& outcome) const {
  for (std::size_t cell = 0; cell < input_.grid.cells(); ++cell) {
    const std::size_t at = grid_.of(cell);
    for (std::size_t instant = last_ + 1; instant-- > outcome.furthest;) {
      if (!settled_[standing].at(at, instant) && !settled_[walking].at(at, instant)) continue;
      if (instant > outcome.furthest) outcome.furthestCells.clear();
      outcome.furthest = instant;
      outcome.furthestCells.push_back(cell);
      break;
    }
  }
}

}  // namespace

std::int64_t millimetres(double metres) {
  return std::llround(metres * 1000);
}

std::optional<SweepOutcome> sweep(const SweepInput& input, const base::Cancel& cancel) {
  WEND_CHECK(input.stand && input.move && input.moves && input.stand->cells() == input.grid.cells());
  WEND_CHECK(input.move->steps() == input.stand->steps() && !input.starts.empty());
  return Sweep(input).outcome(cancel);
}

}  // namespace wend::crew
