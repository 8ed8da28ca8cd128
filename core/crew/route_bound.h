/// What a state still costs at least until the end of the take: the route graph seen through blocks of cells.
///
/// A block may be stood on, or moved in, at a step where any of its cells may, and a move between blocks costs what the
/// shortest move between any two of their cells does. Every route of the graph is so a route of the blocks that costs
/// no more, and the least cost from block to end, worked out backwards from instant to instant, is a bound from below.
/// So is the straight way to the box round the blocks from where, at any later instant, an end can be reached: shortest
/// moves from block to block add up to little over half of a long straight way.
///
/// Frame     bits of a `BorderedGrid`; costs in whole millimetres, so that floats hold them.
#pragma once

#include "core/crew/move_set.h"
#include "core/crew/step_maps.h"

namespace wend::crew {

class RouteBound {
 public:
  /// Blocks of kBlock by kBlock cells.
  static constexpr std::size_t kBlock = 4;

  struct Input {
    const StepMaps& stand;
    const StepMaps& move;
    const MoveSet& moves;
    std::size_t steps = 0;
    std::vector<std::size_t> ends;  ///< bits; none: anywhere
    float perWalk = 3000;
    double cell = 0.1;  ///< metres
  };
  RouteBound(const BorderedGrid& grid, const Input& input);

  /// For the block of the first of kBlock neighbouring bits of a row, and of the next fifteen: a word's.
  /// Ensures   at most the least cost of any way from a state in the block to an end; infinite only when there is none.
  const float* standing(std::size_t instant, std::size_t word) const { return of(stand_, instant, word); }
  const float* walking(std::size_t instant, std::size_t word) const { return of(walk_, instant, word); }

 private:
  struct Way {
    int dx, dy;
    float brisk, slow;
  };
  /// Where a word's first block lies among all of an instant.
  std::size_t placeOf(std::size_t word) const;
  const float* of(const std::vector<float>& costs, std::size_t instant, std::size_t word) const {
    return costs.data() + instant * blocks_ + placeOf(word);
  }
  void addWays(const Input& input);
  void begin(const BorderedGrid& grid, const Input& input);
  void widenHaul(const float* stand);
  void goBack(std::size_t step, const Input& input);
  void readMap(const std::uint64_t* map, std::vector<std::uint8_t>& any) const;

  // A border of blocks, never entered, keeps looks at neighbours inside.
  std::size_t words_, wordRows_, rowBorder_ = 0, columnBorder_ = 0, wide_ = 0, blocks_ = 0;
  std::vector<Way> ways_;
  std::vector<float> stand_, walk_, onStand_, onWalk_;
  // Metres straight to the furthest of the boxes round what each later instant allows, in millimetres.
  std::vector<float> haul_;
  float cellMillimetres_ = 0, blockMillimetres_ = 0;
  std::vector<std::uint8_t> any_;
};

}  // namespace wend::crew
