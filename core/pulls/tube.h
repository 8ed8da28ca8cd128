/// What an axis of the lens may show over time: a tube of values, and where the axis is free.
///
/// Frame     seconds; values in the axis' working coordinate, in which a lens runs evenly: degrees of barrel for focus,
///           stops for the iris, the logarithm to base 2 of the focal length for zoom.
#pragma once

#include <cstddef>
#include <vector>

#include "core/geometry/point.h"

namespace wend::pulls {

/// At `t` the value must lie in [lo, hi]; between two samples the edges are straight. An open sample asks nothing, nor
/// does any instant between it and its neighbours: a change of subject. lo > hi says that no value would do.
struct TubeSample {
  double t = 0;
  double lo = 0, hi = 0;
  bool open = false;
};

/// Samples in order of time. Two may share an instant (a cut): then both hold.
using Tube = std::vector<TubeSample>;

/// The tube at an instant: a sample of its own, the first of two that share it; straight between two; open beside an
/// open one and outside the tube's time. Requires samples in order of time.
TubeSample sampleAt(const Tube& tube, double t);

/// The tube from span.from to span.until, cut between two samples where the ends fall there. An end next to an open
/// sample is open.
///
/// Requires  from < until
/// Ensures   (1) samples at both ends, in order; (2) between them the tube's own
/// Cost      that of the samples between, and a search for the first
Tube cutOut(const Tube& tube, geometry::Span span);

/// The tube met with what an axis has, from `least` to `most`; where no value of it would do, the axis' nearer end.
///
/// Ensures   what lies at an end of the axis reaches out by kTubeRounding there, so that the end itself is left in the
///           narrowed tube at every sample it serves; lo > hi stays so
/// Requires  least <= most
Tube heldWithin(Tube tube, double least, double most);

/// The value at which a tube without any bound rests.
inline constexpr double kNowhere = 0;

/// A tube through which some track runs at the rate given, and what had to give for that.
struct Passable {
  /// As the tube, without open samples or lo > hi. A value in one sample's bounds reaches the next one's at `rate`.
  Tube reachable;
  /// The tube's own bounds (open samples unbounded), replaced where `forced`.
  Tube wanted;
  /// Samples where the tube has to be left, or no value would do.
  std::vector<bool> forced;
};

/// The part of the tube from which a track can go on both ways at no more than `rate`. Where there is none, the tracks
/// of least integral outside the tube (least_miss.h): at the samples where one of them leaves it, that one's value is
/// asked for and nothing else; at the others the tube as it is. So every track through it is one of those.
///
/// Requires  at least one sample, times in order, rate > 0; bounds finite where not open
/// Ensures   (1) reachable lies inside wanted, wanted inside the tube where not forced, each to kTubeRounding
///           (2) every value in a sample of reachable has one in the next within rate x seconds between them
///           (3) a track with knots at samples that obeys the tube at the rate lies in reachable, to 2 kTubeRounding,
///               when nothing is forced
///           (4) no track at this rate has a lesser integral outside the tube than every track through reachable
/// Cost      linear, n log n over stretches that cannot be followed
Passable passable(const Tube& tube, double rate);

/// Tubes are narrowed by so much before anything is planned in them, so that rounding never leaves the tube asked for.
inline constexpr double kTubeRounding = 1e-9;

}  // namespace wend::pulls
