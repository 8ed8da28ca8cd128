/// Drawn routes held against the take: where they break, and by how much each walk may be shifted.
///
/// Frame     plan metres, seconds from the take's start.
#pragma once

#include <optional>
#include <vector>

#include "core/answers/routes.h"
#include "core/answers/take_quarters.h"
#include "core/crew/route.h"

namespace wend::answers {

/// A drawn way as a route. Requires the track to outlive it.
crew::DrawnRoute drawnRouteOf(const motion::Track& track, double length);

/// Ensures   (1) breaks are those of the way as drawn, needs aside (`needBreaks`); (2) a walk started at its latest, or
///           ended at its earliest, keeps what the person needs and the clearance "clearance-red" from whatever moves,
///           where it does so as drawn, and else overlaps nothing that moves; what stands keeps its distance anyway.
/// Error     as `DrawnGround`; what moves is looked at every quarter of a second.
/// Requires  a member with a drawn way, whom the camera does not carry.
crew::RouteReport drawnReportOf(TakeQuarters& quarters, std::size_t member);

/// Those of everybody with a drawn way whom the camera does not carry, in the plan's order.
std::vector<DrawnChecked> drawnChecked(const Take& take);

/// How late walks of the routes found may start and how early end, as they would be said of the same routes drawn: one
/// promise for a route, before it is taken over and after. Notes where nothing is said, and why.
void promiseAsDrawn(const Take& take, FoundRoutes& routes);

/// Every walk that may start later than drawn, in the plan's order.
std::vector<DrawnSlip> slipsOf(const std::vector<DrawnChecked>& drawn);

}  // namespace wend::answers
