/// The take as it is once everybody goes the way that was found for them: what depends on where the crew is, and cannot
/// be known while some of them are nowhere.
#pragma once

#include "core/answers/routes.h"

namespace wend::answers {

/// A found route as marks of a drawn one: a mark for each stand and for each corner of a walk.
/// Requires  a route that was found.
std::vector<plan::Mark> marksOf(const FoundRoute& route, double length);

/// The take with the routes found drawn in, whose they are in `routed`. Null where none was found.
TakePtr takeOnRoutes(const Take& take, const FoundRoutes& routes, std::vector<std::string>& routed);

/// Links, poles, shadows, lanes and whom turned glass shows anew, those whose route was found being where it leads; who
/// that concerns stands in `routed`. False when there is nothing of the kind, or when cancelled: then the evidence is as
/// it was. `forRules` is what the rules read then: samples, steps over edges and clearances have those people in them,
/// too. The evidence itself keeps its own, for they are of the take as it is planned and taken over by the next edit as
/// such.
bool putOnFoundRoutes(const Take& take, const FoundRoutes& routes, const base::Cancel& cancel, Evidence& evidence,
                      Evidence* forRules = nullptr);

/// The answers of the plan with every route found drawn into it, so that those people are where check, draw and window
/// put them. The same answers where none was found. Fails when cancelled.
base::Result<AnswersPtr> drawnOut(const AnswersPtr& answers, const base::Cancel& cancel = {});

}  // namespace wend::answers
