/// The states on the cheapest routes a sweep has found: the only ones that a search for routes as cheap through ground
/// less free has to look at.
///
/// Frame     bits of the bordered grid.
/// Tests     tests/property/route_search_test.cpp
#pragma once

#include "core/crew/sweep_graph.h"

namespace wend::crew {

class CheapestStates {
 public:
  /// None yet, of routes that cost so many millimetres.
  CheapestStates(std::int64_t cost, std::size_t instants, std::size_t words)
      : cost_(cost), words_(words), standing_(instants * words, 0), walking_(instants * words, 0) {}

  /// Routes through these states alone may still cost more.
  std::int64_t cost() const { return cost_; }
  /// A word for each of an instant.
  const std::uint64_t* standing(std::size_t instant) const { return standing_.data() + instant * words_; }
  const std::uint64_t* walking(std::size_t instant) const { return walking_.data() + instant * words_; }
  void add(const SweepState& state) {
    (state.walking ? walking_ : standing_)[state.instant * words_ + state.bit / 64] |= std::uint64_t{1}
                                                                                       << (state.bit % 64);
  }

 private:
  std::int64_t cost_;
  std::size_t words_;
  std::vector<std::uint64_t> standing_, walking_;
};

/// Requires  an end at least, all of one cost; the layers as `pathTo` does.
/// Ensures   every state of every route to one of the ends that costs no more than it. Cells on the way of a move are
///           not looked at, so there may be others among them.
template <class Cost>
CheapestStates cheapestStates(const std::vector<SweepState>& ends, const SweepGraph<Cost>& graph,
                              const std::vector<CostLayer<Cost>>& layers);

}  // namespace wend::crew
