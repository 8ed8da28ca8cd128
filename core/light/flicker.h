/// Lamps on the mains pulse twice a cycle; which shutters see every frame alike.
///
/// Frame     shutter in degrees, rates in frames a second, mains in hertz (50 or 60).
/// Source    exposure of a light 1 + m cos(2 pi f t) over a time T varies by m |sin(pi f T)| / (pi f T) of its mean, so
///           by nothing when T is a whole number of pulses: the integral, worked out here.
/// Stops holding for lamps whose pulses are no sine (dimmers that cut the phase, cheap LED drivers with a frequency of
///           their own), for a shutter that opens line by line (the frames are alike then, but bands may stand in
///           them), and where generators drift.
#pragma once

#include <vector>

namespace wend::light {

struct SteadyShutter {
  double degrees = 180;
  int pulses = 1;  ///< of the lamp, in each frame
};

/// Every shutter up to 360 degrees that holds a whole number of pulses, narrowest first: n x 360 rate / (2 mains).
/// Requires  rate and mains positive. Empty when even the open shutter sees less than a pulse.
std::vector<SteadyShutter> steadyShutters(double rate, double mains);

/// The steady shutter nearest to a wanted one; at the middle between two the narrower. Requires one or more.
double nearestSteady(double shutterDeg, const std::vector<SteadyShutter>& steady);

/// True when the pulses fall into every frame alike whatever the shutter: 2 mains / rate is a whole number to within
/// `tolerance` pulses a frame.
bool inStep(double rate, double mains, double tolerance = 1e-6);

/// Stops between the brightest and the darkest frame, for light whose pulses swing by `depth` of their mean: 1 for a
/// lamp that goes out between pulses, about 0.1 for a large incandescent one (from memory).
/// Ensures   (1) 0 at every steady shutter and for rates in step; (2) the longer the shutter, the smaller its envelope.
/// Requires  0 <= depth <= 1, shutter positive.
double rippleStops(double shutterDeg, double rate, double mains, double depth = 1);

}  // namespace wend::light
