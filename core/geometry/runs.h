/// The longest runs of consecutive samples in which something holds, or that are all alike.
///
/// Units     indices into a list of `count` samples, from 0.
/// Ends      a run has both its ends in it and one sample at least; the list's own ends end a run as a failing sample
///           does.
/// Cost      a call a sample at most, in order.
#pragma once

#include <cstddef>
#include <vector>

namespace wend::geometry {

struct Run {
  std::size_t first = 0, last = 0;
  bool operator==(const Run&) const = default;
};
using Runs = std::vector<Run>;

/// The runs in which `holds(i)` is true.
/// Ensures   it is true from `first` to `last`, and neither before nor after.
template <class Holds>
Runs runsWhere(std::size_t count, Holds holds) {
  Runs runs;
  bool held = false;
  for (std::size_t i = 0; i < count; ++i) {
    const bool now = holds(i);
    if (now && !held) runs.push_back({i, i});
    if (now) runs.back().last = i;
    held = now;
  }
  return runs;
}

/// All of the list, cut between neighbours that are not alike: where `alike(i - 1, i)` is false.
/// Ensures   every sample is in one run.
template <class Alike>
Runs runsAlike(std::size_t count, Alike alike) {
  Runs runs;
  for (std::size_t i = 0; i < count; ++i) {
    if (i == 0 || !alike(i - 1, i)) runs.push_back({i, i});
    runs.back().last = i;
  }
  return runs;
}

}  // namespace wend::geometry
