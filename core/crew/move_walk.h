/// The tree of moves walked for 64 cells at once over one step's map, so that a blocked cell cuts off all moves through
/// it.
///
/// Frame     bits of a `BorderedGrid` whose border is at least the reach of the moves.
#pragma once

#include "core/crew/move_set.h"
#include "core/crew/step_maps.h"

namespace wend::crew {

/// A step's map beside itself: for each number of columns away, moved so that a cell's bit is that of the cell so far
/// east.
class MovedMaps {
 public:
  MovedMaps(const BorderedGrid& grid, const MoveSet& moves)
      : reach_(moves.reach()),
        words_(grid.words()),
        by_(static_cast<std::size_t>(2 * reach_ + 1), std::vector<std::uint64_t>(grid.allWords())) {}

  void set(const std::uint64_t* map);
  /// Of the cells `at` away from those of a word.
  std::uint64_t beside(std::size_t word, CellOffset at) const {
    const std::size_t there = word + static_cast<std::size_t>(at.dy) * words_;
    return by_[static_cast<std::size_t>(reach_ + at.dx)][there];
  }

 private:
  int reach_;
  std::size_t words_;
  std::vector<std::vector<std::uint64_t>> by_;
};

/// visit(node, bits) at each node of the tree, in its order: those of a word's cells in `from` from where everything
/// passed so far is free. `stack` holds as many words as the tree is deep.
template <class Visit>
void walkTree(const MoveSet& moves, const MovedMaps& free, std::size_t word, std::uint64_t from,
              std::vector<std::uint64_t>& stack, Visit visit) {
  const auto& tree = moves.tree();
  for (std::size_t i = 0; i < tree.size();) {
    const MoveSet::Node& node = tree[i];
    const auto depth = static_cast<std::size_t>(node.depth);
    const std::uint64_t bits = (depth > 0 ? stack[depth - 1] : from) & free.beside(word, node.at);
    stack[depth] = bits;
    if (bits == 0) {
      i = node.after;
      continue;
    }
    visit(node, bits);
    ++i;
  }
}

}  // namespace wend::crew
