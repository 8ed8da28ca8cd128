/// A luminaire as its data file describes it: how it shines, how large it is, and how its lamp takes being tilted.
///
/// Frame     metres, degrees; candela at full level with every factor of the file in them but that of the tilt.
/// Source    IES LM-63: the tilt factors (TILT=INCLUDE) give the light at an angle of tilt relative to the light as
///           measured; the shape of the luminous opening by the signs of its sides.
/// Stops holding nearer than about five times the luminaire's largest side, where it is no point.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/light/beam.h"
#include "core/light/photometry.h"

namespace wend::light {

struct TiltFactor {
  double angle = 0;  ///< degrees of tilt from hanging straight down
  double factor = 1;
};

/// The factor at an angle of tilt: linear between the entries, the outermost ones beyond them. A list that ends at 90
/// degrees or below counts for a lamp turned over as well: 120 is then read at 60. No entries: 1.
/// Requires  angles increasing, from 0 to 180.
/// Stops holding for a luminaire turned about its other axis: which of the two the list was measured about is known
///           from the file (base up or lying, see LM-63), and a lamp here is only ever tilted about its level axis.
double tiltFactor(const std::vector<TiltFactor>& factors, double fromStraightDown);

struct Luminaire {
  Photometry photometry;
  std::vector<TiltFactor> tilt;
  double largestSide = 0;  ///< of its luminous opening, metres; 0 for a point
};

/// The lamp's distribution when its axis points `tilt` degrees up (-90 is straight down), each value times `scale`.
Distribution distributionOf(const std::shared_ptr<const Luminaire>& luminaire, double tilt, double scale);

/// Luminaires by the name under which a plan asks for them. A name that is not there is a lamp of unknown light.
using Luminaires = std::map<std::string, std::shared_ptr<const Luminaire>>;

}  // namespace wend::light
