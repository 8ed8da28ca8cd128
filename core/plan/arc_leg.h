/// Arc legs: a leg that turns about a centre by a sweep, clockwise positive. An arc is *true* when both its ends are
/// equally far from the centre and the sweep is the angle between them, turns included.
///
/// Frame     plan axes, metres; sweeps in degrees, bearings clockwise from plan north.
#pragma once

#include <optional>

#include "core/base/problem.h"
#include "core/plan/people.h"

namespace wend::plan {

inline constexpr double kArcRadii = 0.005;     ///< metres the two radii may differ
inline constexpr double kArcSweep = 0.5;       ///< degrees the sweep may be off
inline constexpr double kArcLeast = 0.01;      ///< metres: smaller radii do not turn about anything
inline constexpr double kFullTurnEnds = 1e-3;  ///< metres: ends nearer than this are one place

/// The turn about `centre` that leads from one end to the other, congruent to the true one and nearest to `near`.
/// Requires neither end on the centre.
double sweepBetween(Point from, Point to, Point centre, double near);

/// The point equally far from both ends that lies nearest to `near`: how a dragged centre handle stays honest. For ends
/// in one place every point is, and `near` comes back.
Point nearestCentre(Point from, Point to, Point near);

/// The centre about which a turn by `sweep` leads from one end to the other.
/// Requires ends apart and sweep no multiple of 360.
Point centreOfSweep(Point from, Point to, double sweep);

/// True when the leg is an arc by whole turns: its two ends are one place.
bool isFullTurn(const Leg& leg, Point from, Point to);

/// What keeps the arc from being true, with where in the plan; nothing for a true arc and for other shapes.
std::optional<base::Problem> arcProblem(const Leg& leg, Point from, Point to, const std::string& where);

/// Makes an arc true again after an end has moved. Ends apart: the centre goes to the nearest point equally far from
/// both, so an end dragged along its own circle keeps the centre, and the sweep becomes the angle between the ends
/// nearest to what it was. Ends in one place: the centre stays and the sweep becomes the nearest number of whole turns,
/// which arcProblem reports when it is none. Other shapes are left alone.
void refit(Leg& leg, Point from, Point to);

}  // namespace wend::plan
