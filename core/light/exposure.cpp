#include "core/light/exposure.h"

#include <cmath>

#include "core/units/stop.h"

namespace wend::light {

double shutterSeconds(double shutterDeg, double rate) {
  return shutterDeg / (360 * rate);
}

double stopFor(double lux, const Exposure& e) {
  const double unfiltered = lux * e.index * shutterSeconds(e.shutterDeg, e.rate) / e.constant;
  return throughDensity(std::sqrt(unfiltered), e.ndStops);
}

double luxOfReading(double stop, const Exposure& e) {
  return e.constant * stop * stop / (e.index * shutterSeconds(e.shutterDeg, e.rate));
}

double throughDensity(double reading, double ndStops) {
  return units::closedBy(reading, -ndStops);
}

double offsetStops(double needed, double set) {
  return units::stopsBetween(set, needed);
}

double blendedStop(double from, double to, double share) {
  // The ends exactly: a blend that is over must not differ from its key in the last digit.
  if (share <= 0) return from;
  if (share >= 1) return to;
  return units::closedBy(from, share * units::stopsBetween(from, to));
}

}  // namespace wend::light
