/// One direction of sight: the upright half plane through the pupil, in which everything is an interval of slope.
///
/// Frame     r metres from the pupil along the floor, z metres above the datum, the pupil at (0, eye); slope
///           m = (z - eye) / r. A piece that the ray crosses from `near` to `far` is the box [near, far] x [bottom,
///           top].
/// Touching  a line of sight that only grazes a box passes; one thinner than kSliver does not count.
///
/// A box hides from the pupil exactly the slopes that meet it before they meet what is looked at. That the two may
/// overlap (a person who leans over a bench) is why "before" is asked slope by slope and not once for the whole box.
#pragma once

#include <span>
#include <vector>

#include "core/geometry/point.h"

namespace wend::sight {

using geometry::Span;

/// What the ray crosses, or what it looks at. A sheet has near == far.
struct Upright {
  double near = 0, far = 0;
  double bottom = 0, top = 0;
};

/// A closed interval of slopes; empty when low > high.
struct Slopes {
  double low = 0, high = -1;
  bool empty() const { return low > high; }
  bool operator==(const Slopes&) const = default;
};

/// The slopes common to both.
Slopes meet(Slopes a, Slopes b);

/// Every slope that meets the box. A box at the pupil's own foot counts from a nanometre on.
Slopes slopesOf(double eye, const Upright& box);

/// The slopes of `window` that meet `target` and are hidden by none of `blocks`, as the widest of them.
///
/// Ensures   (1) nothing when no free interval is wider than kSliver as an angle; (2) blocks beyond the target, and the
///           target's own far side, hide nothing of it; (3) the order of `blocks` does not matter.
/// Cost      n log n.
Slopes widestFree(double eye, std::span<const Upright> blocks, const Upright& target, Slopes window);

/// True when `widestFree` finds anything.
bool anyFree(double eye, std::span<const Upright> blocks, const Upright& target, Slopes window);

/// True when a block stands between the pupil and the point (r, z): its inside is met before r.
bool hidden(double eye, std::span<const Upright> blocks, double r, double z);

/// Where along one ray an upright line is seen. Keeps its working memory from call to call.
class SeenDistances {
 public:
  /// The distances within `range` at which an upright line from `bottom` to `top` is seen through `window`, in order
  /// and apart, appended to `out`.
  ///
  /// Ensures   a distance is listed exactly when `anyFree` holds for the target {r, r, bottom, top}, up to slivers.
  /// Cost      n^2 for n blocks, which are few along one ray. Sorts `blocks` by `near`.
  void append(double eye, std::span<Upright> blocks, double bottom, double top, Slopes window, Span range,
              std::vector<Span>& out);

 private:
  bool appendStretch(double eye, std::span<const Upright> blocks, Slopes window, Span stretch, std::vector<Span>& out);
  std::vector<double> stops_;
  std::vector<Span> heights_, pieces_;
  std::vector<Upright> inside_;
  std::size_t first_ = 0;
};

}  // namespace wend::sight
