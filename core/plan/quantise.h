/// The steps numbers of a plan are kept in, and the ranges they may lie in: one row for every kind of number.
///
/// Numbers are put on their step where an edit brings them in and nowhere else. Afterwards equality is exact, an undone
/// edit is undone to the bit, and a saved file shows "3.25" instead of "3.2500000000000004".
#pragma once

#include <string>

#include "core/geometry/point.h"

namespace wend::plan {

/// One kind of number. `perUnit` steps make one unit: 10000 steps a metre are 0.1 mm.
struct NumberKind {
  double perUnit = 1;
  double least = 0, most = 0;
  const char* unit = "";
};

namespace kinds {
inline constexpr NumberKind kPlace{10000, -10000, 10000, "m"};
inline constexpr NumberKind kHeight{10000, -1000, 1000, "m"};
inline constexpr NumberKind kExtent{10000, 0, 10000, "m"};
inline constexpr NumberKind kSize{10000, 0.001, 10000, "m"};  ///< what has to have a size
inline constexpr NumberKind kMoment{1000, -86400, 86400, "s"};
inline constexpr NumberKind kDuration{1000, 0, 86400, "s"};
inline constexpr NumberKind kTimeOfDay{1, 0, 86399, "s"};           ///< as clocks on a wall tell it
inline constexpr NumberKind kMinuteOfDay{1.0 / 60, 0, 86340, "s"};  ///< to the minute
inline constexpr NumberKind kBearing{100, -36000, 36000, "degrees"};
inline constexpr NumberKind kTilt{100, -90, 90, "degrees"};
inline constexpr NumberKind kBeam{100, 0.01, 360, "degrees"};
inline constexpr NumberKind kFocal{100, 1, 5000, "mm"};
inline constexpr NumberKind kGate{1000, 1, 200, "mm"};
inline constexpr NumberKind kBlurCircle{100000, 0.0005, 1, "mm"};
inline constexpr NumberKind kStop{1000, 0.5, 128, ""};
inline constexpr NumberKind kStops{1000, 0, 30, "stops"};
inline constexpr NumberKind kShare{10000, 0, 1, ""};
inline constexpr NumberKind kFactor{10000, 0.0001, 1000, ""};
inline constexpr NumberKind kInFrame{10000, -5, 5, "half-frames"};
inline constexpr NumberKind kIndex{10, 1, 1000000, ""};
inline constexpr NumberKind kBody{10000, 0.01, 10, "m"};  ///< radius of somebody or something that stands
inline constexpr NumberKind kStature{10000, 0.3, 3, "m"};
inline constexpr NumberKind kWobble{10000, 0.0001, 10, "m"};
inline constexpr NumberKind kMass{1000, 0, 10000, "kg"};
inline constexpr NumberKind kSpeed{1000, 0.001, 100, "m/s"};
inline constexpr NumberKind kCandela{10, 0, 1e9, "cd"};
inline constexpr NumberKind kDegreesPerSecond{100, 0.01, 100000, "degrees/s"};
inline constexpr NumberKind kOffset{10000, -10000, 10000, "m"};  ///< from where something is drawn
inline constexpr NumberKind kDecibels{100, 0, 300, "dB"};
inline constexpr NumberKind kMegahertz{1000, 1, 100000, "MHz"};
inline constexpr NumberKind kKelvin{1, 1000, 20000, "K"};
inline constexpr NumberKind kDegreesOnEarth{10000, -180, 180, "degrees"};  ///< about 10 m
inline constexpr NumberKind kTransmission{10000, 0.01, 1, ""};
inline constexpr NumberKind kBreathing{10000, -1, 1, ""};
inline constexpr NumberKind kBalance{100000, -1, 1, "m"};       ///< to a hundredth of a millimetre
inline constexpr NumberKind kSizeShare{10000, 0.001, 100, ""};  ///< of a frame's height over standing height
}  // namespace kinds

/// `value` on the nearest step of its kind, halves away from zero, never negative zero. Values outside the kind's range
/// come back untouched, for the range check to report as they were typed.
/// Ensures   (1) quantised(quantised(v)) == quantised(v)  (2) within half a step of v  (3) the result is the double
///           nearest to a decimal of at most six places: its shortest text is that decimal
double quantised(double value, const NumberKind& kind);

geometry::Point quantised(geometry::Point point);

/// "from 0 to 360 degrees": what a Problem says it expected.
std::string rangeText(const NumberKind& kind);

}  // namespace wend::plan
