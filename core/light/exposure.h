/// The incident exposure equation and its relatives: lux, T-numbers, exposure values, density, offsets in stops.
///
/// Frame     stops are T-numbers; a difference "in stops" is a power of two of light, positive for more of it.
/// Source    T^2 / t = E S / C and L = K 2^EV / S, ISO 2720 "General purpose photographic exposure meters", whose
///           range for C is narrower for a flat receptor (about 240 to 400, commonly 250) than for a dome (320 to 540,
///           330 here); the ranges are quoted from memory.
/// Stops holding where reciprocity does, which digital sensors give over every shutter time of a running camera.
#pragma once

namespace wend::light {

/// What turns light into a stop.
struct Exposure {
  double index = 800;  ///< exposure index S
  double shutterDeg = 180;
  double rate = 24;       ///< frames per second
  double constant = 330;  ///< C of the receptor
  double ndStops = 0;     ///< density in front of the lens, in stops
};

/// Seconds one frame is open: shutter / (360 rate). Requires rate positive.
double shutterSeconds(double shutterDeg, double rate);

/// The T-number a face under `lux` needs: sqrt(E S t / (C 2^nd)).
/// Requires  lux >= 0, the rest positive. Ensures (1) four times the light needs twice the T-number; (2) a stop of
///           density opens by a stop.
double stopFor(double lux, const Exposure& exposure);

/// The illuminance a reading stands for: C T^2 / (S t), undoing stopFor WITHOUT the density, for readings are written
/// without it.
double luxOfReading(double stop, const Exposure& exposure);

/// The T-number a reading asks for behind the density: reading 2^(-nd/2).
double throughDensity(double reading, double ndStops);

/// How far a face that needs `needed` is off at `set`: 2 log2(needed / set), positive over, negative under.
double offsetStops(double needed, double set);

/// Blends two needs in stops: share 0 is `from`, 1 is `to`.
double blendedStop(double from, double to, double share);

}  // namespace wend::light
