/// What each number of straight pulls reaches inside a tube, and so the least number that gets through it.
///
/// A track may rest as long and as often as it likes, start at any value, and turn at any instant; what is counted is
/// ramps, its straight stretches at a rate other than 0. Let e(k) be the last instant that k ramps reach. Three things
/// make the sets plain, all because the edges of the tube never run faster than the rate:
///   - at any instant, what k ramps reach is one range: of a track between two others, the part since it last met one
///   of
///     them lies in between, and the tube has no islands;
///   - up to e(k), k + 1 ramps reach everything: a line at full rate back from any point meets a track of k ramps;
///   - so the lines a further ramp may follow have to leave what k ramps reach after e(k - 1), and for each slope those
///     lines are one range. Its two edges over the slopes change by a shear and by cuts at the ends: SlopeEdge.
/// None of this is needed for the lower bound: each set here holds what is truly reached even where a range would have
/// gaps, for every step takes the whole of a range. A track with as many ramps proves the number.
///
/// Frame     that of the tube
#pragma once

#include <cstddef>
#include <vector>

#include "core/pulls/choice.h"
#include "core/pulls/tube.h"

namespace wend::pulls {

/// One instant: a sample of the tube, or the end of what some number of ramps reaches.
struct Mark {
  double t = 0;
  Choice bounds;          ///< of the tube
  std::size_t ramps = 0;  ///< the fewest that reach this instant at all
  Choice reached;         ///< by as many, at rest or in flight
  Choice flying;          ///< in flight by as many; empty for no value
  bool sample = true;
  /// What `count` ramps reach here.
  Choice reachedBy(std::size_t count) const { return count > ramps ? bounds : count == ramps ? reached : kNoChoice; }
  /// What is reached here in flight, or just landed, on the last of `count` ramps.
  Choice flownTo(std::size_t count) const { return count > ramps ? bounds : count == ramps ? flying : kNoChoice; }
};

/// Requires  at least one sample, times in order, edges no steeper than rate, lo <= hi
/// Ensures   (1) no track of fewer than back().ramps ramps runs through the tube
///           (2) marks in order of time, `ramps` never falling; of samples sharing an instant only the first
/// Cost      linear
std::vector<Mark> rampReach(const Tube& tube, double rate);

}  // namespace wend::pulls
