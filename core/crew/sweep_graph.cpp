#include "core/crew/sweep_graph.h"

#include <algorithm>

#include "core/base/check.h"

namespace wend::crew {

template <class Cost>
SweepGraph<Cost>::SweepGraph(const SweepInput& input, const SweepMaps& sweepMaps)
    : maps(sweepMaps),
      moves(*input.moves),
      last(input.stand->steps()),
      perWalk(static_cast<Cost>(input.perWalk)),
      seenPrice(static_cast<Cost>(input.seenPrice)) {
  for (const Move& move : moves.moves())
    lengths.push_back(static_cast<Cost>(millimetres(move.cells * input.grid.cell)));
  if (!input.standPrice.empty()) prices.assign(maps.grid.bits(), 0);
  for (std::size_t i = 0; i < input.standPrice.size(); ++i)
    prices[maps.grid.bitOf(i)] = static_cast<Cost>(input.standPrice[i]);
}

namespace {

template <class Cost>
class WayBack {
 public:
  WayBack(const SweepGraph<Cost>& graph, const std::vector<CostLayer<Cost>>& layers) : graph_(graph), layers_(layers) {}
  std::vector<RouteState> path(const SweepState& end) const;

 private:
  bool isReachedFrom(const SweepState& from, Cost price, Cost& cost) const;
  std::optional<SweepState> beforeByMove(const SweepState& state, Cost& cost, std::size_t move) const;
  std::optional<SweepState> beforeByMoves(const SweepState& state, Cost& cost, bool brisk, std::size_t& lastMove) const;
  SweepState before(const SweepState& state, Cost& cost, std::size_t& lastMove) const;

  const SweepGraph<Cost>& graph_;
  const std::vector<CostLayer<Cost>>& layers_;
};

template <class Cost>
bool WayBack<Cost>::isReachedFrom(const SweepState& from, Cost price, Cost& cost) const {
  if (costOf(layers_, from) != cost - price) return false;
  cost -= price;
  return true;
}

template <class Cost>
std::optional<SweepState> WayBack<Cost>::beforeByMove(const SweepState& state, Cost& cost, std::size_t move) const {
  const CellOffset to = graph_.moves.moves()[move].to;
  const SweepState from{true, state.bit - static_cast<std::size_t>(graph_.maps.grid.step(to)), state.instant - 1};
  bool clear = true;
  for (const CellOffset o : cellsPassed(to)) {
    const std::size_t bit = from.bit + static_cast<std::size_t>(graph_.maps.grid.step(o));
    if (!graph_.maps.move.at(from.instant, bit)) return std::nullopt;
    clear = clear && (!graph_.maps.clear || graph_.maps.clear->at(from.instant, bit));
  }
  Cost price = graph_.lengths[move] + (clear ? 0 : graph_.seenPrice);
  if (!state.walking) price += graph_.standPrice(state.bit);
  if (!isReachedFrom(from, price, cost)) return std::nullopt;
  return from;
}

template <class Cost>
std::optional<SweepState> WayBack<Cost>::beforeByMoves(const SweepState& state, Cost& cost, bool brisk,
                                                       std::size_t& lastMove) const {
  if (state.instant == 0) return std::nullopt;
  const std::size_t count = graph_.moves.moves().size();
  if (brisk && lastMove < count)
    if (const auto from = beforeByMove(state, cost, lastMove)) return from;
  for (std::size_t move = 0; move < count; ++move) {
    if (graph_.moves.moves()[move].brisk != brisk) continue;
    if (const auto from = beforeByMove(state, cost, move)) {
      lastMove = brisk ? move : count;
      return from;
    }
  }
  return std::nullopt;
}

/// A state one cheapest way to this one comes from: standing on before walking, and straight on before turning.
template <class Cost>
SweepState WayBack<Cost>::before(const SweepState& state, Cost& cost, std::size_t& lastMove) const {
  if (!state.walking) {
    if (state.instant > 0 && graph_.maps.stand.at(state.instant - 1, state.bit)) {
      const SweepState stood{false, state.bit, state.instant - 1};
      const bool clear = !graph_.maps.clear || graph_.maps.still().at(stood.instant, state.bit);
      if (isReachedFrom(stood, clear ? 0 : graph_.seenPrice, cost)) return stood;
    }
    lastMove = graph_.moves.moves().size();
    const SweepState arrived{true, state.bit, state.instant};
    if (isReachedFrom(arrived, graph_.standPrice(state.bit), cost)) return arrived;
    if (const auto from = beforeByMoves(state, cost, false, lastMove)) return *from;
  } else {
    if (const auto from = beforeByMoves(state, cost, true, lastMove)) return *from;
    const SweepState stood{false, state.bit, state.instant};
    if (isReachedFrom(stood, graph_.perWalk, cost)) return stood;
  }
  const bool hasWayToIt = false;
  WEND_CHECK(hasWayToIt);
  return state;
}

template <class Cost>
std::vector<RouteState> WayBack<Cost>::path(const SweepState& end) const {
  std::vector<RouteState> states;
  Cost cost = costOf(layers_, end);
  std::size_t lastMove = graph_.moves.moves().size();
  for (SweepState state = end;; state = before(state, cost, lastMove)) {
    states.push_back({state.walking, graph_.maps.grid.cellOf(state.bit), state.instant});
    if (!state.walking && state.instant == 0) break;
  }
  std::reverse(states.begin(), states.end());
  return states;
}

}  // namespace

template <class Cost>
std::vector<RouteState> pathTo(const SweepState& end, const SweepGraph<Cost>& graph,
                               const std::vector<CostLayer<Cost>>& layers) {
  return WayBack<Cost>(graph, layers).path(end);
}

template struct SweepGraph<float>;
template struct SweepGraph<double>;
template std::vector<RouteState> pathTo(const SweepState&, const SweepGraph<float>&,
                                        const std::vector<CostLayer<float>>&);
template std::vector<RouteState> pathTo(const SweepState&, const SweepGraph<double>&,
                                        const std::vector<CostLayer<double>>&);

}  // namespace wend::crew
