/// A found route as a drawn one, so that the same code tells how late each walk may start and how early end.
#pragma once

#include "core/crew/route_search.h"

namespace wend::crew {

/// Where the route stands, as steps; a walk lies between one stand and the next. The first and the last may be empty.
std::vector<Steps> standsOf(const Route& route);

/// The route over the ground's clock, straight and even from instant to instant.
DrawnRoute drawnRoute(const Route& route, const geometry::Grid& grid, const StepClock& clock);

/// The corners of one walk or stand, straight stretches joined: where somebody is at each of their times.
struct RoutePoint {
  double time = 0;  ///< seconds from the take's start
  Point at;
};

/// Ensures   straight and even between points gives the route again, to 1 um.
std::vector<RoutePoint> cornersOf(const Route& route, Steps steps, const geometry::Grid& grid, const StepClock& clock);

/// The most metres of any step over its seconds.
double peakSpeed(const Route& route, const GroundTime& ground);

/// The walks with their metres, speeds, latest leave and earliest arrival; `reportOf` of the drawn route.
/// Ensures   on the ground it was found on, needs aside, the route holds.
RouteReport reportOf(const Route& route, const GroundTime& ground, double speed, double look = 0.1);

}  // namespace wend::crew
