/// Sight from room to room: when the lens sees ground of a room other than its own, and through which openings.
#pragma once

#include <vector>

#include "core/base/cancel.h"
#include "core/sight/windows.h"

namespace wend::sight {

/// Ground in no room.
inline constexpr int kOutside = -1;

/// Where several hold a place the last of the list does.
struct RoomGround {
  geometry::Ring outline;
  int tag = 0;
};

struct ThroughSight {
  Span time;
  int from = kOutside;        ///< the room the pupil is in
  int room = kOutside;        ///< the room whose ground is seen
  std::vector<int> openings;  ///< tags of the openings passed, in the order in which the rays pass them
  bool operator==(const ThroughSight&) const = default;
};

struct ThroughSpec {
  Span take;
  double step = 0.1;            ///< seconds between samples
  double floor = 0, top = 1.8;  ///< ground counts as seen when a standing person there would be
  double range = 60;            ///< metres
  double sectorDegrees = 0.5;   ///< between rays
};

/// Directly and through openings only; sampled in time, in direction and every quarter metre along a ray.
///
/// Ensures   (1) one span for each unbroken time, room and way of openings, in order of start, then room, then way;
///           (2) a span runs from the step that first has it to the step that no longer does.
/// Fails     when cancelled: nothing.
std::optional<std::vector<ThroughSight>> throughSights(const Scene& scene, const std::vector<RoomGround>& rooms,
                                                       const EyeAt& eye, const ThroughSpec& spec,
                                                       const base::Cancel& cancel = {});

}  // namespace wend::sight
