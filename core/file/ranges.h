/// The ranges that numbers of a plan keep to: wide enough for any shot, narrow enough that arithmetic on them stays
/// finite and a slipped decimal mark is caught.
#pragma once

namespace wend::file {

/// From `least` to `most` in `unit`; with `above` the least itself is out.
struct Range {
  double least, most;
  const char* unit;
  bool above = false;
};

inline constexpr Range kCoordinate{-10000, 10000, "m"};
inline constexpr Range kHeight{-1000, 1000, "m"};
inline constexpr Range kSize{0, 10000, "m"};
inline constexpr Range kPositiveSize{0, 10000, "m", true};
inline constexpr Range kStature{0.3, 3, "m"};
inline constexpr Range kBodyRadius{0, 10, "m", true};
inline constexpr Range kOffset{-1000, 1000, "m"};
inline constexpr Range kPupil{-10, 10, "m"};
inline constexpr Range kPixelSize{0, 100, "m", true};
inline constexpr Range kWobble{0, 10, "m", true};
inline constexpr Range kCell{0.01, 10, "m"};
inline constexpr Range kSpeed{0, 100, "m/s", true};
inline constexpr Range kTime{-86400, 86400, "s"};
inline constexpr Range kDuration{0, 86400, "s"};
inline constexpr Range kTakeLength{0, 86400, "s", true};
inline constexpr Range kAngle{-36000, 36000, "degrees"};
inline constexpr Range kTilt{-90, 90, "degrees"};
inline constexpr Range kOpeningAngle{-180, 180, "degrees"};
inline constexpr Range kBeamAngle{0, 360, "degrees", true};
inline constexpr Range kShutter{0, 360, "degrees", true};
inline constexpr Range kMargin{0, 90, "degrees"};
inline constexpr Range kBarrel{-100000, 100000, "degrees"};
inline constexpr Range kBarrelSpeed{0, 100000, "degrees/s", true};
inline constexpr Range kShare{0, 1, ""};
inline constexpr Range kPositiveShare{0, 1, "", true};
inline constexpr Range kFactor{0, 1000, "", true};
inline constexpr Range kHalfFrames{-5, 5, "half-frames"};
inline constexpr Range kTurns{-100, 100, "turns"};
inline constexpr Range kMillimetres{0, 10000, "mm", true};
inline constexpr Range kSqueeze{0.1, 10, "", false};
inline constexpr Range kAspect{0.1, 20, "", false};
inline constexpr Range kStop{0.5, 128, "T"};
inline constexpr Range kStops{-50, 50, "stops"};
inline constexpr Range kDensity{0, 30, "stops"};
inline constexpr Range kGate{1, 200, "mm"};           // an inch or two is no millimetre
inline constexpr Range kBlurCircle{0.0005, 1, "mm"};  // 25 is in micrometres
inline constexpr Range kExposureIndex{1, 10'000'000, ""};
inline constexpr Range kMeterConstant{0, 10000, "", true};
inline constexpr Range kBreathing{-10, 10, ""};
inline constexpr Range kBalance{-1, 1, "m"};
inline constexpr Range kKilograms{0, 10000, "kg"};
inline constexpr Range kCandela{0, 1e9, "cd"};
inline constexpr Range kPeople{0, 1000, "people"};
inline constexpr Range kTakeNumber{0, 1'000'000, ""};
inline constexpr Range kKelvin{1000, 20000, "K"};
inline constexpr Range kDecibels{0, 300, "dB"};
inline constexpr Range kMegahertz{1, 100000, "MHz"};
inline constexpr Range kMinutes{0, 10000, "min", true};
inline constexpr Range kHertz{1, 1000, "Hz"};
inline constexpr Range kLatitude{-90, 90, "degrees"};
inline constexpr Range kLongitude{-180, 180, "degrees"};
inline constexpr Range kHoursAhead{-14, 14, "h"};
inline constexpr Range kStopsPerSecond{0, 1000, "stops/s", true};
inline constexpr Range kPercentPerSecond{0, 100000, "%/s", true};
inline constexpr Range kSizeShare{0, 100, "", true};
inline constexpr Range kRateTerm{1, 1'000'000, ""};

}  // namespace wend::file
