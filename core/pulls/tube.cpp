#include "core/pulls/tube.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/check.h"

namespace wend::pulls {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
// Edges are laid a hair flatter than the limit, so that a step between two of them never needs more than the limit.
constexpr double kUnderRate = 1 - 1e-9;

struct Edges {
  std::vector<double> lo, hi;
};

bool orderly(const Tube& tube) {
  return std::is_sorted(tube.begin(), tube.end(), [](const TubeSample& a, const TubeSample& b) { return a.t < b.t; });
}

/// The tube's bounds, open samples unbounded, a hair narrower; a sample that no value suits asks for the middle.
Tube narrowed(const Tube& tube, std::vector<bool>& forced) {
  Tube wanted = tube;
  for (std::size_t i = 0; i < tube.size(); ++i) {
    TubeSample& s = wanted[i];
    if (s.open) {
      s.lo = -kInfinity;
      s.hi = kInfinity;
      continue;
    }
    WEND_CHECK(std::isfinite(s.lo) && std::isfinite(s.hi));
    forced[i] = s.lo > s.hi;
    const double middle = (s.lo + s.hi) / 2;
    s.lo = std::min(s.lo + kTubeRounding, middle);
    s.hi = std::max(s.hi - kTubeRounding, middle);
    if (forced[i]) s.lo = s.hi = middle;
  }
  return wanted;
}

/// Each edge on its own, as far as every other sample lets it be at that rate.
Edges ratedEdges(const Tube& tube, double rate) {
  const std::size_t n = tube.size();
  Edges e{std::vector<double>(n), std::vector<double>(n)};
  for (std::size_t i = 0; i < n; ++i) {
    const double step = i ? rate * (tube[i].t - tube[i - 1].t) : 0;
    e.lo[i] = i ? std::max(tube[i].lo, e.lo[i - 1] - step) : tube[i].lo;
    e.hi[i] = i ? std::min(tube[i].hi, e.hi[i - 1] + step) : tube[i].hi;
  }
  for (std::size_t i = n - 1; i-- > 0;) {
    const double step = rate * (tube[i + 1].t - tube[i].t);
    e.lo[i] = std::max(e.lo[i], e.lo[i + 1] - step);
    e.hi[i] = std::min(e.hi[i], e.hi[i + 1] + step);
  }
  return e;
}

/// The way through samples from..until, in which the lower edge passes over the upper one.
void force(Tube& wanted, Edges& e, std::size_t from, std::size_t until, double rate) {
  const auto middle = [&](std::size_t i) { return (e.lo[i] + e.hi[i]) / 2; };
  double widest = 0;
  for (std::size_t i = from; i <= until; ++i) widest = std::max(widest, e.lo[i] - e.hi[i]);
  const double net = middle(until) - middle(from), centre = (wanted[from].t + wanted[until].t) / 2;
  const bool passes = std::abs(net) > widest / 2;
  std::vector<double> way;
  for (std::size_t i = from; i <= until; ++i) {
    const double straight = (middle(from) + middle(until)) / 2 + std::copysign(rate, net) * (wanted[i].t - centre);
    way.push_back(passes ? std::clamp(straight, e.hi[i], e.lo[i]) : middle(i));
  }
  for (std::size_t i = from; i <= until; ++i) e.lo[i] = e.hi[i] = wanted[i].lo = wanted[i].hi = way[i - from];
}

void forceCrossings(Tube& wanted, Edges& e, std::vector<bool>& forced, double rate) {
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    if (e.lo[i] <= e.hi[i]) continue;
    std::size_t until = i;
    while (until + 1 < wanted.size() && e.lo[until + 1] > e.hi[until + 1]) ++until;
    force(wanted, e, i, until, rate);
    std::fill(forced.begin() + static_cast<std::ptrdiff_t>(i), forced.begin() + static_cast<std::ptrdiff_t>(until) + 1,
              true);
    i = until;
  }
}

}  // namespace

Passable passable(const Tube& tube, double rate) {
  WEND_CHECK(!tube.empty() && orderly(tube) && rate > 0);
  Passable result;
  result.forced.assign(tube.size(), false);
  result.wanted = narrowed(tube, result.forced);
  Edges edges = ratedEdges(result.wanted, rate * kUnderRate);
  if (std::isinf(edges.lo.front())) {
    // Nothing anywhere asks for anything.
    std::fill(edges.lo.begin(), edges.lo.end(), kNowhere);
    std::fill(edges.hi.begin(), edges.hi.end(), kNowhere);
  }
  forceCrossings(result.wanted, edges, result.forced, rate * kUnderRate);
  result.reachable = tube;
  for (std::size_t i = 0; i < tube.size(); ++i) result.reachable[i] = {tube[i].t, edges.lo[i], edges.hi[i], false};
  return result;
}

}  // namespace wend::pulls
