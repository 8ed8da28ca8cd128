/// Ground that is closed to the crew by the use of its areas: hazards and what is to be kept out of, which nobody
/// enters, and exit lanes, which somebody may walk through but not stand in.
///
/// Units     plan metres.
/// Safety    what an area is used as is what the plan says; what it has to be, whoever is in charge of the place says.
#pragma once

#include <vector>

#include "core/plan/plan.h"

namespace wend::answers {

/// A hazard, or kept out of.
bool isClosed(const plan::Area& area);
/// An exit lane.
bool isLane(const plan::Area& area);

/// Whether a body of that radius overlaps an outline; who only reaches its edge does not.
bool touches(const std::vector<geometry::Point>& ring, geometry::Point centre, double radius);

/// Whether a body of that radius touches no closed area there.
bool mayBe(const plan::Plan& plan, geometry::Point centre, double radius);
/// Nor any exit lane.
bool mayStand(const plan::Plan& plan, geometry::Point centre, double radius);

}  // namespace wend::answers
