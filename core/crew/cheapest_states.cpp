#include "core/crew/cheapest_states.h"

#include <bit>

namespace wend::crew {
namespace {

/// A move by what it costs and how many bits on it leads.
template <class Cost>
struct Stride {
  std::size_t bits;
  Cost length;
};

template <class Cost>
class Marking {
 public:
  Marking(Cost cost, const SweepGraph<Cost>& graph, const std::vector<CostLayer<Cost>>& layers)
      : graph_(graph),
        layers_(layers),
        states_(static_cast<std::int64_t>(cost), layers.size(), graph.maps.grid.allWords()) {
    const auto& moves = graph.moves.moves();
    for (std::size_t i = 0; i < moves.size(); ++i) {
      const auto bits = static_cast<std::size_t>(graph.maps.grid.step(moves[i].to));
      (moves[i].brisk ? brisk_ : slow_).push_back({bits, graph.lengths[i]});
    }
  }

  CheapestStates backFrom(const std::vector<SweepState>& ends) && {
    for (const SweepState& end : ends) states_.add(end);
    for (std::size_t instant = layers_.size(); instant-- > 0;) {
      each(states_.standing(instant), [&](std::size_t bit) { markArriving({false, bit, instant}); });
      each(states_.walking(instant), [&](std::size_t bit) { markBeforeWalking({true, bit, instant}); });
      if (instant > 0) each(states_.standing(instant), [&](std::size_t bit) { markBefore({false, bit, instant}); });
    }
    return std::move(states_);
  }

 private:
  template <class Visit>
  void each(const std::uint64_t* words, Visit visit) const {
    for (std::size_t word = 0; word < graph_.maps.grid.allWords(); ++word)
      for (std::uint64_t bits = words[word]; bits != 0; bits &= bits - 1)
        visit(word * 64 + static_cast<std::size_t>(std::countr_zero(bits)));
  }

  void markIf(const SweepState& from, Cost cost) {
    if (costOf(layers_, from) == cost) states_.add(from);
  }

  void markArriving(const SweepState& state) {
    markIf({true, state.bit, state.instant}, costOf(layers_, state) - graph_.standPrice(state.bit));
  }

  void markBeforeWalking(const SweepState& state) {
    const Cost cost = costOf(layers_, state);
    markIf({false, state.bit, state.instant}, cost - graph_.perWalk);
    if (state.instant > 0) markMoves(brisk_, state, cost);
  }

  void markBefore(const SweepState& state) {
    const Cost cost = costOf(layers_, state);
    markIf({false, state.bit, state.instant - 1}, cost);
    markMoves(slow_, state, cost - graph_.standPrice(state.bit));
  }

  /// Who has walked has set off.
  void markMoves(const std::vector<Stride<Cost>>& moves, const SweepState& state, Cost cost) {
    if (cost < graph_.perWalk) return;
    for (const Stride<Cost>& move : moves) markIf({true, state.bit - move.bits, state.instant - 1}, cost - move.length);
  }

  const SweepGraph<Cost>& graph_;
  const std::vector<CostLayer<Cost>>& layers_;
  CheapestStates states_;
  std::vector<Stride<Cost>> brisk_, slow_;
};

}  // namespace

template <class Cost>
CheapestStates cheapestStates(const std::vector<SweepState>& ends, const SweepGraph<Cost>& graph,
                              const std::vector<CostLayer<Cost>>& layers) {
  return Marking<Cost>(costOf(layers, ends.front()), graph, layers).backFrom(ends);
}

template CheapestStates cheapestStates(const std::vector<SweepState>&, const SweepGraph<float>&,
                                       const std::vector<CostLayer<float>>&);
template CheapestStates cheapestStates(const std::vector<SweepState>&, const SweepGraph<double>&,
                                       const std::vector<CostLayer<double>>&);

}  // namespace wend::crew
