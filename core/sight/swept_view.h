/// The ground a lens may see while it moves: everything, and next to nothing else, that is seen at some instant of a
/// short step.
///
/// Why it is sound. A line of sight is a straight line that starts at the lens, goes in a direction within the frame,
/// and crosses triangles through their open sides until it ends. Sort all lines of the step by the sides they cross
/// after leaving the triangles the lens itself moves in. For one such sequence, look only at what the lines have in
/// common: they meet the lens' way (a segment, or the strip of `sway` around it), they point within the directions
/// between the rightmost and leftmost the frame reaches during the step, and they pass between the two ends of every
/// side in the sequence. The ground these lines cover beyond the last side lies between two of them, the leftmost and
/// the rightmost, each of which touches a corner of the sequence and the lens' way (or points along the frame's side).
/// When the triangle beyond has its far corner between the two, the sequence forks, and the two of each fork touch that
/// corner. So a walk that keeps these two lines and forks at corners misses no line, wherever walls meet, cross, repeat
/// or nearly meet, however near the lens is: nothing is assumed of distances. That is the whole proof; the rest is
/// in what shape the ground is handed on. A point behind the lens' way, where the frame's outermost sides cross, sees
/// between them exactly the ground of the open step; the ground seen from it is the ring (it cannot overlap itself),
/// and what the two lines add at each corner is a slice with its tip there.
///
/// Given away: the frame's directions and the places of the lens are held apart (each place with each direction), and
/// of the sides passed only the last corner on the far side is remembered. Both add ground, never lose it.
///
/// Error     the walls are those of the triangles: drawn to 61 micrometres, and joined where they come within a
///           millimetre. A slit a millimetre wider or narrower near the lens is a beam centimetres wider far from it.
///
/// Rejected: to slide what is looked at along with the lens, which fails where a line grazes a wall; to slide the lens
/// and keep what is looked at, which needs the lens to stay clear of walls by far more than it moves; to sample
/// instants, which misses what a slit near the lens sweeps between two of them.
///
/// In a mirror   the lens is the mirror image of the true one, and it looks through a plan of both sides: the walls in
///               front of the mirror, their images behind it, and the mirror's line closed but for the mirror itself
///               (mirror_plan.h makes it). The image may stand anywhere behind the line, near or far, within the box.
///               `keepFront` then cuts off the ground behind the line.
///
/// Frame     plan metres; bearings in degrees clockwise from north, unwrapped.
#pragma once

#include <span>
#include <vector>

#include "core/sight/sight_walk.h"
#include "core/sight/swept_region.h"
#include "core/sight/triangulation.h"

namespace wend::sight {

struct SweptPose {
  Point pupil;
  double bearing = 0;
  double halfAngle = 0;  ///< degrees from the axis to either side of the frame; 180 or more sees all round
  bool operator==(const SweptPose&) const = default;
};

/// Pupil, bearing and half angle go linearly from one pose to the other.
struct SweptStep {
  SweptPose from, until;
  double sway = 0;  ///< metres by which the true way may leave the straight one
  double turn = 0;  ///< degrees by which the true sides of the frame may lie outside the linear ones
  bool operator==(const SweptStep&) const = default;
};

/// One step that holds every instant of a way from pose to pose, each linear to the next.
///
/// Requires  at least one pose; bearings unwrapped.
/// Ensures   (1) every place of the way lies within `sway` of the straight one, and both sides of the frame at every
///           instant within `turn` of those that `SweptView` takes for the step.
/// Cost      the poses.
SweptStep stepOver(std::span<const SweptPose> poses);

/// Sees through the triangles of one plan. Keeps its memory from step to step; one for each thread.
class SweptView {
 public:
  /// Requires  the triangles to outlive it.
  explicit SweptView(const Triangulation& triangles);

  /// The ground seen during a step, into an emptied `out`.
  ///
  /// Ensures   (1) a point that the straight line from some place of the lens reaches across no wall, in a direction
  ///           the frame holds at that instant, lies in `out`, but for sights thinner than kSliver; touching a wall's
  ///           end crosses nothing, and a lens on a wall sees both of its sides; (2) a lens that stands still sees its
  ///           plain view and no slice; (3) the rings do not overlap, and an edge is not widened only where the slices
  ///           run along all of it; (4) the same step gives the same ground, whatever was asked before; (5) steps that
  ///           turn by any angle, and frames of any angle, are held; (6) a lens that touches or crosses a wall sees
  ///           what either side sees; (7) outside the box everything is seen; (8) an edge is `onWall` only along
  ///           walls.
  /// Cost      the triangles the ground is made of.
  void of(const SweptStep& step, SweptRegion& out);

 private:
  struct Root {
    std::int32_t side;
    Vec right, left;  ///< of the base, from the walk's apex
    bool base, rightEnd, leftEnd;
  };
  bool stay(const SightWalk::Source& source);
  void rootsOf(const SightWalk::Source& source);
  bool inLine();
  void addSlices(const SightWalk::Source& source, SweptRegion& out);

  const Triangulation* triangles_;
  SightWalk walk_;
  std::vector<std::int32_t> stay_, border_;  ///< triangles the lens is in, their outer sides
  std::vector<Root> roots_;
  int last_ = 0;
};

/// Cuts off the ground to the right of the line from `line.a` to `line.b`, rings and slices. The line is no wall.
void keepFront(SweptRegion& region, geometry::Segment line);

}  // namespace wend::sight
