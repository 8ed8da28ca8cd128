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

}  // namespace wend::optics
