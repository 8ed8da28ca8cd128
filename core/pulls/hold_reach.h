/// How far one value, or one of a range of values, can stand still inside a tube.
#pragma once

#include <cstddef>
#include <vector>

#include "core/pulls/tube.h"

namespace wend::pulls {

/// A range of values left to choose from.
struct Choice {
  double lo = 0, hi = 0;
  bool empty() const { return lo > hi; }
  double width() const { return hi - lo; }
  double middle() const { return (lo + hi) / 2; }
  Choice cut(double otherLo, double otherHi) const {
    return {lo > otherLo ? lo : otherLo, hi < otherHi ? hi : otherHi};
  }
};

struct Standing {
  std::size_t last = 0;  ///< the last sample at which one value of the range still stands
  Choice left;           ///< the values that stand as long
};

/// The highest floor and the lowest ceiling over aligned blocks of 2^k samples.
/// Cost: linear to build, two numbers a sample kept twice; a question costs the logarithm of how far it reaches.
class HoldReach {
 public:
  explicit HoldReach(const Tube& tube);

  /// From sample `first` on. Requires `values` to meet the bounds of `first`.
  Standing standingFrom(std::size_t first, Choice values) const;

 private:
  bool takes(std::size_t level, std::size_t at, Choice left) const;

  std::size_t size_;
  std::vector<std::vector<Choice>> blocks_;  ///< blocks_[k][i] covers samples i 2^k to (i+1) 2^k - 1, whole blocks only
};

}  // namespace wend::pulls
