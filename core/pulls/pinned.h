/// A stretch of a tube whose ends are tied to what goes on outside it: for planning a part of a take anew.
///
/// Frame     that of the tube.
#pragma once

#include <optional>

#include "core/geometry/point.h"
#include "core/pulls/tube.h"

namespace wend::pulls {

/// The values an axis has at the two ends of a stretch; nothing where it is free.
struct Pins {
  std::optional<double> from, until;
};

/// The least |change| a second that leads from one pin to the other; 0 with less than two.
double rateBetween(const Pins& pins, geometry::Span span);

/// The tube in which only what can be reached from the pins is left. Where nothing is left of a sample, it asks for the
/// value nearest to it that can be reached: there a track has to leave the tube, and fewestMoves goes as near as it
/// can.
///
/// Requires  at least two instants, the ends not open unless free; rate > 0, rateBetween(pins) <= rate
/// Ensures   (1) at a pin exactly its value; (2) every bound of a sample that is not open can be reached from both pins
///           at the rate; (3) every track inside the tube that starts and ends at the pins and keeps to the rate is
///           inside the result, and every sample the result shares with such a track is inside the tube
/// Cost      linear
Tube pinned(const Tube& tube, const Pins& pins, double rate);

}  // namespace wend::pulls
