/// One instant of the take as every face of Wend shows it: poses, frame, focus, light, people.
///
/// Units     metres, seconds, degrees, millimetres for `focal`, stops as T-numbers, offsets in stops (+ over).
///           A value that cannot be known is an empty optional: unknown, never fine.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "core/geometry/pose.h"
#include "core/optics/distance.h"
#include "core/optics/figure.h"
#include "core/optics/frame.h"

namespace wend::snags {

using geometry::Point;

inline constexpr double kInfinity = std::numeric_limits<double>::infinity();

struct CameraAt {
  geometry::Pose sensor;
  geometry::Pose pupil;
  double speed = 0;    ///< along the floor, m/s
  double panRate = 0;  ///< degrees per second, clockwise positive
  double tiltRate = 0;
  double travel = 0;    ///< bearing of travel; the last one while the camera stands
  bool moving = false;  ///< faster than 0.05 m/s
  bool operator==(const CameraAt&) const = default;
};

struct LensAt {
  double focal = 0;
  double hfov = 0, vfov = 0;
  optics::HalfTangents half;
  double zoomRate = 0;  ///< percent of the focal length per second
  bool operator==(const LensAt&) const = default;
};

/// Distances are from the sensor by the plan's focus distance kind; `far` may be infinite.
struct BandAt {
  double near = 0, far = kInfinity;
  bool operator==(const BandAt&) const = default;
};

/// One of those that a split is on.
struct SplitOn {
  std::string id;
  double distance = 0;  ///< from the sensor, the one that drives focus
  double wobble = 0;    ///< how far it and the rig together land off their marks
  bool operator==(const SplitOn&) const = default;
};

struct FocusAt {
  std::vector<std::string> on;  ///< one, or [before, after] during a change of subject; a split lists "a+b"
  std::vector<SplitOn> split;   ///< whom a split is on, once it is known and no change is under way; else empty
  bool changing = false;
  bool known = false;  ///< false before there is a subject
  optics::SubjectDistances wanted;
  double wantedDistance = 0;  ///< the one that drives focus
  BandAt wantedBand;
  double slackNear = 0, slackFar = kInfinity;  ///< settings that keep the subject inside the slack
  bool tooClose = false;
  double setDistance = 0;  ///< infinite allowed
  BandAt setBand;
  double barrel = 0;      ///< degrees
  double barrelRate = 0;  ///< degrees per second
  /// Of a split: that of whoever has the least room in the sharp band about what the split asks for, and who that is.
  /// Unknown during a change of subject.
  std::optional<double> wobble, warmth;
  std::string tightest;  ///< empty of a single subject
  bool operator==(const FocusAt&) const = default;
};

struct IrisAt {
  std::optional<double> needed;
  double set = 0;
  double density = 0;  ///< stops of neutral density in front of the lens, fixed and variable
  bool operator==(const IrisAt&) const = default;
};

struct PerformerAt {
  std::string id;
  bool present = false;
  Point pos;
  double eyes = 0, top = 0, floor = 0;  ///< heights above the datum
  double speed = 0;
  optics::SubjectDistances distances;
  optics::Showing inFrame = optics::Showing::out;
  double q = 0;              ///< frame height at the subject over standing height
  std::string size;          ///< shot size of q
  double figureInFrame = 0;  ///< the figure's height in frame heights
  Point place;               ///< of the eyes, half-frames, x right, y up
  double frameLeft = 0, frameRight = 0, frameTop = 0, frameBottom = 0;  ///< the figure's box, half-frames
  std::optional<double> needed;                                         ///< stop its face asks for
  std::optional<double> lux;
  std::optional<double> offset;  ///< of the face, in stops, + over
  double blur = 0;               ///< of its eyes, in blur circles
};

struct CrewAt {
  std::string id;
  bool present = false;
  bool carried = false;  ///< by the camera
  Point pos;
  double floor = 0, height = 0, radius = 0;
  std::string shelter;  ///< where it stands, if in one
  bool walking = false;
  bool seen = false;
  std::string via;                 ///< "direct", the mirror's id, or that of glass that acts as one
  std::optional<double> nextSeen;  ///< seconds until it is seen next
  bool operator==(const CrewAt&) const = default;
};

/// Where the sun stands, whether or not it reaches anything.
struct SunAt {
  double bearing = 0;    ///< plan bearing, in [0, 360)
  double elevation = 0;  ///< as the air shows it, degrees; negative: it is down
};

struct Background {
  double brightest = 0, darkest = 0;  ///< stops against the set stop
};

/// What a radio link loses at an instant.
struct LinkAt {
  double metres = 0;                      ///< between its ends
  double margin = 0;                      ///< dB left of its budget; negative: it is lost
  int walls = 0, leaves = 0, bodies = 0;  ///< in its way
};

/// From shoulder to microphone.
struct PoleLine {
  geometry::Point3 shoulder, microphone;
};

/// How a microphone on a pole serves a line of speech at an instant.
struct BoomAt {
  double time = 0;
  std::optional<double> top;    ///< of the frame over the speaker, above the datum, while the speaker is in it
  std::optional<double> gap;    ///< microphone to mouth; unknown without a lens
  std::optional<double> reach;  ///< on the level, shoulder to microphone; unknown while the holder is nowhere
  std::string lamp;             ///< the lamp nearest to the pole; empty: none or not known
  double lampMetres = 0;
  bool walled = false;           ///< something solid of the set stands in the pole's way
  Point pos;                     ///< of the speaker
  std::optional<PoleLine> held;  ///< where the pole is; unknown while the holder is nowhere
};

/// Links, poles and cables at an instant.
struct TrapsNow {
  std::vector<std::pair<std::string, std::optional<LinkAt>>> links;  ///< by id, all of the plan
  struct Line {
    std::string pole, who;
    BoomAt at;
  };
  std::vector<Line> booms;  ///< lines of speech that run
  struct Shut {
    std::string cable, opening;
  };
  std::vector<Shut> shutIn;              ///< cables through an opening that is shut
  std::optional<double> cameraCableOut;  ///< metres that the camera's cable has to be long by then
};

struct Instant {
  double time = 0;
  long frameIndex = 0;
  std::string timecode;
  std::string beat;  ///< id of the beat that runs, empty before the first
  CameraAt camera;
  std::optional<LensAt> lens;
  FocusAt focus;
  IrisAt iris;
  std::vector<PerformerAt> performers;
  std::vector<CrewAt> crew;
  std::optional<Background> background;
  std::optional<TrapsNow> traps;  ///< where somebody asked for them (answers/whole_take.h)
  std::optional<SunAt> sun;       ///< unknown without a site, a date and a time of day
};

}  // namespace wend::snags
