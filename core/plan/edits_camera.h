/// Edits of camera, lens and slack: single values, as they are typed. The laws of edits_marks.h hold.
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"

namespace wend::plan {

/// Width and height of the exposed area, mm.
base::Result<Plan> gateSet(const Plan& plan, double width, double height);
base::Result<Plan> squeezeSet(const Plan& plan, double squeeze);
/// Of the delivered frame; nothing: the whole gate.
base::Result<Plan> aspectSet(const Plan& plan, std::optional<double> aspect);
/// Diameter, mm.
base::Result<Plan> blurCircleSet(const Plan& plan, double diameter);
base::Result<Plan> exposureIndexSet(const Plan& plan, double index);
base::Result<Plan> shutterSet(const Plan& plan, double degrees);
base::Result<Plan> densitySet(const Plan& plan, double stops);
base::Result<Plan> meterSet(const Plan& plan, Receptor receptor, double constant);
base::Result<Plan> rigKindSet(const Plan& plan, RigKind kind);
base::Result<Plan> rigRadiusSet(const Plan& plan, double radius);
/// Least and most the rig carries, kg; both 0: unknown.
base::Result<Plan> payloadSet(const Plan& plan, double least, double most);
base::Result<Plan> rigItemsSet(const Plan& plan, std::vector<RigItem> items);
base::Result<Plan> bodiesSet(const Plan& plan, std::vector<CarriedBody> bodies);

/// The cable that trails from the camera; nothing: none.
base::Result<Plan> trailingCableSet(const Plan& plan, std::optional<TrailingCable> cable);

/// Another lens; nothing: none, and sight is unknown.
base::Result<Plan> lensSet(const Plan& plan, std::optional<Lens> lens);
base::Result<Plan> lensNamed(const Plan& plan, const std::string& name);
/// Shortest and longest, mm; equal for a prime.
base::Result<Plan> lensFocalSet(const Plan& plan, double shortest, double longest);
/// Widest and smallest T-number.
base::Result<Plan> lensStopSet(const Plan& plan, double widest, double smallest);
base::Result<Plan> closeFocusSet(const Plan& plan, double metres);
base::Result<Plan> pupilAheadSet(const Plan& plan, double metres);
/// The share of the light it passes: one for every focal length, or rows that rise in focal length.
base::Result<Plan> transmissionSet(const Plan& plan, OverFocal share);
base::Result<Plan> breathingSet(const Plan& plan, OverFocal share);
base::Result<Plan> balanceSet(const Plan& plan, OverFocal metres);
base::Result<Plan> barrelLimitSet(const Plan& plan, double degreesPerSecond);
base::Result<Plan> irisLimitSet(const Plan& plan, double stopsPerSecond);
base::Result<Plan> zoomLimitSet(const Plan& plan, double percentPerSecond);

base::Result<Plan> focusDistanceSet(const Plan& plan, DistanceKind kind);
/// Share of the blur circle focus may use up.
base::Result<Plan> blurShareSet(const Plan& plan, double share);
/// Share of the focal length zoom may be off.
base::Result<Plan> slackShareSet(const Plan& plan, double share);
base::Result<Plan> slackStopsSet(const Plan& plan, double stops);
/// Whom the iris is for; empty: whoever the focus is on.
base::Result<Plan> exposeForSet(const Plan& plan, const std::string& performer);
base::Result<Plan> pullsSet(const Plan& plan, std::vector<HandPull> pulls);

base::Result<Plan> wobbleSet(const Plan& plan, Wobble wobble);
base::Result<Plan> sightRulesSet(const Plan& plan, SightRules rules);

}  // namespace wend::plan
