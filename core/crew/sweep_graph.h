/// What a sweep and the way back from its end share: the graph's prices and maps, and the costs of every instant.
///
/// Frame     bits of the bordered grid; costs in whole millimetres, which floats hold up to sixteen kilometres.
/// Tests     tests/property/route_search_test.cpp
#pragma once

#include "core/crew/cost_lanes.h"
#include "core/crew/route_sweep.h"
#include "core/crew/step_maps.h"

namespace wend::crew {

/// What the input says, turned round step by step.
struct SweepMaps {
  BorderedGrid grid;
  StepMaps stand, move;
  std::optional<StepMaps> clear, low;

  /// For standing. Requires `clear`.
  const StepMaps& still() const { return low ? *low : *clear; }

  explicit SweepMaps(const SweepInput& input)
      : grid(input.grid, input.moves->reach()), stand(*input.stand, grid), move(*input.move, grid) {
    if (input.clear) clear.emplace(*input.clear, grid);
    if (input.clear && input.low && !(*input.low == *input.clear)) low.emplace(*input.low, grid);
  }
};

/// Requires  input and maps to outlive it.
template <class Cost>
struct SweepGraph {
  const SweepMaps& maps;
  const MoveSet& moves;
  std::size_t last;  ///< instant
  Cost perWalk, seenPrice;
  std::vector<Cost> lengths;  ///< by move
  std::vector<Cost> prices;   ///< of standing, by bit; none: nothing

  SweepGraph(const SweepInput& input, const SweepMaps& sweepMaps);
  Cost standPrice(std::size_t bit) const { return prices.empty() ? 0 : prices[bit]; }
};

/// A state by its bit.
struct SweepState {
  bool walking = false;
  std::size_t bit = 0, instant = 0;
};

/// The costs of one instant in words of 64 cells, of those only in which a state can be reached.
template <class Cost>
struct CostLayer {
  std::vector<std::int32_t> place;  ///< of each word in `costs`, or -1
  std::vector<Cost> costs;          ///< 64 of standing and 64 of walking for each word kept
};

/// Infinite where the state was not reached.
template <class Cost>
Cost costOf(const std::vector<CostLayer<Cost>>& layers, const SweepState& state) {
  const CostLayer<Cost>& layer = layers[state.instant];
  const std::int32_t place = layer.place[state.bit / 64];
  if (place < 0) return kNever<Cost>;
  return layer.costs[static_cast<std::size_t>(place) + (state.walking ? 64 : 0) + state.bit % 64];
}

/// A cheapest way from a start, found backwards from its end.
/// Requires  the layers to hold every state that a cheapest way may pass, at its least cost.
/// Ensures   of several ways the same one each time: standing on before walking, and straight on before turning.
template <class Cost>
std::vector<RouteState> pathTo(const SweepState& end, const SweepGraph<Cost>& graph,
                               const std::vector<CostLayer<Cost>>& layers);

}  // namespace wend::crew
