/// Where the lens looks over a take: keys that hold a bearing, keep somebody at a place of the frame or look along the
/// way, blended one into the next.
#pragma once

#include <functional>
#include <optional>
#include <variant>
#include <vector>

#include "core/base/result.h"
#include "core/geometry/keyed.h"
#include "core/motion/framed.h"

namespace wend::motion {

/// A fixed way to look; the bearing is absolute and unwrapped, so 350 and -10 are two ways to arrive.
struct AimBearing {
  double bearing = 0, tilt = 0;  ///< degrees, clockwise from plan north and up positive
};
/// Something that stands or moves, kept at a place of the frame.
struct AimTarget {
  std::function<geometry::Point3(double)> at;
  FramePlace place;
};
/// Along the way travelled, `offset` degrees clockwise of it: 180 looks back.
struct AimTravel {
  double offset = 0, tilt = 0;  ///< degrees
};

struct AimKey {
  geometry::KeySpan time;
  std::variant<AimBearing, AimTarget, AimTravel> on;
  int turns = 0;  ///< full turns added to the shortest way to a target or to the way travelled, clockwise positive
};

/// What carries the lens. The functions are pure, may be called from any thread and live as long as the AimTrack.
struct AimRig {
  std::function<geometry::Point3(double)> sensor;
  std::function<std::optional<geometry::Vec>(double)> travelDirection;  ///< as Track::travelDirection
  std::function<View(double)> view;
};

/// The lens jumps: by how much, in degrees, from just before `at` to `at`.
struct AimCut {
  double at = 0;  ///< seconds from the take's start
  double bearing = 0, tilt = 0;
};

/// From this many degrees on a jump is a cut.
inline constexpr double kAimCut = 0.5;

/// Ensures   1. while a key is alone, it holds exactly: the bearing given, the target at its place, the way travelled;
///           2. from `at` to `at + over` bearing and tilt blend apart, from what the key before shows at that instant
///           to
///              what this one shows then, both going on moving;
///           3. a fixed bearing is taken as it is written. That of a target or of travel starts as the value nearest to
///              the bearing just before (the first key: to 0) plus 360 `turns`, and from there follows continuously:
///              so the turn of a blend is fixed at its start;
///           4. straight over a target the bearing holds what it was;
///           5. cuts() lists every jump of more than kAimCut: keys without `over` that do not meet, corners of the way
///              under a travel aim, targets that jump or are passed straight over.
/// Error     unwrapping and cuts are found by looking every 0.05 s and halving down to a microsecond where the view
///           turns by more than half a degree: a full turn or a jump there and back within 0.05 s is missed. Between
///           the looks a target nearer than the pupil or out of reach of its place is shown as near as can be.
/// Cost      orientationAt: the callbacks, and logarithmic in the looks.
class AimTrack {
 public:
  Orientation orientationAt(double t) const;
  /// Degrees per second, clockwise and up positive, over 2 ms about t; at a key or a cut, of what follows it.
  Orientation ratesAt(double t) const;
  const std::vector<AimCut>& cuts() const { return cuts_; }

 private:
  friend base::Result<AimTrack> aimTrack(std::vector<AimKey> keys, AimRig rig, double length);
  struct Sample {
    double t;
    double bearing;  ///< unwrapped
  };
  /// What a key alone asks for at an instant; no bearing straight over a target.
  struct Wish {
    std::optional<double> bearing;
    double tilt = 0;
    Framed::Outcome outcome = Framed::Outcome::found;
  };
  class Tracing;

  AimTrack() = default;
  Wish wish(std::size_t key, double t) const;
  Orientation shownBy(std::size_t key, double t) const;
  double lastShown(std::size_t key, double length) const;
  base::Problems trace(double length);
  base::Problems follow(std::size_t key, double length, std::vector<double>& jumps);
  void findCuts(std::vector<double> instants);

  std::vector<AimKey> keys_;
  std::vector<geometry::KeySpan> times_;
  AimRig rig_;
  std::vector<std::vector<Sample>> samples_;  ///< per key, over the time it is shown; none for a fixed bearing
  std::vector<AimCut> cuts_;
  std::vector<double> breaks_;  ///< instants at which the turning may change abruptly
};

/// The aim of a take of `length` seconds.
///
/// Fails     "no-aims"; "aims-overlap" (a key before the previous is done); "not-finite"; "turns-on-bearing" (a fixed
///           bearing says its turns itself); "travel-without-moves"; "target-too-near" and "place-out-of-reach" with
///           the first instant. Every one found, `where` a pointer into the list ("/3/place").
base::Result<AimTrack> aimTrack(std::vector<AimKey> keys, AimRig rig, double length);

}  // namespace wend::motion
