/// How far somebody gets in one step of time: every straight way from a cell's centre to another's within a radius.
///
/// Frame     cells: a move (dx, dy) leads dx columns east and dy rows north.
#pragma once

#include <cstdint>
#include <vector>

namespace wend::crew {

/// A cell some columns and rows away.
struct CellOffset {
  int dx = 0, dy = 0;
  bool operator==(const CellOffset&) const = default;
};

/// The cells through whose inside the straight way from centre to centre leads, both ends among them, in order. A way
/// through a corner leads from the one cell into the one opposite.
std::vector<CellOffset> cellsPassed(CellOffset to);

struct Move {
  CellOffset to;
  double cells = 0;  ///< its length
  /// At least half the radius: the pace of somebody on their way. Shorter moves only end a walk.
  bool brisk = false;
};

/// Every move within a radius, and the cells they pass as one tree: moves that pass the same cells first share them.
///
/// Ensures   the moves are all (dx, dy) with 0 < dx^2 + dy^2 <= radius^2, in a fixed order.
/// Error     what the set gives away against walking in any direction, without limit of distance: speed to
///           a share of the radius a step, metres to `longest()`. Radius 3: 0.894 and 1.0275; radius 5: 0.949 and
///           1.0077.
class MoveSet {
 public:
  /// Requires 1 <= radius < 64.
  explicit MoveSet(double radius);

  double radius() const { return radius_; }
  /// The most columns or rows of one move.
  int reach() const { return static_cast<int>(radius_); }
  const std::vector<Move>& moves() const { return moves_; }

  /// In the worst direction, the way made of brisk moves over the straight way.
  double longest() const;

  /// One cell of the tree, in the order of a walk through it; all cells below it stand before `after`.
  struct Node {
    CellOffset at;
    int depth = 0;
    int move = -1;  ///< the move that ends here
    std::size_t after = 0;
  };
  const std::vector<Node>& tree() const { return tree_; }
  int depth() const { return depth_; }

 private:
  double radius_;
  std::vector<Move> moves_;
  std::vector<Node> tree_;
  int depth_ = 0;
};

}  // namespace wend::crew
