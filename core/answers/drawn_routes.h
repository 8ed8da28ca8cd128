/// Drawn routes held against the take: where they break, and by how much each walk may be shifted.
///
/// Frame     plan metres, seconds from the take's start.
#pragma once

#include <optional>
#include <vector>

#include "core/answers/routes.h"
#include "core/crew/route.h"

namespace wend::answers {

struct DrawnReport {
  crew::DrawnRoute route;
  crew::RouteReport report;
};

/// Ensures   (1) breaks are those of the way as drawn, needs aside (`needBreaks`); (2) a walk started at its latest, or
///           ended at its earliest, keeps what the person needs and the clearance "clearance-red" from whatever moves,
///           where it does so as drawn, and else overlaps nothing that moves; what stands keeps its distance anyway.
/// Error     as `DrawnGround`; what moves is looked at every quarter of a second.
/// Requires  a member with a drawn way, whom the camera does not carry; the take to outlive what is given.
DrawnReport drawnReportOf(const Take& take, std::size_t member);

/// Every walk that may start later than drawn, in the plan's order.
std::vector<DrawnSlip> drawnSlips(const Take& take);

}  // namespace wend::answers
