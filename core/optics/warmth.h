/// How easily a focus can be held: the sharp range against how far people and rig stray from their marks.
///
/// Frame     metres from the entrance pupil.
/// Source    common practice, no source: root sum of squares of independent errors; cool from 1.5, warm from 1.0.
/// Stops     meaning much when errors are not independent (two people leaning on one another) or not around the mark.
#pragma once

#include <optional>
#include <vector>

#include "core/optics/depth_of_field.h"

namespace wend::optics {

inline constexpr double kCool = 1.5;
inline constexpr double kWarm = 1.0;

enum class Heat { cool, warm, hot };

/// Root of the sum of squares: how far independent errors stray together, metres. Requires each >= 0.
double wobbleOf(const std::vector<double>& strays);

/// Cool from 1.5, warm from 1.0, hot below.
Heat heatOf(double warmth);

/// The nearer half of the sharp range of a lens set on its subject: the far half is never smaller.
/// Requires distance > focal length, infinity allowed (then infinite).
double smallerHalf(double distance, const Optics& optics);

/// smallerHalf over wobble at the full blur circle; infinite without wobble.
double warmthOf(double distance, const Optics& optics, double wobble);

/// One of several subjects that one setting is to hold.
struct Held {
  double distance = 0;
  double wobble = 0;
};

/// Whoever has the least room in the sharp range, and how warm they are: the way to the range's nearer end over their
/// wobble, 0 for somebody outside it.
struct SplitWarmth {
  std::size_t tightest = 0;
  double warmth = 0;
};

/// Of the lens set where the nearest and the furthest are equally blurred. Of equals the first.
///
/// Requires  one or more, distances above the focal length, wobbles >= 0
/// Ensures   of a single subject that is warmthOf
SplitWarmth splitWarmth(const std::vector<Held>& held, const Optics& optics);

/// What the lens can still do about a hot focus.
struct CureLimits {
  double shortestFocal = 0;   ///< mm
  double closedFNumber = 22;  ///< the smallest opening, as an f-number
};

/// One change alone, everything else as it is.
struct Cure {
  double value = 0;     ///< distance in metres, focal length in mm, or f-number
  Range band;           ///< the sharp range then
  double warmth = 0;    ///< what it comes to
  bool enough = false;  ///< false: the lens ends before; value is its limit
};

struct Cures {
  Cure backOff;   ///< stand further away
  Cure widen;     ///< a shorter focal length
  Cure stopDown;  ///< a smaller opening
};

/// The least of each change that brings warmth up to `target`.
///
/// Requires  warmthOf(distance, optics, wobble) < target; target > 0, wobble > 0; distance finite and above the focal
///           length; limits no worse than the lens is now
/// Ensures   (1) warmth at each value is warmthOf there: the target to rounding when `enough`, less when not
///           (2) widening or closing cannot help a wobble so large that target x wobble reaches the lens: `enough` is
///           false
/// Source    solving u N c (u - f) / (f^2 + N c (u - f)) = target x wobble for u, f or N.
Cures curesFor(double distance, const Optics& optics, double wobble, double target, CureLimits limits);

struct SplitCures {
  Cure widen, stopDown;
};

/// The least of either change that brings a split's warmth up to `target`: halved down to, since no formula is at hand.
///
/// Requires  splitWarmth(held, optics) < target; target > 0, wobbles > 0; limits no worse than the lens is now
/// Ensures   warmth at each value is that of splitWarmth there: the target to 1e-6 when `enough`, less when not
SplitCures curesForSplit(const std::vector<Held>& held, const Optics& optics, double target, CureLimits limits);

}  // namespace wend::optics
