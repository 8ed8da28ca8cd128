/// A track of the fewest ramps through a tube, as its rests and bends.
///
/// Tests     tests/core/pulls/least_ramps_test.cpp
#pragma once

#include <cstddef>
#include <vector>

#include "core/pulls/stands.h"
#include "core/pulls/tube.h"

namespace wend::pulls {

struct LeastStands {
  std::vector<Stand> stands;  ///< from the first sample to the last
  std::size_t least = 0;      ///< ramps no track through the tube can do without
};

/// Traced back from the end through what rampReach says is reached: from each rest as far back as it can have begun,
/// and from there along the straight lines that lead into it, to the latest place from which one ramp fewer is enough.
/// Where a rest or bend falls between two samples, `way` gets a sample there.
///
/// Requires  a way from `passable` at this rate
/// Ensures   (1) every straight line between stands lies in way.reachable to kTubeRounding / 2, at no more than the
///               rate
///           (2) `least` is a lower bound; as many ramps between the stands, save where a turn between two samples
///               would be needed that the trace does not find, not even among samples up to forty times as dense
/// Cost      linear, for tubes whose rests and ramps do not overlap without end; up to seven times over where a turn
///           has to be looked for between samples
LeastStands leastStands(Passable& way, double rate);

}  // namespace wend::pulls
