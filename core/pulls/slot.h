/// Where in the take a change of iris or zoom would hide. Seconds from the take's start; rates as cover.h has them.
#pragma once

#include <vector>

#include "core/pulls/cover.h"

namespace wend::pulls {

struct SlotQuestion {
  Hidden axis = Hidden::iris;
  double change = 0;  ///< stops, or percent of the focal length as 100 ln(after / before); the sign does not matter
  geometry::Spans free{};  ///< where it may lie; tidy
  double near = 0;         ///< the time it is wanted at
  double longest = 6;      ///< seconds
  double shortest = 0.5;   ///< seconds; a hand does no less
  double feather = 0;      ///< seconds of easing in, and as many of easing out; none under full cover
};

/// A span in which the whole change hides.
struct Slot {
  geometry::Span span;
  double rate = 0;     ///< of its middle: the change over the span less one feather
  double allowed = 0;  ///< the least that is allowed anywhere in it
  /// allowed over rate, 1 or more; infinite under full cover.
  double margin() const { return allowed / rate; }
};

/// The slots of a change, best first: the one furthest under what is allowed, of equals the one whose middle is nearest
/// to `near`, then the earlier. No two of them overlap.
///
/// Requires  change not 0; 0 < shortest <= longest, feather >= 0
/// Ensures   (1) rate <= allowed, and a ramp of that rate hides at every instant of the slot; (2) no span inside `free`
///           has a larger margin than the first; (3) empty only where no span would do at all
/// Cost      a few levels of cover times the number of spans
std::vector<Slot> slotsFor(const std::vector<CoverSpan>& covers, const SlotQuestion& question);

/// The rate of the middle of a change that takes that long; infinite where the feathers do not fit. Feathers rise
/// evenly, so each runs at half the rate.
double middleRate(double change, double seconds, double feather);

}  // namespace wend::pulls
