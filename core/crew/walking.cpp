#include "core/crew/walking.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"

namespace wend::crew {
namespace {

constexpr double kMicrosecond = 1e-6;

/// On the line counts as left, everywhere alike: so a corner belongs to one edge and an instant to one stretch.
bool leftOf(Point p, Point a, Point b) {
  return geometry::cross(b - a, p - a) >= 0;
}

bool crosses(Point from, Point to, Point a, Point b) {
  return leftOf(from, a, b) != leftOf(to, a, b) && leftOf(a, from, to) != leftOf(b, from, to);
}

/// The instant at which the way changes its side of the line ab. Requires it on different sides at both ends.
double changeOfSide(const std::function<Point(double)>& at, double from, double until, Point a, Point b) {
  const bool before = leftOf(at(from), a, b);
  while (until - from > kMicrosecond) {
    const double middle = (from + until) / 2;
    (leftOf(at(middle), a, b) == before ? from : until) = middle;
  }
  return (from + until) / 2;
}

}  // namespace

Carry carryOf(double speed, double travel, double lensBearing) {
  if (speed < kStill) return Carry::still;
  const double off = std::abs(geometry::turn(lensBearing, travel));
  return off > kBackwards ? Carry::rear : off > kBackwards / 2 ? Carry::side : Carry::front;
}

std::vector<Step> stepsOver(const std::function<Point(double)>& at, double from, double until, double step,
                            const std::vector<GroundEdge>& edges) {
  WEND_CHECK(step > 0);
  std::vector<Step> steps;
  const auto count = static_cast<long>(std::ceil((until - from) / step));
  Point before = at(from);
  for (long i = 1; i <= count; ++i) {
    const double t0 = from + double(i - 1) * step, t1 = std::min(until, from + double(i) * step);
    const Point now = at(t1);
    for (std::size_t e = 0; e < edges.size() && now != before; ++e) {
      const auto& points = edges[e].points;
      for (std::size_t k = edges[e].closed ? 0 : 1; k < points.size(); ++k) {
        const Point a = points[(k + points.size() - 1) % points.size()], b = points[k];
        if (!crosses(before, now, a, b)) continue;
        const double time = changeOfSide(at, t0, t1, a, b);
        steps.push_back({time, e, at(time)});
      }
    }
    before = now;
  }
  std::stable_sort(steps.begin(), steps.end(), [](const Step& a, const Step& b) { return a.time < b.time; });
  return steps;
}

}  // namespace wend::crew
