/// What the moves of all axes together ask of a crew: how many move at once, how fast, how soon after the last start.
///
/// Source    common practice, no source: one person works one exact axis and one simple move to a preset at a time; two
///           exact axes together are two people's work; starts less than a second apart read as one hard job; no more
///           than a start every 1.5 s on average over 10 s.
/// Stops     knowing who is tired, who sees the mark, or who stands where.
#pragma once

#include <cstddef>
#include <vector>

#include "core/geometry/point.h"

namespace wend::pulls {

/// One move of one axis, its rate in degrees of barrel a second; spans in seconds from the take's start.
struct AxisMove {
  std::size_t axis = 0;
  geometry::Span span;
  double degreesPerSecond = 0;
  bool exact = true;  ///< has to meet a moving mark; false: a simple move to a preset
};

/// A stretch over which the same moves are under way. Ends belong to both neighbours.
struct WorkStretch {
  geometry::Span span;
  std::vector<std::size_t> axes;  ///< in order, each once
  double degreesPerSecond = 0;    ///< of all of them together
  int hands = 0;                  ///< people needed at once
};

struct Start {
  double at = 0;  ///< seconds from the take's start
  std::size_t axis = 0;
  double sinceLast = 0;  ///< seconds since any axis last started; infinite for the first
  bool pressed = false;  ///< sooner than kStartApart after the last
};

struct Workload {
  std::vector<WorkStretch> stretches;  ///< in order, only where something moves
  std::vector<Start> starts;           ///< in order of time, then of axis
  int mostHands = 0;
  int mostStarts = 0;  ///< in any kStartWindow seconds
};

inline constexpr double kStartApart = 1.0;    ///< seconds
inline constexpr double kStartWindow = 10.0;  ///< seconds

/// People needed for so many moves at once: one for each exact axis, a simple move riding along with each, and one for
/// every two simple moves left over. Requires 0 <= exact <= moving.
int handsFor(int moving, int exact);

/// Requires  every span from < until
/// Ensures   (1) the stretches cover exactly the union of the moves' spans, none of no length
///           (2) two moves that only touch in time are not under way together
/// Cost      moves squared
Workload workloadOf(std::vector<AxisMove> moves);

}  // namespace wend::pulls
