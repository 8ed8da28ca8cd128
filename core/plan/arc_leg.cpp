#include "core/plan/arc_leg.h"

#include <cmath>

#include "core/base/text.h"
#include "core/plan/quantise.h"

namespace wend::plan {

using geometry::bearingOf;
using geometry::distance;
using geometry::radians;
using geometry::Vec;

/// Metres two radii differ by when only the step of a centre's coordinates keeps them apart: such an arc is fitted, and
/// fitting it again must not let its centre creep.
constexpr double kSteps = 3e-4;

double sweepBetween(Point from, Point to, Point centre, double near) {
  return geometry::unwrapped(bearingOf(to - centre) - bearingOf(from - centre), near);
}

Point nearestCentre(Point from, Point to, Point near) {
  if (distance(from, to) < kFullTurnEnds) return near;
  const Vec across = geometry::unit(to - from);
  const Point middle = geometry::lerp(from, to, 0.5);
  return near - across * dot(near - middle, across);
}

Point centreOfSweep(Point from, Point to, double sweep) {
  // Going clockwise the centre lies on the right hand; cot of the half sweep changes sign where it must pass behind.
  const Point middle = geometry::lerp(from, to, 0.5);
  return middle - geometry::left(to - from) * (0.5 / std::tan(radians(sweep / 2)));
}

bool isFullTurn(const Leg& leg, Point from, Point to) {
  return leg.shape == LegShape::arc && distance(from, to) < kFullTurnEnds;
}

std::optional<base::Problem> arcProblem(const Leg& leg, Point from, Point to, const std::string& where) {
  if (leg.shape != LegShape::arc) return std::nullopt;
  const double first = distance(from, leg.centre), second = distance(to, leg.centre);
  if (first < kArcLeast || second < kArcLeast)
    return base::Problem{"arc-radius", where + "/centre", "a centre on the mark itself", "a radius of 1 cm or more",
                         "Move the centre away from the marks, or make the leg straight."};
  if (std::abs(first - second) > kArcRadii) {
    const Point best = quantised(nearestCentre(from, to, leg.centre));
    return base::Problem{"arc-radii", where + "/centre",
                         "radii of " + base::fixed(first, 3) + " m and " + base::fixed(second, 3) + " m",
                         "both ends equally far from the centre within 5 mm",
                         "The nearest centre that is equally far from both ends is " + base::shortest(best.x) + ", " +
                             base::shortest(best.y) + "."};
  }
  const double sweep = sweepBetween(from, to, leg.centre, leg.sweep);
  if (std::abs(sweep - leg.sweep) > kArcSweep || std::abs(leg.sweep) < 1e-9)
    return base::Problem{"arc-sweep", where + "/sweep", base::shortest(leg.sweep) + " degrees",
                         std::abs(sweep) < 1e-9 ? std::string("a whole turn, because both ends are one place")
                                                : base::fixed(sweep, 2) + " degrees, the turn between its two marks",
                         "Turn by the expected angle, or set the sweep, which places the centre."};
  return std::nullopt;
}

void refit(Leg& leg, Point from, Point to) {
  if (leg.shape != LegShape::arc) return;
  if (distance(from, to) < kFullTurnEnds) {
    leg.sweep = 360 * std::round(leg.sweep / 360);
    return;
  }
  if (std::abs(distance(from, leg.centre) - distance(to, leg.centre)) > kSteps)
    leg.centre = quantised(nearestCentre(from, to, leg.centre));
  if (distance(from, leg.centre) < kArcLeast || distance(to, leg.centre) < kArcLeast) return;
  leg.sweep = quantised(sweepBetween(from, to, leg.centre, leg.sweep), kinds::kBearing);
}

}  // namespace wend::plan
