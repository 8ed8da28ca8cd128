/// Places on legs that follow from their own two marks: straight ones with their `via` points, and arcs.
///
/// Even pace only. A smooth curve or an eased pace hangs on the neighbours as well: ask the path (core/motion).
#pragma once

#include "core/plan/people.h"

namespace wend::plan {

/// The point `share` of the way along, by length. Requires a straight leg or an arc.
Point pointOnLeg(const Leg& leg, Point from, Point to, double share);

/// How far along, 0 to 1 by length, the point of the leg nearest to `near` lies. For arcs of more than one turn, on the
/// turn in the middle. Smooth legs answer for the polyline through their `via` points.
double shareOnLeg(const Leg& leg, Point from, Point to, Point near);

/// A leg cut in two at `at`, a place near the point `share` of the way: shape and pace kept, `via` points in the half
/// they lie in, arcs about one centre whose sweeps add up.
struct LegHalves {
  Leg first, second;
};
LegHalves halvesOfLeg(const Leg& leg, Point from, Point to, Point at, double share);

/// One leg for two that follow each other, for when the mark between them goes.
Leg joinedLeg(const Leg& first, const Leg& second);

}  // namespace wend::plan
