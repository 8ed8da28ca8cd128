/// The take as it is once everybody goes the way that was found for them: what depends on where the crew is, and cannot
/// be known while some of them are nowhere.
#pragma once

#include "core/answers/routes.h"

namespace wend::answers {

/// A found route as marks of a drawn one: a mark for each stand and for each corner of a walk.
/// Requires  a route that was found.
std::vector<plan::Mark> marksOf(const FoundRoute& route, double length);

/// Links, poles and shadows anew, those whose route was found being where it leads; who that concerns stands in
/// `routed`. False when there is nothing of the kind, or when cancelled: then the evidence is as it was.
bool putOnFoundRoutes(const Take& take, const FoundRoutes& routes, const base::Cancel& cancel, Evidence& evidence);

}  // namespace wend::answers
