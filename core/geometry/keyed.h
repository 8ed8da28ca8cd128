/// Keyed axes: a key starts at `at` and is done at `at + over`; until then the value blends from what the key before
/// would show at that instant to what this one shows.
#pragma once

#include <cstddef>
#include <vector>

#include "core/geometry/point.h"

namespace wend::geometry {

struct KeySpan {
  double at = 0;
  double over = 0;
  bool eased = false;
  bool operator==(const KeySpan&) const = default;
};

/// Value at t = value of key `before` at t, blended by `share` towards that of key `after` at t. share is 1 on a
/// settled key, and then before == after.
struct KeyBlend {
  std::size_t before = 0, after = 0;
  double share = 1;
};

/// Requires keys not empty, in list order of time, none starting before the previous is done. Keys may share an
/// instant: the later in the list wins. Before the first key its value holds.
inline KeyBlend blendAt(const std::vector<KeySpan>& keys, double t) {
  std::size_t i = 0;
  while (i + 1 < keys.size() && keys[i + 1].at <= t) ++i;
  const KeySpan& key = keys[i];
  if (i == 0 || t >= key.at + key.over) return {i, i, 1};
  const double share = (t - key.at) / key.over;
  return {i - 1, i, key.eased ? smoothstep(share) : share};
}

}  // namespace wend::geometry
