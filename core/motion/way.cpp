#include "core/motion/way.h"

#include <optional>

#include "core/base/text.h"
#include "core/geometry/tolerance.h"
#include "core/motion/pointer.h"

namespace wend::motion {
namespace {

using base::fixed;
using geometry::Curve;

void findNotFinite(const std::vector<TrackMark>& marks, base::Problems& problems) {
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const TrackMark& mark = marks[i];
    bool finite = std::isfinite(mark.at) && std::isfinite(mark.until) && std::isfinite(mark.height);
    const auto both = [&finite](Point p) { finite = finite && std::isfinite(p.x) && std::isfinite(p.y); };
    both(mark.pos);
    both(mark.leg.centre);
    for (const Point via : mark.leg.via) both(via);
    if (!finite || !std::isfinite(mark.leg.sweep))
      problems.push_back({"not-finite", pointer(i, ""), "a number that is not finite", "finite numbers",
                          "Type the times, places and heights of this mark again."});
  }
}

/// From mark to mark through the vias, without those that repeat the place before them or the end.
std::vector<Point> placesOf(const TrackMark& from, const TrackMark& to) {
  std::vector<Point> places{from.pos};
  for (const Point via : from.leg.via)
    if (distance(places.back(), via) > geometry::kTouch) places.push_back(via);
  while (places.size() > 1 && distance(places.back(), to.pos) <= geometry::kTouch) places.pop_back();
  places.push_back(to.pos);
  return places;
}

std::optional<base::Problem> arcProblem(std::size_t i, const geometry::Arc& arc, double sweep) {
  if (std::min(arc.fromRadius, arc.toRadius) < geometry::kHold)
    return base::Problem{"arc-without-radius", pointer(i, "/leg/centre"), "a mark at the arc's centre",
                         "a centre away from both marks", "Move the centre, or make the leg straight."};
  if (std::abs(arc.fromRadius - arc.toRadius) > kArcRadiusTolerance)
    return base::Problem{"arc-uneven-radius", pointer(i, "/leg/centre"),
                         fixed(arc.fromRadius, 3) + " m and " + fixed(arc.toRadius, 3) + " m from the centre",
                         "the same distance within " + fixed(kArcRadiusTolerance, 3) + " m",
                         "Move the centre or one of the two marks."};
  if (std::abs(arc.sweep - sweep) > kArcSweepTolerance)
    return base::Problem{"arc-wrong-sweep", pointer(i, "/leg/sweep"), fixed(sweep, 2) + " degrees",
                         fixed(arc.sweep, 2) + " degrees within " + fixed(kArcSweepTolerance, 1),
                         "Write the turn from this mark to the next round the centre, clockwise positive."};
  if (std::abs(sweep) > 360 * kMostTurns)
    return base::Problem{"arc-too-many-turns", pointer(i, "/leg/sweep"), fixed(sweep, 0) + " degrees",
                         "at most " + fixed(kMostTurns, 0) + " turns", "Write a smaller sweep."};
  return std::nullopt;
}

geometry::Arc arcBetween(const TrackMark& from, const TrackMark& to) {
  const geometry::Vec a = from.pos - from.leg.centre, b = to.pos - from.leg.centre;
  geometry::Arc arc{from.leg.centre, length(a), length(b), 0, 0};
  if (std::min(arc.fromRadius, arc.toRadius) < geometry::kHold) return arc;
  arc.fromBearing = geometry::bearingOf(a);
  arc.sweep = geometry::unwrapped(geometry::bearingOf(b) - arc.fromBearing, from.leg.sweep);
  return arc;
}

bool isSmooth(const TrackMark& mark, const TrackMark& next) {
  return mark.leg.shape == TrackLeg::Shape::smooth && Curve::through(placesOf(mark, next)).length() >= geometry::kHold;
}

/// The curves of the smooth legs from `first` on, up to the first leg that is not one.
std::vector<Curve> smoothChain(const std::vector<TrackMark>& marks, std::size_t first) {
  std::vector<Point> points{marks[first].pos};
  std::vector<std::size_t> ends{0};
  for (std::size_t i = first; i + 1 < marks.size() && isSmooth(marks[i], marks[i + 1]); ++i) {
    const std::vector<Point> places = placesOf(marks[i], marks[i + 1]);
    points.insert(points.end(), places.begin() + 1, places.end());
    ends.push_back(points.size() - 1);
  }
  const std::vector<geometry::Cubic> pieces = geometry::catmullRom(points);
  std::vector<Curve> curves;
  for (std::size_t k = 1; k < ends.size(); ++k) {
    const auto at = [&](std::size_t end) { return pieces.begin() + static_cast<std::ptrdiff_t>(end); };
    curves.push_back(Curve::along(std::vector<geometry::Cubic>(at(ends[k - 1]), at(ends[k]))));
  }
  return curves;
}

Curve heldIfShort(Curve curve, Point place) {
  return curve.length() < geometry::kHold ? Curve(place) : curve;
}

}  // namespace

base::Result<std::vector<Curve>> waysBetween(const std::vector<TrackMark>& marks) {
  base::Problems problems;
  findNotFinite(marks, problems);
  if (!problems.empty()) return problems;
  std::vector<Curve> ways;
  for (std::size_t i = 0; i + 1 < marks.size();) {
    const TrackMark &from = marks[i], &to = marks[i + 1];
    if (from.leg.shape == TrackLeg::Shape::arc) {
      const geometry::Arc arc = arcBetween(from, to);
      const std::optional<base::Problem> problem = arcProblem(i, arc, from.leg.sweep);
      if (problem) problems.push_back(*problem);
      ways.push_back(problem ? Curve(from.pos) : heldIfShort(Curve::along(arc), from.pos));
    } else if (isSmooth(from, to)) {
      for (Curve& curve : smoothChain(marks, i)) ways.push_back(std::move(curve));
    } else {
      ways.push_back(heldIfShort(Curve::through(placesOf(from, to)), from.pos));
    }
    i = ways.size();
  }
  if (!problems.empty()) return problems;
  return ways;
}

}  // namespace wend::motion
