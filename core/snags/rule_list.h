/// The rules' functions, one a line: what each reports stands at the top of its file rule_<name>.cpp.
#pragma once

#include "core/snags/rules.h"

namespace wend::snags {

Findings crewSeen(const Evidence& evidence);
Findings routeImpossible(const Evidence& evidence);
Findings needUnmet(const Evidence& evidence);
Findings subjectLost(const Evidence& evidence);
Findings hotFocus(const Evidence& evidence);
Findings tooClose(const Evidence& evidence);
Findings barrelFast(const Evidence& evidence);
Findings slackUnmet(const Evidence& evidence);
Findings exposure(const Evidence& evidence);
Findings panFast(const Evidence& evidence);
Findings clearance(const Evidence& evidence);
Findings bodiesMeet(const Evidence& evidence);
Findings backwards(const Evidence& evidence);
Findings speed(const Evidence& evidence);
Findings doorLate(const Evidence& evidence);
Findings throughSight(const Evidence& evidence);
Findings stepCrossed(const Evidence& evidence);
Findings markInFrame(const Evidence& evidence);
Findings jump(const Evidence& evidence);
Findings zoomClipped(const Evidence& evidence);
Findings linkLost(const Evidence& evidence);
Findings linkThin(const Evidence& evidence);
Findings linkLate(const Evidence& evidence);
Findings boomGap(const Evidence& evidence);
Findings boomReach(const Evidence& evidence);
Findings boomLamp(const Evidence& evidence);
Findings shadow(const Evidence& evidence);
Findings surfaceShadow(const Evidence& evidence);
Findings cableShutIn(const Evidence& evidence);
Findings cableShort(const Evidence& evidence);
Findings exitLane(const Evidence& evidence);
Findings hazard(const Evidence& evidence);
Findings keepOut(const Evidence& evidence);
Findings shelterFull(const Evidence& evidence);
Findings lensNear(const Evidence& evidence);
Findings lockUp(const Evidence& evidence);
Findings noisyStep(const Evidence& evidence);
Findings rampSeen(const Evidence& evidence);
Findings handoverHot(const Evidence& evidence);
Findings lensLimits(const Evidence& evidence);
Findings zoomTurns(const Evidence& evidence);
Findings zoomBalance(const Evidence& evidence);
Findings glassMirror(const Evidence& evidence);
Findings glassShows(const Evidence& evidence);
Findings gloss(const Evidence& evidence);
Findings sunInLens(const Evidence& evidence);
Findings sunShadow(const Evidence& evidence);
Findings facesApart(const Evidence& evidence);
Findings opensAtHotPull(const Evidence& evidence);
Findings distancesApart(const Evidence& evidence);
Findings flicker(const Evidence& evidence);
Findings lightUnknown(const Evidence& evidence);

}  // namespace wend::snags
