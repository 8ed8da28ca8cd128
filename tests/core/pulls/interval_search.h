/// The least number of ramps with turns at samples, by a dynamic programme over reachable value intervals: for every
/// number of ramps and every sample the values reached there, a ramp being any straight line from one sample to another
/// that stays in the tube. Lines that start in an interval and keep to the tube are a convex polygon in value and
/// slope, which each further sample cuts. Quadratic in the samples, and exact for tracks that turn at samples.
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "core/pulls/choice.h"
#include "core/pulls/tube.h"

namespace wend::pulls {

class IntervalSearch {
 public:
  /// Requires times strictly rising.
  IntervalSearch(const Tube& tube, double rate) : tube_(tube), rate_(rate) {}

  /// Nothing when no track of at most `most` ramps runs through.
  std::optional<std::size_t> leastRamps(std::size_t most) const {
    std::vector<Choice> reached(tube_.size(), kNoChoice);
    reached[0] = boundsAt(0);
    rest(reached);
    for (std::size_t ramps = 0; ramps <= most; ++ramps) {
      if (!reached.back().empty()) return ramps;
      std::vector<Choice> next = reached;
      for (std::size_t i = 0; i + 1 < tube_.size(); ++i)
        if (!reached[i].empty()) fly(i, reached[i], next);
      rest(next);
      reached = next;
    }
    return std::nullopt;
  }

 private:
  struct Line {
    double value, slope;
  };
  using Polygon = std::vector<Line>;

  Choice boundsAt(std::size_t i) const { return tube_[i].open ? Choice{-1e6, 1e6} : Choice{tube_[i].lo, tube_[i].hi}; }
  static Choice joined(Choice a, Choice b) {
    if (a.empty()) return b;
    return b.empty() ? a : Choice{std::min(a.lo, b.lo), std::max(a.hi, b.hi)};
  }
  void rest(std::vector<Choice>& reached) const {
    for (std::size_t i = 1; i < tube_.size(); ++i)
      reached[i] = joined(reached[i], reached[i - 1].empty() ? kNoChoice : reached[i - 1].cut(boundsAt(i)));
  }

  /// The part of the polygon where side(line) <= 0.
  template <class Side>
  static Polygon cut(const Polygon& polygon, const Side& side) {
    Polygon kept;
    for (std::size_t k = 0; k < polygon.size(); ++k) {
      const Line &a = polygon[k], &b = polygon[(k + 1) % polygon.size()];
      const double sa = side(a), sb = side(b);
      if (sa <= 0) kept.push_back(a);
      if ((sa < 0 && sb > 0) || (sa > 0 && sb < 0)) {
        const double share = sa / (sa - sb);
        kept.push_back({a.value + (b.value - a.value) * share, a.slope + (b.slope - a.slope) * share});
      }
    }
    return kept;
  }

  void fly(std::size_t from, Choice start, std::vector<Choice>& next) const {
    Polygon lines{{start.lo, -rate_}, {start.hi, -rate_}, {start.hi, rate_}, {start.lo, rate_}};
    for (std::size_t i = from + 1; i < tube_.size() && !lines.empty(); ++i) {
      const double time = tube_[i].t - tube_[from].t;
      const Choice bounds = boundsAt(i);
      lines = cut(lines, [&](const Line& l) { return l.value + l.slope * time - bounds.hi; });
      lines = cut(lines, [&](const Line& l) { return bounds.lo - l.value - l.slope * time; });
      Choice here = kNoChoice;
      for (const Line& l : lines) here = joined(here, {l.value + l.slope * time, l.value + l.slope * time});
      next[i] = joined(next[i], here);
    }
  }

  const Tube& tube_;
  double rate_;
};

}  // namespace wend::pulls
