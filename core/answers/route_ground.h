/// The ground as one member of the crew finds it, step by step: what the lens sees and what is taken.
#pragma once

#include "core/answers/take.h"
#include "core/crew/ground_time.h"
#include "core/sight/ground_map.h"

namespace wend::answers {

using geometry::Span;

/// True for those who go along with the camera.
bool isCarried(const plan::Plan& plan, std::size_t member);

/// The floors of the plan and the height of everyone's crown over them, metres above the datum.
struct FloorRange {
  double lowest = 0, highest = 0;
};
FloorRange floorsOf(const plan::Plan& plan);

/// The steps a member's ground is cut into: five cells of their pace each.
crew::StepClock clockOf(const Take& take, const geometry::Grid& grid, std::size_t member);

/// Barred by sight over [seen - early, seen + late]; taken by the set, gear, the rig, those carried, performers and the
/// drawn crew but for who stands in a shelter that holds one more, and closed ground (`closed_ground.h`). Nobody is
/// in a shelter that the drawn fill, or stands in an exit lane.
/// From pieces on their way the rule "clearance-tight" is kept at least.
/// `room` metres more than the member's radius are kept from all that is taken but closed ground.
/// Requires  a map for bodies at least as wide and as tall as the member.
crew::GroundTime memberGround(const Take& take, const sight::GroundMap& map, std::size_t member, double room = 0);

/// Where a member may crouch unseen: `ground`'s low map is Yes in the shelters, wherever and whenever `low` does not
/// see somebody there who is as tall as they crouch, but for the spans in which they have to be upright.
/// Requires  a map for bodies at least as wide as the member and as tall as they crouch, on the ground's grid.
void letCrouch(const Take& take, const sight::GroundMap& low, std::size_t member, const std::vector<Span>& upright,
               crew::GroundTime& ground);

/// What one steps over rather than round, metres.
inline constexpr double kStepOver = 0.15;

/// How far off known ground a doorway may lead, metres: its floor belongs to no room, and walls between rooms drawn
/// along their faces may be half a metre thick.
inline constexpr double kDoorway = 0.25;

/// The outlines that somebody has said something of: rooms, and areas that may be stood on.
std::vector<std::vector<Point>> knownOutlines(const plan::Plan& plan);
/// Metres from an outline, or from a shelter; 0 in it.
double offOutline(Point p, const std::vector<Point>& outline);
double offShelter(Point p, const plan::Shelter& shelter);
/// Metres from the nearest of them and of the shelters; 0 in one of them.
double offKnownGround(Point p, const std::vector<std::vector<Point>>& outlines, const plan::Plan& plan);

/// Where somebody may be sent.
struct KnownGround {
  crew::CellTimes stand, walk;
};

/// In a room, and outside of every room where a shelter lies or an area with another use than `hazard`, `keepOut` or
/// `exitLane`: what lies elsewhere nobody has said. Who walks may come a quarter of a metre off all that, which is how
/// doorways are passed, whose ground belongs to no room: walls between rooms drawn along their faces may be half a
/// metre thick. That is less than a body's radius, so that nobody walks to and fro behind a wall instead. A plan
/// without rooms says nothing of what lies outside: nothing.
std::optional<KnownGround> knownGround(const plan::Plan& plan, const geometry::Grid& grid,
                                       const crew::StepClock& clock);

/// How many of the drawn crew stand in a shelter at t.
int drawnIn(const Take& take, const std::string& shelter, double t);

}  // namespace wend::answers
