/// What crew members need, as ground and as a check of a way. Plan metres, seconds from the take's start.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/answers/routes.h"
#include "core/crew/ground_time.h"

namespace wend::answers {

/// One need over the ground: Yes where it is met.
struct NeedGround {
  std::string words;  ///< "within 9.0 m of the camera, 0.0–143.0 s"
  crew::CellTimes met;
};

/// Ensures   near, stays and a pole's reach are met at every instant of a Yes; seeing, a free line for the pole and a
///           link within its budget at both ends of the step, by rays half a degree apart. A pole reaches who speaks
///           where its microphone may hang within the gap, which may be out in front of the face; where the frame is
///           too high for the gap from everywhere it is to reach the nearest it may come, and `needBreaks` tells.
/// Fails     when cancelled: nothing.
std::optional<std::vector<NeedGround>> needGrounds(const Take& take, std::size_t member, const geometry::Grid& grid,
                                                   const crew::StepClock& clock, const base::Cancel& cancel);

/// The spans in which what a member needs is worked out for somebody who
/// stands: nobody is planned to crouch then.
std::vector<geometry::Span> uprightSpans(const Take& take, std::size_t member);

/// Needs nobody plans for or checks, in words, each with why, and shelters to stay in that are not all to be stood in.
std::vector<std::string> needsLeftOut(const plan::Plan& plan, std::size_t member);

/// When a member has to stay in that shelter.
std::vector<geometry::Span> staySpans(const Take& take, std::size_t member, const std::string& shelter);

/// Whether all that a member needs is met at a place and time. The take must outlive it.
std::function<bool(Point, double t)> needsMet(const Take& take, std::size_t member);

/// Whether a member who stands there sees whoever the lens is on, past walls, pieces and leaves. Where the lens is on
/// nobody who is there, nothing is missed.
bool seesSubject(const Take& take, std::size_t member, Point pos, double t);

/// Where a way fails what a member needs, frame by frame; in order of time, needs in their order.
std::vector<RouteBreak> needBreaks(const Take& take, std::size_t member, const std::function<Point(double t)>& at);

/// The same of every drawn route, those who go along with the camera aside; in the plan's order.
std::vector<snags::NeedUnmet> unmetNeeds(const Take& take);

}  // namespace wend::answers
