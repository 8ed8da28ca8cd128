/// Fans of sight that walk through triangles, from side to side, until walls end them.
///
/// A fan is what one point sees through one side between two directions. Where the far corner of the triangle beyond
/// lies between them it forks; no gap and no overlap can open between the two, because both take the corner itself.
/// When the lens moves, the corner is also the tip of a slice: what lines from other places of the lens see past it.
///
/// Frame     plan metres; directions are vectors of any length.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/geometry/tolerance.h"
#include "core/sight/swept_region.h"
#include "core/sight/triangulation.h"

namespace wend::sight {

using geometry::Vec;

class SightWalk {
 public:
  /// The places and directions of the lens during a step, as seen from one point.
  struct Source {
    Point from, until;            ///< the lens' way
    double sway = 0;              ///< metres around it
    Vec right, left;              ///< the outermost directions, less than half a turn apart
    Point apex;                   ///< the way lies between the rays from here along `right` and `left`
    Point nearRight, nearLeft;    ///< ends of the ring's near side, on those rays
    Point chordRight, chordLeft;  ///< where the rays touch the way
    bool still = false;           ///< nothing but turns: then there are no slices
  };

  explicit SightWalk(const Triangulation& triangles) : sides_(triangles.sides()), corners_(triangles.corners()) {}

  void begin(const Source& source, SweptRegion& out);
  /// Walks the base fan, from the source's apex through `side`, into the ring.
  ///
  /// Requires  fans to be given from right to left. A corner is given where a direction is that of the side's end.
  /// Ensures   what the apex sees through the side between the directions is added, a straight wall as one edge however
  ///           many corners it has; slices at the corners are noted.
  void addToRing(std::int32_t side, Vec right, Vec left, bool rightEnd, bool leftEnd);
  /// The same as slices from the side on.
  void addAsSlices(std::int32_t side, Vec right, Vec left, bool rightEnd, bool leftEnd);
  /// Notes the slices past the ends of a side that no base fan goes through; the base may see it from beyond.
  void noteEnds(std::int32_t side, bool rightEnd, bool leftEnd);
  /// Joins what was added to a ring, by `nearLeft` and `nearRight` unless the ring goes all round.
  void closeRing(bool allRound);
  /// Adds a convex area, corners less than a tenth of a nanometre apart taken as one.
  void addPiece(std::span<const Point> corners);
  /// Walks the slices noted so far, and those they note themselves.
  ///
  /// Ensures   a ring's edge whose slice runs all along it is no longer widened.
  void addSlices();

 private:
  enum class Kind : std::uint8_t { base, pastLeft, pastRight };  ///< which bank a slice's tip is on
  struct Fan {
    std::int32_t side;
    std::int32_t rightCorner, leftCorner;  ///< the last corners passed, -1 none
    std::int32_t rightAt, leftAt;          ///< corners exactly along its two directions, -1 none
    std::int32_t rightSlice, leftSlice;    ///< of a base fan: the slices beyond its two directions, -1 none
    Point apex;
    Vec right, left;
    Kind kind;
    bool window;  ///< of a slice: it still runs along the edge it began at
  };
  struct Slice {
    Fan fan;
    std::int32_t edge;  ///< of the ring, along which it begins; -1 none
    Point far;          ///< of that edge
  };
  std::int32_t sideReached(const Fan& fan) const;
  template <class Leaf>
  void walk(Fan fan, Leaf leaf);
  void fork(Fan& fan, const Triangulation::Side& side, Vec toApex, bool toRight, bool toLeft);
  Fan rooted(std::int32_t side, Vec right, Vec left, bool rightEnd, bool leftEnd);
  std::int32_t noteLeft(const Fan& fan, std::int32_t corner, std::int32_t through, Vec along);
  std::int32_t noteRight(const Fan& fan, std::int32_t corner, std::int32_t through, Vec along);
  Vec leftmost(Point corner, Vec along, std::int32_t rightCorner) const;
  Vec rightmost(Point corner, Vec along, std::int32_t leftCorner) const;
  Point corner(std::int32_t i) const { return corners_[i]; }
  Point rightHit(const Fan& fan) const;
  Point leftHit(const Fan& fan) const;
  void noteWindow(const Fan& fan, Point right);
  void addRingLeaf(const Fan& fan);
  void addSliceLeaf(const Slice& slice, const Fan& fan);

  const Triangulation::Side* sides_;
  const Point* corners_;
  Source source_;
  SweptRegion* out_ = nullptr;
  std::vector<Fan> stack_;
  std::vector<Slice> slices_;
  bool begun_ = false;           ///< the ring has a leaf
  Point first_, last_;           ///< of the ring so far
  bool afterLeaf_ = false;       ///< its last edge is one of a wall
  std::int32_t lastSlice_ = -1;  ///< beyond the last leaf's left
};

}  // namespace wend::sight
