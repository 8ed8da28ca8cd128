#include "core/light/sun.h"

#include <cmath>

#include "core/geometry/point.h"

namespace wend::light {
namespace {

using geometry::degrees;
using geometry::radians;

double sine(double angle) {
  return std::sin(radians(angle));
}
double cosine(double angle) {
  return std::cos(radians(angle));
}
double turnOf(double angle) {
  const double rest = std::fmod(angle, 360);
  return rest < 0 ? rest + 360 : rest;
}

/// What the year's orbit gives, in degrees: where the sun stands on the ecliptic and how that is tilted; `nodding` is
/// the swing of the equinox the stars' time has to follow.
struct OnEcliptic {
  double longitude = 0, obliquity = 0, nodding = 0;
};

OnEcliptic onEcliptic(double centuries) {
  const double T = centuries;
  const double mean = 280.46646 + T * (36000.76983 + T * 0.0003032);
  const double anomaly = 357.52911 + T * (35999.05029 - T * 0.0001537);
  const double centre = (1.914602 - T * (0.004817 + T * 0.000014)) * sine(anomaly) +
                        (0.019993 - T * 0.000101) * sine(2 * anomaly) + 0.000289 * sine(3 * anomaly);
  const double node = 125.04 - 1934.136 * T;
  const double nodding = -0.00478 * sine(node);
  const double obliquity = 23 + 26 / 60.0 + (21.448 - T * (46.8150 + T * (0.00059 - T * 0.001813))) / 3600;
  return {mean + centre - 0.00569 + nodding, obliquity + 0.00256 * cosine(node), nodding};
}

/// The angle of the stars over Greenwich.
double siderealAngle(double days, const OnEcliptic& now) {
  return 280.46061837 + 360.98564736629 * days + now.nodding * cosine(now.obliquity);
}

SunInSky inSky(const OnEcliptic& now) {
  const double along = sine(now.longitude);
  return {turnOf(degrees(std::atan2(cosine(now.obliquity) * along, cosine(now.longitude)))),
          degrees(std::asin(sine(now.obliquity) * along))};
}

constexpr double kParallax = 8.794 / 3600;  // of the sun on the horizon

}  // namespace

double daysSince2000(const UniversalTime& t) {
  // Days of the civil calendar, counted from March so that the leap day comes last.
  const int year = t.month <= 2 ? t.year - 1 : t.year, month = (t.month + 9) % 12;
  const int days = 365 * year + year / 4 - year / 100 + year / 400 + (153 * month + 2) / 5 + t.day;
  return days - 730426 + (t.seconds - 43200) / 86400;
}

SunInSky sunInSky(double days) {
  return inSky(onEcliptic(days / 36525));
}

SunPosition sunAt(const UniversalTime& time, const Place& place) {
  const double days = daysSince2000(time);
  const OnEcliptic now = onEcliptic(days / 36525);
  const SunInSky sun = inSky(now);
  const double hour = siderealAngle(days, now) + place.longitude - sun.rightAscension;
  const double east = -cosine(sun.declination) * sine(hour);
  const double north =
      sine(sun.declination) * cosine(place.latitude) - cosine(sun.declination) * cosine(hour) * sine(place.latitude);
  const double up =
      sine(sun.declination) * sine(place.latitude) + cosine(sun.declination) * cosine(hour) * cosine(place.latitude);
  const double centre = degrees(std::atan2(up, std::hypot(east, north)));
  const double elevation = centre - kParallax * cosine(centre);
  return {turnOf(degrees(std::atan2(east, north))), elevation, elevation + lift(elevation)};
}

double lift(double elevation, double millibar, double celsius) {
  if (elevation < -1) return 0;
  const double minutes = 1.02 / std::tan(radians(elevation + 10.3 / (elevation + 5.11)));
  return std::fmax(0.0, minutes / 60 * (millibar / 1010) * (283 / (273 + celsius)));
}

}  // namespace wend::light
