#include "core/crew/route_reach.h"

#include <algorithm>

#include "core/crew/move_walk.h"
#include "core/crew/step_maps.h"

namespace wend::crew {
namespace {

using Bits = std::vector<std::uint64_t>;

bool isIn(const Bits& bits, std::size_t bit) {
  return (bits[bit / 64] >> (bit % 64)) & 1;
}

class Spread {
 public:
  explicit Spread(const SweepInput& input)
      : moves_(*input.moves),
        grid_(input.grid, moves_.reach()),
        stand_(*input.stand, grid_),
        move_(*input.move, grid_),
        free_(grid_, moves_),
        stack_(static_cast<std::size_t>(moves_.depth())),
        now_(grid_.allWords(), 0) {
    for (const std::size_t cell : input.starts) add(now_, grid_.bitOf(cell) / 64, grid_.bitOf(cell) % 64, 1);
  }

  const BorderedGrid& grid() const { return grid_; }
  const Bits& now() const { return now_; }

  /// False, and all as it is, where nobody gets past the step.
  bool advance(std::size_t step) {
    free_.set(move_.at(step));
    const std::uint64_t* stand = stand_.at(step);
    Bits next(now_.size(), 0);
    for (std::size_t word = 0; word < now_.size(); ++word) {
      if (now_[word] == 0) continue;
      next[word] |= now_[word] & stand[word];
      walkTree(moves_, free_, word, now_[word], stack_, [&](const MoveSet::Node& node, std::uint64_t bits) {
        if (node.move < 0) return;
        const std::size_t to = word * 64 + static_cast<std::size_t>(grid_.step(node.at));
        add(next, to / 64, to % 64, bits);
      });
    }
    if (std::all_of(next.begin(), next.end(), [](std::uint64_t bits) { return bits == 0; })) return false;
    now_ = std::move(next);
    return true;
  }

 private:
  /// The bits from bit `shift` of a word on. What would lie past the last word is border.
  static void add(Bits& to, std::size_t word, std::size_t shift, std::uint64_t bits) {
    to[word] |= bits << shift;
    if (shift != 0 && word + 1 < to.size()) to[word + 1] |= bits >> (64 - shift);
  }

  const MoveSet& moves_;
  BorderedGrid grid_;
  StepMaps stand_, move_;
  MovedMaps free_;
  Bits stack_, now_;
};

}  // namespace

std::optional<Reach> reachOf(const SweepInput& input, const base::Cancel& cancel) {
  Spread spread(input);
  Reach reach;
  const std::size_t last = input.stand->steps();
  while (reach.furthest < last) {
    if (cancel.fired()) return std::nullopt;
    if (!spread.advance(reach.furthest)) break;
    ++reach.furthest;
  }
  for (std::size_t cell = 0; cell < input.grid.cells(); ++cell)
    if (isIn(spread.now(), spread.grid().bitOf(cell))) reach.cells.push_back(cell);
  if (reach.furthest < last) return reach;
  const auto isReached = [&](std::size_t cell) { return isIn(spread.now(), spread.grid().bitOf(cell)); };
  reach.end = input.ends.empty() ? !reach.cells.empty() : std::any_of(input.ends.begin(), input.ends.end(), isReached);
  return reach;
}

}  // namespace wend::crew
