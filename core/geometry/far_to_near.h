/// The order in which upright faces hide each other: farthest first, as seen from any point of the plan.
///
/// Source    H. Fuchs, Z. M. Kedem, B. F. Naylor, "On Visible Surface Generation by A Priori Tree Structures", Computer
///           Graphics 14(3), 1980, pp. 124-133: a binary space partition, here of the plan, since every face is
///           upright.
#pragma once

#include <memory>
#include <vector>

#include "core/geometry/segment.h"

namespace wend::geometry {

/// A piece of one face, or a thing at a place.
struct Ordered {
  std::size_t index = 0;  ///< of the face or the thing in the list given
  bool thing = false;
  Segment face;  ///< the piece, in the direction of the whole; a thing has none
};

class FarToNear {
 public:
  /// Requires  no face shorter than kTouch
  /// Cost      n log n for ordinary sets; faces may be split
  explicit FarToNear(const std::vector<Segment>& faces);

  /// Every piece of every face, and every thing, such that nothing hides what comes after it.
  ///
  /// Ensures   for a ray from `eye`, pieces it crosses come with decreasing distance; a thing comes after the faces
  ///           behind its place and before those in front of it; things in one cell come farthest first
  std::vector<Ordered> from(Point eye, const std::vector<Point>& things) const;

 private:
  struct Piece {
    std::size_t index;
    Segment face;
  };
  struct Node {
    Segment line;
    std::vector<Piece> on;
    std::unique_ptr<Node> left, right;
  };
  static std::unique_ptr<Node> built(std::vector<Piece> pieces);
  static void visit(const Node* node, Point eye, const std::vector<Point>& places, std::vector<std::size_t> things,
                    std::vector<Ordered>& order);

  std::unique_ptr<Node> root_;
};

}  // namespace wend::geometry
