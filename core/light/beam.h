/// How strongly a lamp shines in a direction: the beam of a spot, or any distribution that can be asked.
///
/// Frame     candela; angles in degrees off the lamp's axis, and around it.
#pragma once

#include <functional>

namespace wend::light {

/// A round spot by the three figures its data sheet gives. Beam and field are the full angles at which the intensity
/// is a half and a tenth of that on the axis, as data sheets define them.
struct Beam {
  double candela = 1000;
  double beam = 40;
  double field = 60;
};

/// I0 2^(-(a / (beam/2))^n), n = ln(log2 10) / ln(field / beam).
/// Requires  0 < beam < field.
/// Ensures   (1) candela on the axis, a half at beam/2, a tenth at field/2; (2) never rises away from the axis.
/// Stops holding for what is not a round spot: shutters, flaps, bare bulbs, tubes. Past the field it is the smooth
///           continuation of the curve, where a real lamp may spill more.
double intensity(const Beam& beam, double offAxis);

/// Lumens over all directions: 2 pi times the integral of intensity x sine, by Simpson's rule.
/// Ensures   to a millionth of itself for beams of 1 degree and more
/// Stops holding where `intensity` does
double totalFlux(const Beam& beam);

/// Candela in the direction `offAxis` degrees (0 to 180) from the lamp's axis and `around` degrees about it, from the
/// lamp's upward clockwise as seen from behind it.
using Distribution = std::function<double(double offAxis, double around)>;

Distribution distributionOf(const Beam& beam);

}  // namespace wend::light
