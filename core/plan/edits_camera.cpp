#include "core/plan/edits_camera.h"

#include "core/plan/edits_parts.h"

namespace wend::plan {

using base::Problem;
using base::Result;

namespace {

Trouble backwards(double low, double high, const std::string& where) {
  if (!(low > high)) return std::nullopt;
  return Problem{"range-backwards", where, base::shortest(low) + " to " + base::shortest(high), "the smaller end first",
                 "Type the two the other way round."};
}

Result<Plan> changedFocus(const Plan& plan, auto change) {
  return changedPart(plan, &Plan::focus, "/focus", change);
}

}  // namespace

Result<Plan> gateSet(const Plan& plan, double width, double height) {
  return changedCamera(plan, [&](Camera& c) { c.gate = {width, height}; });
}

Result<Plan> squeezeSet(const Plan& plan, double squeeze) {
  return changedCamera(plan, [&](Camera& c) { c.squeeze = squeeze; });
}

Result<Plan> aspectSet(const Plan& plan, std::optional<double> aspect) {
  return changedCamera(plan, [&](Camera& c) { c.aspect = aspect; });
}

Result<Plan> blurCircleSet(const Plan& plan, double diameter) {
  return changedCamera(plan, [&](Camera& c) { c.blurCircle = diameter; });
}

Result<Plan> exposureIndexSet(const Plan& plan, double index) {
  return changedCamera(plan, [&](Camera& c) { c.exposureIndex = index; });
}

Result<Plan> shutterSet(const Plan& plan, double degrees) {
  return changedCamera(plan, [&](Camera& c) { c.shutterDeg = degrees; });
}

Result<Plan> densitySet(const Plan& plan, double stops) {
  return changedCamera(plan, [&](Camera& c) { c.ndStops = stops; });
}

Result<Plan> meterSet(const Plan& plan, Receptor receptor, double constant) {
  return changedCamera(plan, [&](Camera& c) {
    c.meter.receptor = receptor;
    c.meter.constant = constant;
  });
}

Result<Plan> rigKindSet(const Plan& plan, RigKind kind) {
  return changedCamera(plan, [&](Camera& c) { c.rig.kind = kind; });
}

Result<Plan> rigRadiusSet(const Plan& plan, double radius) {
  return changedCamera(plan, [&](Camera& c) { c.rig.radius = radius; });
}

Result<Plan> payloadSet(const Plan& plan, double least, double most) {
  return changedCamera(plan, [&](Camera& c) {
    c.rig.payload = {least, most};
    return backwards(least, most, "/camera/rig/payload");
  });
}

Result<Plan> rigItemsSet(const Plan& plan, std::vector<RigItem> items) {
  return changedCamera(plan, [&](Camera& c) { c.rig.items = std::move(items); });
}

Result<Plan> bodiesSet(const Plan& plan, std::vector<CarriedBody> bodies) {
  return changedCamera(plan, [&](Camera& c) { c.bodies = std::move(bodies); });
}

Result<Plan> trailingCableSet(const Plan& plan, std::optional<TrailingCable> cable) {
  return changedCamera(plan, [&](Camera& c) { c.cable = std::move(cable); });
}

Result<Plan> lensSet(const Plan& plan, std::optional<Lens> lens) {
  if (lens) {
    if (Trouble trouble = settle(plan.lens.value_or(Lens{}), *lens, "/lens")) return *trouble;
    if (Trouble trouble = backwards(lens->focal[0], lens->focal[1], "/lens/focal")) return *trouble;
    if (Trouble trouble = backwards(lens->stop[0], lens->stop[1], "/lens/stop")) return *trouble;
  }
  if (plan.lens == lens) return plan;
  Plan next = plan;
  next.lens = std::move(lens);
  return kept(plan, std::move(next));
}

Result<Plan> lensNamed(const Plan& plan, const std::string& name) {
  return changedLens(plan, [&](Lens& lens) {
    lens.name = name;
    return textTrouble(name, "/lens/name");
  });
}

Result<Plan> lensFocalSet(const Plan& plan, double shortest, double longest) {
  return changedLens(plan, [&](Lens& lens) {
    lens.focal = {shortest, longest};
    return backwards(shortest, longest, "/lens/focal");
  });
}

Result<Plan> lensStopSet(const Plan& plan, double widest, double smallest) {
  return changedLens(plan, [&](Lens& lens) {
    lens.stop = {widest, smallest};
    return backwards(widest, smallest, "/lens/stop");
  });
}

Result<Plan> closeFocusSet(const Plan& plan, double metres) {
  return changedLens(plan, [&](Lens& lens) { lens.closeFocus = metres; });
}

Result<Plan> pupilAheadSet(const Plan& plan, double metres) {
  return changedLens(plan, [&](Lens& lens) { lens.pupilAhead = metres; });
}

Result<Plan> transmissionSet(const Plan& plan, OverFocal share) {
  return changedLens(plan, [&](Lens& lens) { lens.transmission = std::move(share); });
}

Result<Plan> breathingSet(const Plan& plan, OverFocal share) {
  return changedLens(plan, [&](Lens& lens) { lens.breathing = std::move(share); });
}

Result<Plan> balanceSet(const Plan& plan, OverFocal metres) {
  return changedLens(plan, [&](Lens& lens) { lens.balance = std::move(metres); });
}

Result<Plan> barrelLimitSet(const Plan& plan, double degreesPerSecond) {
  return changedLens(plan, [&](Lens& lens) { lens.limits.focusDegPerSecond = degreesPerSecond; });
}

Result<Plan> irisLimitSet(const Plan& plan, double stopsPerSecond) {
  return changedLens(plan, [&](Lens& lens) { lens.limits.irisStopsPerSecond = stopsPerSecond; });
}

Result<Plan> zoomLimitSet(const Plan& plan, double percentPerSecond) {
  return changedLens(plan, [&](Lens& lens) { lens.limits.zoomPercentPerSecond = percentPerSecond; });
}

Result<Plan> focusDistanceSet(const Plan& plan, DistanceKind kind) {
  return changedFocus(plan, [&](Focus& focus) { focus.distance = kind; });
}

Result<Plan> blurShareSet(const Plan& plan, double share) {
  return changedFocus(plan, [&](Focus& focus) { focus.blurShare = share; });
}

Result<Plan> slackShareSet(const Plan& plan, double share) {
  return changedPart(plan, &Plan::zoom, "/zoom", [&](Zoom& zoom) { zoom.slackShare = share; });
}

Result<Plan> slackStopsSet(const Plan& plan, double stops) {
  return changedPart(plan, &Plan::iris, "/iris", [&](Iris& iris) { iris.slackStops = stops; });
}

Result<Plan> exposeForSet(const Plan& plan, const std::string& performer) {
  return changedPart(plan, &Plan::iris, "/iris", [&](Iris& iris) { iris.exposePerformer = performer; });
}

Result<Plan> pullsSet(const Plan& plan, std::vector<HandPull> pulls) {
  return changedFocus(plan, [&](Focus& focus) { focus.pulls = std::move(pulls); });
}

Result<Plan> wobbleSet(const Plan& plan, Wobble wobble) {
  return changedPart(plan, &Plan::wobble, "/wobble", [&](Wobble& old) { old = std::move(wobble); });
}

Result<Plan> sightRulesSet(const Plan& plan, SightRules rules) {
  return changedPart(plan, &Plan::sightRules, "/sightRules", [&](SightRules& old) { old = std::move(rules); });
}

}  // namespace wend::plan
