#include "core/pulls/tube.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/check.h"
#include "core/geometry/runs.h"
#include "core/pulls/least_miss.h"

namespace wend::pulls {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
// Edges are laid a hair flatter than the limit, so that a step between two of them never needs more than the limit.
constexpr double kUnderRate = 1 - 1e-9;

// A value that far outside lies on the edge and is off by rounding: far less than the tube was narrowed by.
constexpr double kHair = 1e-11;

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

/// Where the lower edge passes over the upper one, the bounds become the value of a track of least integral outside
/// them, at the samples where that leaves them.
///
/// Such a stretch can be looked at alone. Both edges keep to the rate, so of any track the middle one of it and the two
/// edges is a track too, and nowhere further outside; it lies between the edges, so it is inside the tube wherever they
/// are in order, and whatever it does in the stretch can be gone on with on both sides.
bool forceCrossings(Tube& wanted, const Edges& e, std::vector<bool>& forced, double rate) {
  bool any = false;
  for (const auto& run : geometry::runsWhere(wanted.size(), [&](std::size_t i) { return e.lo[i] > e.hi[i]; })) {
    const std::vector<double> way = leastMiss(wanted, run.first, run.last, rate);
    for (std::size_t k = run.first; k <= run.last; ++k) {
      const double value = std::clamp(way[k - run.first], e.hi[k], e.lo[k]);
      if (missAt(wanted[k], value) <= kHair) continue;
      wanted[k].lo = wanted[k].hi = value;
      wanted[k].open = false;
      forced[k] = true;
      any = true;
    }
  }
  return any;
}

/// Rounding alone may leave the edges crossed by a hair.
void uncross(Edges& e, const Tube& wanted) {
  for (std::size_t i = 0; i < e.lo.size(); ++i)
    if (e.lo[i] > e.hi[i]) e.lo[i] = e.hi[i] = std::clamp((e.lo[i] + e.hi[i]) / 2, wanted[i].lo, wanted[i].hi);
}

/// Where samples at t or later begin.
Tube::const_iterator firstFrom(const Tube& tube, double t) {
  return std::lower_bound(tube.begin(), tube.end(), t,
                          [](const TubeSample& sample, double time) { return sample.t < time; });
}

}  // namespace

TubeSample sampleAt(const Tube& tube, double t) {
  const auto after = firstFrom(tube, t);
  if (after != tube.end() && after->t == t) return *after;
  if (after == tube.end() || after == tube.begin()) return {t, 0, 0, true};
  const TubeSample &a = *std::prev(after), &b = *after;
  if (a.open || b.open) return {t, 0, 0, true};
  const double share = (t - a.t) / (b.t - a.t);
  return {t, geometry::lerp(a.lo, b.lo, share), geometry::lerp(a.hi, b.hi, share), false};
}

Tube cutOut(const Tube& tube, geometry::Span span) {
  WEND_CHECK(span.from < span.until);
  Tube part{sampleAt(tube, span.from)};
  for (auto s = firstFrom(tube, span.from); s != tube.end() && s->t < span.until; ++s)
    if (s->t > span.from) part.push_back(*s);
  part.push_back(sampleAt(tube, span.until));
  return part;
}

Tube heldWithin(Tube tube, double least, double most) {
  WEND_CHECK(least <= most);
  for (TubeSample& s : tube) {
    s.lo = std::clamp(s.lo, least - kTubeRounding, most - kTubeRounding);
    s.hi = std::clamp(s.hi, least + kTubeRounding, most + kTubeRounding);
  }
  return tube;
}

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
  if (forceCrossings(result.wanted, edges, result.forced, rate * kUnderRate))
    edges = ratedEdges(result.wanted, rate * kUnderRate);
  uncross(edges, result.wanted);
  result.reachable = tube;
  for (std::size_t i = 0; i < tube.size(); ++i) result.reachable[i] = {tube[i].t, edges.lo[i], edges.hi[i], false};
  return result;
}

}  // namespace wend::pulls
