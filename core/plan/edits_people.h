/// Edits of performers, crew, props, shelters, gear and fixtures. The laws of edits_marks.h hold. Whatever has no
/// function here goes through replaced() of edits_entities.h.
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"

namespace wend::plan {

base::Result<Plan> performerNamed(const Plan& plan, const std::string& performer, const std::string& name);
/// The letter figures and marks carry.
base::Result<Plan> performerLettered(const Plan& plan, const std::string& performer, const std::string& letter);
base::Result<Plan> statureSet(const Plan& plan, const std::string& performer, double stature);
base::Result<Plan> performerRadiusSet(const Plan& plan, const std::string& performer, double radius);

base::Result<Plan> crewRoleSet(const Plan& plan, const std::string& crew, const std::string& role);
base::Result<Plan> crewRadiusSet(const Plan& plan, const std::string& crew, double radius);
/// Standing and crouching heights.
base::Result<Plan> crewHeightsSet(const Plan& plan, const std::string& crew, double height, double crouch);
base::Result<Plan> crewSpeedSet(const Plan& plan, const std::string& crew, double speed);
base::Result<Plan> crewNeedsSet(const Plan& plan, const std::string& crew, std::vector<Need> needs);

/// An entry of a prop's track at a place of its own; it is no longer carried.
base::Result<Plan> movedProp(const Plan& plan, const std::string& prop, std::size_t entry, Point pos);
base::Result<Plan> propHeightSet(const Plan& plan, const std::string& prop, std::size_t entry, double height);
/// Carried by a performer from that entry on.
base::Result<Plan> propCarried(const Plan& plan, const std::string& prop, std::size_t entry,
                               const std::string& performer);

/// The shelter at `pos`, with everybody who stands in it; arcs at those marks are re-fitted (arc_leg.h).
base::Result<Plan> movedShelter(const Plan& plan, const std::string& shelter, Point pos);
base::Result<Plan> shelterSized(const Plan& plan, const std::string& shelter, double radius, int holds);

base::Result<Plan> movedGear(const Plan& plan, const std::string& gear, Point pos);
base::Result<Plan> gearSized(const Plan& plan, const std::string& gear, double radius, double height);

base::Result<Plan> movedFixture(const Plan& plan, const std::string& fixture, Point pos);
base::Result<Plan> fixtureHeightSet(const Plan& plan, const std::string& fixture, double height);
base::Result<Plan> fixtureAimed(const Plan& plan, const std::string& fixture, double bearing, double tilt);
base::Result<Plan> fixtureOutputSet(const Plan& plan, const std::string& fixture, BeamOutput output);

}  // namespace wend::plan
