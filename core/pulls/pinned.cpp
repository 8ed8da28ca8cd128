#include "core/pulls/pinned.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/check.h"
#include "core/pulls/choice.h"

namespace wend::pulls {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
// A hair flatter than `passable` lays its edges, so that what is left can be followed to the pins themselves.
constexpr double kUnderRate = 1 - 2e-9;

/// What is reached from a pin so many seconds away.
Choice reachedFrom(std::optional<double> pin, double seconds, double rate) {
  if (!pin) return {-kInfinity, kInfinity};
  return {*pin - rate * seconds, *pin + rate * seconds};
}

}  // namespace

double rateBetween(const Pins& pins, geometry::Span span) {
  if (!pins.from || !pins.until || *pins.from == *pins.until) return 0;
  return std::abs(*pins.until - *pins.from) / span.length();
}

Tube pinned(const Tube& tube, const Pins& pins, double rate) {
  WEND_CHECK(tube.size() > 1 && tube.front().t < tube.back().t);
  const geometry::Span span{tube.front().t, tube.back().t};
  WEND_CHECK(rateBetween(pins, span) <= rate);
  Tube result = tube;
  for (TubeSample& s : result) {
    if (s.open) continue;
    const Choice near = reachedFrom(pins.from, s.t - span.from, rate * kUnderRate);
    const Choice far = reachedFrom(pins.until, span.until - s.t, rate * kUnderRate);
    Choice reached = near.cut(far);
    // At the full rate there is one way, and rounding alone parts the two.
    if (reached.empty()) reached = {reached.middle(), reached.middle()};
    const double middle = (s.lo + s.hi) / 2;
    if (s.lo > s.hi && middle >= reached.lo && middle <= reached.hi) continue;
    const Choice asked = s.lo > s.hi ? Choice{middle, middle} : Choice{s.lo, s.hi};
    s.lo = std::clamp(asked.lo, reached.lo, reached.hi);
    s.hi = std::clamp(asked.hi, reached.lo, reached.hi);
  }
  if (pins.from) result.front() = {span.from, *pins.from, *pins.from, false};
  if (pins.until) result.back() = {span.until, *pins.until, *pins.until, false};
  return result;
}

}  // namespace wend::pulls
