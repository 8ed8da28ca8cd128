/// A range of values left to choose from. In the unit of the axis.
#pragma once

namespace wend::pulls {

struct Choice {
  double lo = 0, hi = 0;
  bool empty() const { return lo > hi; }
  double width() const { return hi - lo; }
  double middle() const { return (lo + hi) / 2; }
  Choice cut(Choice other) const { return {lo > other.lo ? lo : other.lo, hi < other.hi ? hi : other.hi}; }
};

inline constexpr Choice kNoChoice{1, 0};

}  // namespace wend::pulls
