#include "core/crew/route.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"
#include "core/crew/pace.h"

namespace wend::crew {
namespace {

constexpr double kHundredth = 0.01;

/// `count` + 1 instants from one end of the span to the other, at most `step` apart.
std::vector<double> looks(Span span, double step) {
  const auto count = std::max(1L, static_cast<long>(std::ceil(span.length() / step)));
  std::vector<double> times;
  for (long i = 0; i <= count; ++i) times.push_back(geometry::lerp(span.from, span.until, double(i) / double(count)));
  return times;
}

void measure(Walk& walk, const DrawnRoute& route, double step) {
  const auto times = looks(walk.span, step);
  for (std::size_t i = 1; i < times.size(); ++i) {
    const double metres = geometry::distance(route.at(times[i - 1]), route.at(times[i]));
    walk.metres += metres;
    if (!route.peak && times[i] > times[i - 1])
      walk.peakSpeed = std::max(walk.peakSpeed, metres / (times[i] - times[i - 1]));
  }
  if (route.peak && walk.span.length() > 0) walk.peakSpeed = route.peak(walk.span);
  if (walk.span.length() > 0) walk.meanSpeed = walk.metres / walk.span.length();
}

/// The ground under who walks and under who stands.
struct Grounds {
  const GroundAt& walking;
  const GroundAt& still;
};

/// One walk of a route, shifted in time as a whole.
class ShiftedWalk {
 public:
  ShiftedWalk(const DrawnRoute& route, Span walk, double step, const Grounds& grounds)
      : route_(route), walk_(walk), times_(looks(walk, step)), grounds_(grounds) {}

  /// The walk itself, started `shift` seconds later, meets free ground.
  bool walks(double shift) const {
    return std::all_of(times_.begin(), times_.end(), [&](double t) { return isFree(grounds_.walking, t, t + shift); });
  }
  /// So does the wait that the shift ends with: before leaving when later, after arriving when earlier.
  bool fits(double shift) const {
    const double stand = shift > 0 ? walk_.from : walk_.until;
    return isFree(grounds_.still, stand, stand + shift) && walks(shift);
  }

 private:
  bool isFree(const GroundAt& ground, double place, double t) const {
    return ground(route_.at(place), t) == Ground::free;
  }
  const DrawnRoute& route_;
  Span walk_;
  std::vector<double> times_;
  const Grounds& grounds_;
};

/// The furthest shift towards `limit` that fits together with every shift on the way there.
double furthestShift(const ShiftedWalk& walk, double limit, double step) {
  const double sign = limit < 0 ? -1 : 1, most = std::abs(limit);
  double good = 0;
  while (good < most) {
    const double next = std::min(most, good + step);
    if (walk.fits(sign * next)) {
      good = next;
      continue;
    }
    double bad = next;
    while (bad - good > kHundredth) {
      const double middle = (good + bad) / 2;
      (walk.fits(sign * middle) ? good : bad) = middle;
    }
    break;
  }
  return sign * good;
}

void addSlack(Walk& walk, Span before, Span after, const DrawnRoute& route, const RouteRules& rules,
              const Grounds& grounds) {
  const ShiftedWalk shifted(route, walk.span, rules.step, grounds);
  if (walk.peakSpeed > rules.speed + kPaceTold || !shifted.walks(0)) return;
  const double later = std::min(rules.latest, after.until - walk.span.until);
  const double earlier = std::min(rules.latest, walk.span.from - before.from);
  walk.latestLeave = walk.span.from + furthestShift(shifted, later, rules.step);
  walk.earliestArrive = walk.span.until + furthestShift(shifted, -earlier, rules.step);
}

void addBreaks(const DrawnRoute& route, Break::Why why, const geometry::Spans& spans, std::vector<Break>& breaks) {
  for (const Span& span : spans) breaks.push_back({why, span, route.at(span.from)});
}

}  // namespace

std::vector<Walk> walksOf(const DrawnRoute& route, const RouteRules& rules, const GroundAt& ground,
                          const GroundAt& still) {
  WEND_CHECK(!route.stands.empty() && rules.step > 0);
  const Grounds grounds{ground, still ? still : ground};
  std::vector<Walk> walks;
  for (std::size_t i = 1; i < route.stands.size(); ++i) {
    const Span &before = route.stands[i - 1], &after = route.stands[i];
    Walk walk;
    walk.span = {before.until, after.from};
    measure(walk, route, rules.step);
    addSlack(walk, before, after, route, rules, grounds);
    walks.push_back(walk);
  }
  return walks;
}

RouteReport reportOf(const DrawnRoute& route, const RouteRules& rules, const GroundAt& ground, const GroundAt& still) {
  const Grounds grounds{ground, still ? still : ground};
  RouteReport report{walksOf(route, rules, ground, still), {}};
  geometry::Spans fast;
  for (const Walk& walk : report.walks)
    if (walk.peakSpeed > rules.speed + kPaceTold) fast.push_back(walk.span);
  const Span whole{route.stands.front().from, route.stands.back().until};
  const auto stands = [&](double t) {
    return std::any_of(route.stands.begin(), route.stands.end(), [t](Span stand) { return stand.contains(t); });
  };
  const auto where = [&](Ground kind) {
    return geometry::spansWhere(whole, rules.step, [&](double t) {
      return (stands(t) ? grounds.still : grounds.walking)(route.at(t), t) == kind;
    });
  };
  addBreaks(route, Break::Why::seen, where(Ground::seen), report.breaks);
  addBreaks(route, Break::Why::taken, where(Ground::taken), report.breaks);
  addBreaks(route, Break::Why::fast, fast, report.breaks);
  std::stable_sort(report.breaks.begin(), report.breaks.end(),
                   [](const Break& a, const Break& b) { return a.span.from < b.span.from; });
  return report;
}

}  // namespace wend::crew
