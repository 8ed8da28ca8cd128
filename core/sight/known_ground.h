/// What is known of the ground seen so far, and what it spares: ground that would add nothing need not be drawn.
///
/// Both answer for the cells seen when they last looked. They err to one side only: what they say adds nothing adds
/// nothing, also to what has been seen since.
///
/// Tests     tests/core/sight/seen_steps_test.cpp, tests/property/ever_seen_test.cpp
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/base/team.h"
#include "core/sight/cell_bits.h"
#include "core/sight/swept_region.h"

namespace wend::sight {

/// Which cells are so deep in seen ground that nothing drawn through them could add to it.
class DeepGround {
 public:
  DeepGround(const geometry::Grid& grid, double radius)
      : grid_(grid), unseen_(grid), nearUnseen_(grid), radius_(radius / grid.cell), spacing_(2 * radius_ + 1) {}

  /// Looks at the box of `seen`, and takes ground outside it as not deep.
  void look(const CellBits& seen, const WordBox& box, base::Team& team);
  bool holds(const RegionEdge& edge) const { return usable_ && holdsLine(cellsOf(edge.a), cellsOf(edge.b)); }
  bool holds(const RegionSlice& slice) const;

 private:
  struct Cells {
    double x, y;
  };
  Cells cellsOf(Point p) const {
    return {(p.x - grid_.origin.x) / grid_.cell - 0.5, (p.y - grid_.origin.y) / grid_.cell - 0.5};
  }
  /// Whether all that lies nearer than the radius to places along the line, or than that to their neighbours', is seen.
  bool holdsLine(Cells a, Cells b) const;

  geometry::Grid grid_;
  CellBits unseen_, nearUnseen_;
  WordBox box_, near_;
  const std::uint64_t* nearFirst_ = nullptr;  ///< of `nearUnseen_`, where the box begins
  std::size_t nearStride_ = 0;
  double radius_, spacing_;
  bool usable_ = true;
};

/// Where the cells not yet seen are, by words.
class UnseenWords {
 public:
  void look(const CellBits& seen);
  bool any(const WordBox& box) const;

 private:
  std::size_t slot(int word, int row) const {
    return static_cast<std::size_t>(row) * stride_ + static_cast<std::size_t>(word);
  }
  std::vector<std::uint32_t> before_;  ///< words with an unseen cell, south and west of here
  std::size_t stride_ = 0;
};

/// What is known of the ground seen so far.
struct KnownGround {
  DeepGround deep;
  UnseenWords unseen;
};

}  // namespace wend::sight
