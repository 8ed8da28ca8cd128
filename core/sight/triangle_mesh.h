/// Triangles under construction: corners added one by one, walls forced in as chains of sides.
///
/// Frame     lattice units.
/// Tests     tests/core/sight/triangulation_test.cpp
#pragma once

#include <array>
#include <vector>

#include "core/sight/lattice.h"

namespace wend::sight {

/// Sides 3t, 3t+1, 3t+2 bound triangle t counter-clockwise; a side is named by its number.
///
/// Ensures   after every call the triangles tile the box, and each is counter-clockwise with area.
class TriangleMesh {
 public:
  /// A box of two triangles whose four sides belong to `wall`.
  TriangleMesh(LatticePoint low, LatticePoint high, int wall);

  /// The corner at p, made if there is none. Requires p in the box.
  int cornerAt(LatticePoint p);
  /// Makes the straight way from corner a to corner b a chain of sides of `wall`; walls it crosses get a corner there,
  /// rounded to the lattice. False when `budget` ran out: each crossing takes one.
  bool close(int a, int b, int wall, int& budget);

  /// Numbers in use lie below this; those that do not stand are free.
  int triangles() const { return static_cast<int>(origin_.size() / 3); }
  const std::vector<LatticePoint>& corners() const { return corners_; }
  bool stands(int triangle) const { return origin_[at(3 * triangle)] >= 0; }
  int origin(int side) const { return origin_[at(side)]; }
  int twin(int side) const { return twin_[at(side)]; }
  int wall(int side) const { return wall_[at(side)]; }
  static int next(int side) { return side % 3 == 2 ? side - 2 : side + 1; }
  static int before(int side) { return side % 3 == 0 ? side + 2 : side - 1; }

 private:
  /// The way to be closed between two corners.
  struct Way {
    int a, b, wall;
  };
  /// What lies on the other side of a side to be.
  struct Beyond {
    int side, wall;
  };
  /// One bank of a way: corners from end to end, and the sides between them in the triangles that go.
  struct Chain {
    std::vector<int> corners, sides;
  };
  static std::size_t at(int i) { return static_cast<std::size_t>(i); }
  LatticePoint pointOf(int corner) const { return corners_[at(corner)]; }
  LatticePoint from(int side) const { return pointOf(origin(side)); }
  LatticePoint to(int side) const { return pointOf(origin(next(side))); }
  Beyond beyond(int side) const { return {twin(side), wall(side)}; }
  int newTriangle();
  void setTriangle(int triangle, int a, int b, int c);
  void link(int side, Beyond other);
  void setWall(int side, int wall);
  bool holds(int triangle, LatticePoint p) const;
  int triangleAt(LatticePoint p) const;
  void splitTriangle(int triangle, int corner);
  void splitSide(int side, int corner);
  void settle(std::vector<int>& doubtful);
  bool flipIfBetter(int side);

  void closeStretch(Way way);
  int sideToward(int a, LatticePoint b, int& onWay) const;
  void meetWall(Way way, int side);
  void openUp(Way way, int first, int until);
  Beyond fill(const Chain& chain, std::size_t low, std::size_t high);

  std::vector<LatticePoint> corners_;
  std::vector<int> touching_;  ///< a side that starts at the corner
  std::vector<int> origin_, twin_, wall_;
  std::vector<int> free_;  ///< triangles to be used again
  std::vector<Way> ways_;
  int last_ = 0;
};

}  // namespace wend::sight
