/// Who and what moves: marks, performers, props, crew, shelters, gear, cables, poles, links, speech. Metres.
#pragma once

#include <array>

#include "core/plan/moment.h"

namespace wend::plan {

enum class Posture { stand, sit, kneel, lie, crouch };
enum class LegShape { straight, smooth, arc };

/// From a mark to the next one.
struct Leg {
  LegShape shape = LegShape::straight;
  std::vector<Point> via;
  Point centre;      ///< arc
  double sweep = 0;  ///< arc: degrees, clockwise positive
  Pace pace = Pace::even;
  Extras extra;
  bool operator==(const Leg&) const = default;
};

/// A place somebody or the camera reaches at a time and leaves at another. The camera's marks have an id and a height,
/// performers' a posture and a facing, crew's a shelter or a place and a posture (stand or crouch).
struct Mark {
  std::string id;
  Moment at;
  std::optional<Moment> until;  ///< absent: leaves at once
  Point pos;
  std::optional<double> height;  ///< of the sensor, above the datum
  std::optional<double> facing;  ///< bearing, degrees
  Posture posture = Posture::stand;
  bool taped = false;
  std::string shelter;  ///< crew: instead of pos
  Leg leg;
  Extras extra;
  bool operator==(const Mark&) const = default;
};

struct Performer {
  base::Id<Performer> id;
  std::string name;
  std::string letter;
  double stature = 1.75;
  double radius = 0.25;
  std::vector<Mark> marks;
  Extras extra;
  bool operator==(const Performer&) const = default;
};

/// From `at` on at a place, or carried `by` a performer.
struct PropEntry {
  Moment at;
  Point pos;
  std::string by;
  double height = 1;  ///< above the floor
  Extras extra;
  bool operator==(const PropEntry&) const = default;
};

struct Prop {
  base::Id<Prop> id;
  std::string name;
  double wobble = 0.05;
  std::vector<PropEntry> track;
  Extras extra;
  bool operator==(const Prop&) const = default;
};

struct NearCamera {
  double within = 6;
  bool operator==(const NearCamera&) const = default;
};
/// The word that stands for whoever the lens is focused on, where somebody is to be seen. It wins over an id.
inline const std::string kFocusSubject = "subject";

struct Sees {
  std::string who;  ///< a performer, or "subject"
  bool operator==(const Sees&) const = default;
};
struct Stays {
  std::string shelter;
  bool operator==(const Stays&) const = default;
};

/// Keeps a radio link within the loss it bears.
struct Holds {
  std::string link;
  bool operator==(const Holds&) const = default;
};
/// Serves a pole: its microphone within reach of whoever speaks.
struct Reaches {
  std::string pole;
  bool operator==(const Reaches&) const = default;
};

/// What a crew member must have, for the whole take or from one moment until another.
struct Need {
  using What = std::variant<NearCamera, Sees, Stays, Holds, Reaches>;
  What what;
  std::optional<Moment> from, until;
  Extras extra;
  bool operator==(const Need&) const = default;
};

struct Crew {
  base::Id<Crew> id;
  std::string role;
  double radius = 0.28;
  double height = 1.8;
  double crouch = 1.1;
  double speed = 1.1;       ///< m/s at most
  std::vector<Mark> marks;  ///< the drawn route
  std::vector<Need> needs;
  bool glows{false};  ///< gives off light: a torch, a lit screen
  Extras extra{};
  bool operator==(const Crew&) const = default;
};

struct Shelter {
  base::Id<Shelter> id;
  std::string name;
  Point pos;
  double radius = 0.5;
  int holds = 1;
  Extras extra;
  bool operator==(const Shelter&) const = default;
};

struct Gear {
  base::Id<Gear> id;
  std::string name;
  Point pos;
  double radius = 0.3;
  double height = 1.5;
  bool glows = false;  ///< gives off light, as monitors do
  Extras extra{};
  bool operator==(const Gear&) const = default;
};

/// Lies on the floor along a polyline.
struct Cable {
  base::Id<Cable> id;
  std::string name;
  std::vector<Point> points;
  double height = 0.02;               ///< how far it stands up from the floor
  std::optional<Moment> from, until;  ///< absent: from the start, until the end
  Extras extra;
  bool operator==(const Cable&) const = default;
};

/// A boom: a microphone on a pole that somebody holds over the picture.
struct Pole {
  base::Id<Pole> id;
  std::string name;
  std::string crew;                     ///< who holds it
  double reach = 3;                     ///< metres on the level, shoulder to microphone
  double shoulder = 1.45;               ///< metres above the floor
  double above = 0.15;                  ///< metres the microphone stays over the top of the frame
  std::array<double, 2> gap{0.4, 0.9};  ///< metres from microphone to mouth, least and most
  Extras extra;
  bool operator==(const Pole&) const = default;
};

/// The word that stands for the camera where a link ends. It wins over an id.
inline const std::string kCameraEnd = "camera";

enum class LinkKind { control, picture, sound, talk };

/// A radio link between two ends. It holds while the loss on its path is within `budget`.
struct Link {
  base::Id<Link> id;
  std::string name;
  LinkKind kind = LinkKind::control;
  std::string from, to;  ///< each a crew member, a piece of gear, a performer, or "camera"
  double mhz = 2400;
  double budget = 95;  ///< dB
  double delay = 0;    ///< seconds from one end to the other
  Extras extra;
  bool operator==(const Link&) const = default;
};

struct Speech {
  std::string who;  ///< a performer
  Moment from, until;
  std::string words;
  std::string pole{};  ///< which one picks it up; empty: whichever serves it best
  Extras extra{};
  bool operator==(const Speech&) const = default;
};

struct Handover {
  std::string what;  ///< "focus", "boom", "rig"
  std::string from, to;
  Moment at;
  double over = 0;  ///< seconds
  Extras extra;
  bool operator==(const Handover&) const = default;
};

}  // namespace wend::plan
