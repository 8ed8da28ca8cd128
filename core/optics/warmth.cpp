#include "core/optics/warmth.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/check.h"

namespace wend::optics {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

Cure cureAt(double value, double distance, const Optics& optics, double wobble, bool enough) {
  return {value, depthOfField(distance, optics), warmthOf(distance, optics, wobble), enough};
}

// In the three below w is the half range wanted, and f, c are in metres.

double distanceFor(double w, const Optics& o) {
  const double f = o.focal / 1000, c = o.blurCircle / 1000;
  return (f + w + std::sqrt((f - w) * (f - w) + 4 * w * f * f / (o.fNumber * c))) / 2;
}

double focalFor(double w, double u, const Optics& o) {
  // w f^2 + N c (u - w) f - N c u (u - w) = 0, its positive root in the form that does not cancel.
  const double b = o.fNumber * o.blurCircle / 1000 * (u - w);
  return 2 * b * u / (b + std::sqrt(b * b + 4 * w * b * u)) * 1000;
}

double fNumberFor(double w, double u, const Optics& o) {
  const double f = o.focal / 1000, c = o.blurCircle / 1000;
  return w * f * f / ((u - w) * c * (u - f));
}

}  // namespace

double wobbleOf(const std::vector<double>& strays) {
  double squares = 0;
  for (const double stray : strays) {
    WEND_CHECK(stray >= 0);
    squares += stray * stray;
  }
  return std::sqrt(squares);
}

Heat heatOf(double warmth) {
  return warmth >= kCool ? Heat::cool : warmth >= kWarm ? Heat::warm : Heat::hot;
}

double smallerHalf(double distance, const Optics& optics) {
  if (std::isinf(distance)) return kInfinity;
  return distance - depthOfField(distance, optics).near;
}

double warmthOf(double distance, const Optics& optics, double wobble) {
  WEND_CHECK(wobble >= 0);
  return wobble == 0 ? kInfinity : smallerHalf(distance, optics) / wobble;
}

Cures curesFor(double distance, const Optics& optics, double wobble, double target, CureLimits limits) {
  WEND_CHECK(wobble > 0 && target > 0 && std::isfinite(distance) && warmthOf(distance, optics, wobble) < target);
  WEND_CHECK(limits.shortestFocal > 0 && limits.shortestFocal <= optics.focal &&
             limits.closedFNumber >= optics.fNumber);
  const double w = target * wobble;
  // The near half is always less than the distance itself, whatever the lens.
  const bool possible = w < distance;
  Optics wider = optics, closed = optics;
  wider.focal = possible ? std::max(focalFor(w, distance, optics), limits.shortestFocal) : limits.shortestFocal;
  closed.fNumber = possible ? std::min(fNumberFor(w, distance, optics), limits.closedFNumber) : limits.closedFNumber;
  const double further = distanceFor(w, optics);
  const bool widenEnough = possible && focalFor(w, distance, optics) >= limits.shortestFocal;
  const bool closeEnough = possible && fNumberFor(w, distance, optics) <= limits.closedFNumber;
  return {cureAt(further, further, optics, wobble, true), cureAt(wider.focal, distance, wider, wobble, widenEnough),
          cureAt(closed.fNumber, distance, closed, wobble, closeEnough)};
}

namespace {

double settingFor(const std::vector<Held>& held) {
  const auto [near, far] = std::minmax_element(held.begin(), held.end(),
                                               [](const Held& a, const Held& b) { return a.distance < b.distance; });
  return std::isinf(far->distance) ? 2 * near->distance
                                   : 2 * near->distance * far->distance / (near->distance + far->distance);
}

double warmthIn(const Range& band, const Held& one) {
  const double room = std::max(0.0, std::min(one.distance - band.near, band.far - one.distance));
  return one.wobble == 0 ? (room > 0 ? kInfinity : 0) : room / one.wobble;
}

/// The least change from `now` towards `limit` with which it is warm enough; `with` makes the lens of a value.
template <class With>
Cure leastChange(const std::vector<Held>& held, double now, double limit, double target, const With& with) {
  const auto warmthAt = [&](double value) { return splitWarmth(held, with(value)).warmth; };
  const bool enough = warmthAt(limit) >= target;
  double little = now, much = limit;
  for (int i = 0; enough && i < 60; ++i) {
    const double middle = std::sqrt(little * much);
    (warmthAt(middle) >= target ? much : little) = middle;
  }
  return {much, depthOfField(settingFor(held), with(much)), warmthAt(much), enough};
}

}  // namespace

SplitWarmth splitWarmth(const std::vector<Held>& held, const Optics& optics) {
  WEND_CHECK(!held.empty());
  const Range band = depthOfField(settingFor(held), optics);
  SplitWarmth least{0, kInfinity};
  for (std::size_t i = 0; i < held.size(); ++i) {
    WEND_CHECK(held[i].wobble >= 0);
    const double warmth = warmthIn(band, held[i]);
    if (warmth < least.warmth) least = {i, warmth};
  }
  return least;
}

SplitCures curesForSplit(const std::vector<Held>& held, const Optics& optics, double target, CureLimits limits) {
  WEND_CHECK(target > 0 && splitWarmth(held, optics).warmth < target);
  WEND_CHECK(limits.shortestFocal > 0 && limits.shortestFocal <= optics.focal &&
             limits.closedFNumber >= optics.fNumber);
  const auto zoomed = [&](double focal) { return Optics{focal, optics.fNumber, optics.blurCircle}; };
  const auto closed = [&](double fNumber) { return Optics{optics.focal, fNumber, optics.blurCircle}; };
  return {leastChange(held, optics.focal, limits.shortestFocal, target, zoomed),
          leastChange(held, optics.fNumber, limits.closedFNumber, target, closed)};
}

}  // namespace wend::optics
