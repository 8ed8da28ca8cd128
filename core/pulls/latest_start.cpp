#include "core/pulls/latest_start.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "core/base/check.h"
#include "core/geometry/point.h"

namespace wend::pulls {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// What the axis may show at an instant.
struct Gate {
  double t = 0, lo = -kInfinity, hi = kInfinity;
  bool lets(double value) const { return value >= lo && value <= hi; }
};

Gate gateOf(const TubeSample& sample) {
  if (sample.open) return {sample.t};
  return {sample.t, sample.lo - kLateRounding, sample.hi + kLateRounding};
}

std::vector<Gate> gatesIn(const Tube& tube, geometry::Span span) {
  std::vector<Gate> gates;
  for (const TubeSample& sample : cutOut(tube, span)) gates.push_back(gateOf(sample));
  return gates;
}

/// How many gates in a row let a value through, from the first on.
std::size_t gatesPassed(const std::vector<Gate>& gates, double value) {
  const auto shut = std::find_if(gates.begin(), gates.end(), [&](const Gate& gate) { return !gate.lets(value); });
  return static_cast<std::size_t>(shut - gates.begin());
}

/// Between two gates, the first of which lets the value through: until when the second's bounds do, straight between.
double keptUntil(const Gate& a, const Gate& b, double value) {
  if (b.lets(value)) return b.t;
  const double edgeBefore = value < b.lo ? a.lo : a.hi, edgeAfter = value < b.lo ? b.lo : b.hi;
  if (std::isinf(edgeBefore)) return b.t;
  return a.t + (b.t - a.t) * (value - edgeBefore) / (edgeAfter - edgeBefore);
}

}  // namespace

std::optional<double> latestStart(const Tube& tube, const Track& track, std::size_t move, double rate) {
  WEND_CHECK(move < track.moves.size() && rate > 0);
  const Move& planned = track.moves[move];
  const double end = move + 1 < track.moves.size() ? track.moves[move + 1].from : track.knots.back().t;
  if (!(planned.from < end)) return std::nullopt;
  const std::vector<Gate> gates = gatesIn(tube, {planned.from, end});
  const double held = planned.valueBefore;
  if (!gates.back().lets(planned.valueAfter)) return std::nullopt;
  const std::size_t passed = gatesPassed(gates, held);
  // Backwards: the values from which the rest can be followed.
  double lo = planned.valueAfter, hi = planned.valueAfter;
  for (std::size_t i = gates.size() - 1; i-- > 0;) {
    const Gate &now = gates[i], &next = gates[i + 1];
    const double off = std::max({lo - held, held - hi, 0.0});
    lo = std::max(lo - rate * (next.t - now.t), now.lo);
    hi = std::min(hi + rate * (next.t - now.t), now.hi);
    if (lo > hi) return std::nullopt;
    if (i < passed && held >= lo - kLateRounding && held <= hi + kLateRounding)
      return std::clamp(std::min(next.t - off / rate, keptUntil(now, next, held)), now.t, next.t);
  }
  return std::nullopt;
}

}  // namespace wend::pulls
