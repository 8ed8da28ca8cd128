/// Where the sun stands, by date and place, and how far off it is bent by the air.
///
/// Frame     degrees; latitude north and longitude east positive; bearings clockwise from TRUE north. A plan whose own
///           north bears b from true north has the sun at bearing - b; a compass needs its declination as well.
/// Source    Jean Meeus, "Astronomical Algorithms", 2nd ed.: chapter 25, low accuracy; 12 for sidereal time; 16,
///           formula 16.4 (Saemundsson), for the air. The same series as the solar calculator of NOAA's Global
///           Monitoring Laboratory.
/// Error     0.01 degrees in the sky within some centuries of 2000 (stated by Meeus), checked to 0.01 against the
///           worked example of NREL/TP-560-34302; near the zenith the bearing errs by more. The air near the horizon
///           differs from day to day by a tenth of a degree and more.
/// Stops holding where hills and houses stand before the horizon: they are not in it.
#pragma once

namespace wend::light {

/// Date in the Gregorian calendar and seconds since midnight, both in universal time: local time less its zone and any
/// summer time. Seconds below 0 or over 86400 mean the day before or after.
struct UniversalTime {
  int year = 2000, month = 1, day = 1;
  double seconds = 0;
};

struct Place {
  double latitude = 0, longitude = 0;
};

/// Days since noon of 1 January 2000, universal time. Requires a year after 1582.
double daysSince2000(const UniversalTime& time);

/// Where the sun stands among the stars: what an almanac prints.
struct SunInSky {
  double rightAscension = 0;  ///< apparent, degrees in [0, 360)
  double declination = 0;     ///< apparent
};
SunInSky sunInSky(double daysSince2000);

struct SunPosition {
  double bearing = 0;    ///< of its centre, in [0, 360), from true north
  double elevation = 0;  ///< of its centre without the air, seen from the ground; negative below the horizon
  double seen = 0;       ///< the same as the air shows it, at 1010 mbar and 10 degrees Celsius
};
SunPosition sunAt(const UniversalTime& time, const Place& place);

/// Degrees by which the air lifts what stands at a true elevation; 0 from a degree below the horizon on, where nothing
/// of it is seen.
double lift(double trueElevation, double millibar = 1010, double celsius = 10);

}  // namespace wend::light
