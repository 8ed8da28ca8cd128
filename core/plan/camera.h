/// Camera, rig and lens, and the keys of aim, focus, zoom and iris. Millimetres for gate, blur circle and focal
/// lengths; stops as T-numbers.
#pragma once

#include <array>

#include "core/plan/over_focal.h"
#include "core/plan/people.h"

namespace wend::plan {

struct AimKey {
  KeyTime time;
  Target on = OnBearing{};
  std::array<double, 2> place{0, 0};  ///< where the target stands in the frame, half-frames, x right, y up
  int turns = 0;                      ///< full turns added to the shortest way, clockwise positive
  Extras extra;
  bool operator==(const AimKey&) const = default;
};

enum class Receptor { dome, flat };

struct Meter {
  Receptor receptor = Receptor::dome;
  double constant = 330;  ///< C of the incident exposure equation, light/exposure.h
  Extras extra;
  bool operator==(const Meter&) const = default;
};

enum class RigKind { stabilised, handheld, dolly, crane };

struct RigItem {
  std::string name;
  double kg = 0;
  Extras extra;
  bool operator==(const RigItem&) const = default;
};

struct Rig {
  RigKind kind = RigKind::stabilised;
  double radius = 0.35;                 ///< metres
  std::array<double, 2> payload{0, 0};  ///< kg, least and most; both 0: unknown
  std::vector<RigItem> items;
  Extras extra;
  bool operator==(const Rig&) const = default;
};

/// A crew member carried along with the camera.
struct CarriedBody {
  std::string crew;
  double behind = 0.5;  ///< metres behind the sensor, along the lens' bearing
  double right = 0;     ///< metres
  Extras extra;
  bool operator==(const CarriedBody&) const = default;
};

/// A variable density in front of the lens, on top of the fixed one.
struct DensityKey {
  KeyTime time;
  double stops = 0;
  Extras extra;
  bool operator==(const DensityKey&) const = default;
};

/// A cable from a fixed anchor to the camera, trailing along the way it has gone.
struct TrailingCable {
  Point anchor;
  double length = 0;  ///< metres there are of it
  Extras extra;
  bool operator==(const TrailingCable&) const = default;
};

struct Camera {
  std::vector<Mark> marks;
  std::vector<AimKey> aims;
  std::array<double, 2> gate{24.9, 14.0};  ///< mm
  double squeeze = 1;
  std::optional<double> aspect;  ///< width over height, delivered; absent: the whole gate
  double blurCircle = 0.025;     ///< mm
  double exposureIndex = 800;
  double shutterDeg = 180;
  double ndStops = 0;
  std::vector<DensityKey> nd;  ///< empty: `ndStops` is all there is
  Meter meter;
  Rig rig;
  std::vector<CarriedBody> bodies;
  std::optional<TrailingCable> cable;
  Extras extra;
  bool operator==(const Camera&) const = default;
};

struct FocusMark {
  std::optional<double> distance;  ///< metres; absent: infinity
  double deg = 0;                  ///< of the barrel
  std::string witness{};           ///< what is written on the ring there; empty: no mark of its own
  Extras extra{};
  bool operator==(const FocusMark&) const = default;
};
struct IrisMark {
  double stop = 0, deg = 0;
  Extras extra;
  bool operator==(const IrisMark&) const = default;
};
struct ZoomMark {
  double focal = 0, deg = 0;
  Extras extra;
  bool operator==(const ZoomMark&) const = default;
};

struct LensLimits {
  double focusDegPerSecond = 120;
  double irisStopsPerSecond = 1;
  double zoomPercentPerSecond = 100;  ///< of the focal length
  Extras extra{};
  bool operator==(const LensLimits&) const = default;
};

struct Lens {
  std::string name;
  std::array<double, 2> focal{35, 35};  ///< mm
  std::array<double, 2> stop{2.8, 22};
  double closeFocus = 0.6;  ///< metres from the sensor
  double pupilAhead = 0;    ///< metres in front of the sensor
  OverFocal transmission = 1;
  OverFocal breathing = 0;
  /// Metres by which the point the whole rig balances on moves along the lens, forward positive, from wherever it was
  /// measured first: only differences count.
  OverFocal balance = 0;
  std::vector<FocusMark> focusMarks;  ///< in order of distance and of degrees, each rising or falling throughout
  std::vector<IrisMark> irisMarks;    ///< likewise
  std::vector<ZoomMark> zoomMarks;    ///< likewise
  LensLimits limits;
  Extras extra;
  bool operator==(const Lens&) const = default;
};

/// Metres by which people and rigs stray from where the plan has them.
struct Wobble {
  double taped = 0.12, walking = 0.20, untaped = 0.30, operatorMoving = 0.20, operatorStill = 0.07, dolly = 0.03;
  Extras extra;
  bool operator==(const Wobble&) const = default;
};

enum class DistanceKind { flat, slant, floor };

struct FocusKey {
  KeyTime time;
  Target on = OnDistance{3};
  Extras extra;
  bool operator==(const FocusKey&) const = default;
};
struct HandPull {
  Moment at;
  double over = 0;      ///< seconds
  double distance = 1;  ///< metres from the sensor
  Extras extra;
  bool operator==(const HandPull&) const = default;
};
struct Focus {
  DistanceKind distance = DistanceKind::flat;
  double blurShare = 0.7;  ///< of the blur circle that a pull may use up
  std::vector<FocusKey> keys;
  std::vector<HandPull> pulls;  ///< by hand; empty: planned by Wend
  Extras extra;
  bool operator==(const Focus&) const = default;
};

struct ZoomKey {
  KeyTime time;
  double focal = 0;  ///< mm, when `size` is empty
  std::string size;  ///< a shot size's name
  Target of = OnPerformer{};
  Extras extra;
  bool operator==(const ZoomKey&) const = default;
};
struct Zoom {
  double slackShare = 0.06;  ///< of the focal length that a size asks for
  std::vector<ZoomKey> keys;
  Extras extra;
  bool operator==(const Zoom&) const = default;
};

struct IrisKey {
  KeyTime time;
  double stop = 4;
  Extras extra;
  bool operator==(const IrisKey&) const = default;
};
struct Iris {
  double slackStops = 0.33;     ///< either way
  std::string exposePerformer;  ///< empty: for whoever the focus is on
  std::vector<IrisKey> keys;    ///< empty: planned by Wend
  Extras extra;
  bool operator==(const Iris&) const = default;
};

struct BeamOutput {
  double candela = 1000, beam = 40, field = 60;  ///< on the axis; degrees, full angles
  bool operator==(const BeamOutput&) const = default;
};
struct IesOutput {
  std::string file;
  double scale = 1;
  bool operator==(const IesOutput&) const = default;
};
struct LevelKey {
  KeyTime time;
  double share = 1;  ///< of full light
  std::string name, by;
  Extras extra;
  bool operator==(const LevelKey&) const = default;
};
struct Fixture {
  base::Id<Fixture> id;
  std::string name;
  std::optional<bool> inReadings;  ///< absent: true where an area with readings covers the face
  Point pos;
  double height = 2.5;  ///< metres above the datum
  double bearing = 0;   ///< degrees
  double tilt = -90;    ///< degrees, up positive
  std::variant<BeamOutput, IesOutput> output;
  std::vector<LevelKey> level;  ///< empty: full all take
  Extras extra;
  bool operator==(const Fixture&) const = default;
};

}  // namespace wend::plan
