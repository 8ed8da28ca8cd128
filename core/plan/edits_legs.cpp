#include "core/plan/edits_legs.h"

#include "core/plan/arc_leg.h"
#include "core/plan/edits_parts.h"

namespace wend::plan {

namespace {

using base::Problem;
using base::Result;

constexpr double kQuarter = 90;

/// Calls change(leg, from, to) when the mark has a next one.
template <class Change>
Result<Plan> changedLeg(const Plan& plan, const MarkRef& ref, Change&& change) {
  return changedMarkOf(plan, ref, [&](std::vector<Mark>& marks, std::size_t i) -> Trouble {
    if (i + 1 == marks.size())
      return Problem{"no-leg", "", "the last mark", "a mark with one after it", "Add a mark after it first."};
    const Point from = placeOf(plan, marks[i]), to = placeOf(plan, marks[i + 1]);
    return troubleOf([&](Leg& leg) { return change(leg, from, to); }, marks[i].leg);
  });
}

bool onePlace(Point from, Point to) {
  return geometry::distance(from, to) < kFullTurnEnds;
}

bool wholeTurns(double sweep) {
  return sweep == 360 * std::round(sweep / 360);
}

Trouble sweepLeg(Leg& leg, Point from, Point to, double sweep) {
  const bool whole = wholeTurns(sweep);
  if (sweep == 0 || whole != onePlace(from, to))
    return Problem{"arc-sweep", "", base::shortest(sweep) + " degrees",
                   onePlace(from, to) ? "whole turns between marks in one place" : "a turn that leads to the next mark",
                   onePlace(from, to) ? "Turn by 360 or -360 degrees, or move one of the marks."
                                      : "Turn by more or less than whole turns, or move the marks together."};
  if (!whole) leg.centre = centreOfSweep(from, to, sweep);
  if (whole && leg.shape != LegShape::arc)
    return Problem{"arc-centre", "", "no centre to turn about", "an arc", "Set the centre first."};
  leg.shape = LegShape::arc;
  leg.sweep = sweep;
  leg.via.clear();
  return std::nullopt;
}

}  // namespace

Result<Plan> legShaped(const Plan& plan, const MarkRef& from, LegShape shape) {
  return changedLeg(plan, from, [&](Leg& leg, Point a, Point b) -> Trouble {
    if (shape == leg.shape) return std::nullopt;
    if (shape == LegShape::arc) {
      if (onePlace(a, b))
        return Problem{"arc-centre", "", "two marks in one place", "a centre to turn about", "Set the centre instead."};
      return sweepLeg(leg, a, b, kQuarter);
    }
    leg.shape = shape;
    leg.centre = {};
    leg.sweep = 0;
    return std::nullopt;
  });
}

Result<Plan> legPaced(const Plan& plan, const MarkRef& from, Pace pace) {
  return changedLeg(plan, from, [&](Leg& leg, Point, Point) { leg.pace = pace; });
}

Result<Plan> legSwept(const Plan& plan, const MarkRef& from, double sweep) {
  if (!std::isfinite(sweep)) sweep = 0;
  return changedLeg(plan, from,
                    [&](Leg& leg, Point a, Point b) { return sweepLeg(leg, a, b, quantised(sweep, kinds::kBearing)); });
}

Result<Plan> legCentred(const Plan& plan, const MarkRef& from, Point centre) {
  return changedLeg(plan, from, [&](Leg& leg, Point a, Point b) {
    const double near = leg.shape == LegShape::arc ? leg.sweep : onePlace(a, b) ? 360 : 0;
    leg.shape = LegShape::arc;
    leg.via.clear();
    leg.centre = quantised(centre);
    const bool onMark = geometry::distance(a, centre) < kArcLeast || geometry::distance(b, centre) < kArcLeast;
    if (!onMark) leg.sweep = sweepBetween(a, b, leg.centre, near);
  });
}

Result<Plan> legVia(const Plan& plan, const MarkRef& from, std::vector<Point> via) {
  return changedLeg(plan, from, [&](Leg& leg, Point, Point) -> Trouble {
    if (leg.shape == LegShape::arc && !via.empty())
      return Problem{"arc-via", "", "an arc", "a straight or smooth leg", "Make the leg straight or smooth first."};
    leg.via = via;
    return std::nullopt;
  });
}

}  // namespace wend::plan
