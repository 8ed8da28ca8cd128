/// Colour temperature in the measure in which equal steps look alike, and the jumps between one light and the next.
///
/// Frame     kelvin as a meter reads them; mired, a million by the kelvin; a shift is positive towards warm.
/// Source    mired: I. G. Priest's observation of 1932 that the just noticeable difference goes with the difference of
///           the reciprocals (as told at handwiki.org/wiki/Mired).
/// Stops holding for light that is no black body's: green of tubes, coloured light. Those need a second figure.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace wend::light {

/// Requires positive, both ways.
double mired(double kelvin);
double kelvinOf(double mired);

/// mired(to) - mired(from): what a filter would have to do, positive warmer.
double miredShift(double fromKelvin, double toKelvin);

/// Between two lights, linear in mired; share 0 is `from`, 1 is `to`.
double blendedKelvin(double fromKelvin, double toKelvin, double share);

/// A change of colour from one place of a way to the next that is known.
struct ColourJump {
  std::size_t before = 0, after = 0;  ///< places in the list
  double mired = 0;                   ///< shift, positive warmer
};

/// The jumps of at least `least` mired along a way through areas, in order. Unknown places are passed over: the next
/// known one is held against the last known one.
/// Ensures   (1) two areas of one colour are no jump, whatever lies unknown between; (2) the shifts of all jumps with
///           least 0 add up to that from the first known place to the last.
std::vector<ColourJump> colourJumps(const std::vector<std::optional<double>>& kelvin, double least);

}  // namespace wend::light
