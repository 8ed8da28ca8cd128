/// Sight from room to room: when the lens sees ground of a room other than its own, and through which openings.
///
/// Frame     plan metres, heights above the datum, seconds.
#pragma once

#include <functional>
#include <span>
#include <vector>

#include "core/base/cancel.h"
#include "core/sight/ways_through.h"
#include "core/sight/windows.h"

namespace wend::sight {

struct ThroughSight {
  Span time;
  int from = kOutside;        ///< the room the pupil is in
  int room = kOutside;        ///< the room whose ground is seen
  std::vector<int> openings;  ///< tags of the openings passed, in the order in which the rays pass them
  bool operator==(const ThroughSight&) const = default;
};

struct ThroughSpec {
  Span take;
  double step = 0.1;       ///< seconds between instants that are looked at in any case
  double refine = 0.0125;  ///< seconds down to which it is looked closer
  GroundAsked ground;
};

/// What an instant sees.
struct WaysAt {
  double time = 0;
  WaysSeen seen;
};

/// What was found in one step, and every time at which it was asked where the eye is: where the eye is as it was at all
/// of them, so is what is found.
struct ThroughStep {
  std::vector<double> asked;
  std::vector<WaysAt> found;  ///< after the step's start, its end last
};

struct Throughs {
  std::vector<ThroughSight> sights;
  std::vector<ThroughStep> steps;
};

/// Steps of an earlier take with the same scene, rooms and spec, and whether its eye was where it is now.
struct KnownThroughs {
  std::span<const ThroughStep> steps;
  std::function<bool(double)> sameEye;
};

/// Directly and through openings only, as `WaysThrough` sees it at an instant.
///
/// How it looks   at both ends of every step, and between them by halves, down to `refine`, where the two see other
///                ways, or where the ground seen at some instant between (swept_view.h, which misses none) reaches an
///                opening that is not in sight at both.
/// Ensures   (1) one span for each unbroken time, room and way of openings, in order of start, then room, then way;
///           (2) a span starts at an instant that sees it, at most `refine` after one that does not, and ends at one
///           that does not, at most `refine` after one that does; or with the take; (3) a way is told when it is seen
///           for as long as a step; (4) and when it is seen for as long as `refine`, unless all its openings are in
///           sight at two instants around that time, no more than a step apart, that do not see it: what shows by an
///           opening that comes into view is told; (5) the same with steps known before as without.
/// Error     so of what comes and goes in openings that stay in sight, as behind a leaf or where two rooms meet behind
///           one opening, less than a step may be missed, and as short a break of a way goes unnoticed. How closely the
///           eye is known between its instants, `eyeStep` says; what is thinner than kSliver (half_plane.h) is not
///           looked for.
/// Fails     when cancelled: nothing.
std::optional<Throughs> throughSights(const Scene& scene, const std::vector<RoomGround>& rooms, const EyeAt& eye,
                                      const ThroughSpec& spec, const base::Cancel& cancel = {},
                                      const KnownThroughs* known = nullptr);

}  // namespace wend::sight
