/// What the rules read: the take as computed, in plain values. Made by core/answers; rules add nothing to it.
///
/// Frame     plan frame, seconds from the start of the take. Samples stand at frame times k / rate, k = 0, 1, ... and
///           the last one at the take's end.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/geometry/point.h"
#include "core/plan/plan.h"
#include "core/pulls/slot.h"
#include "core/pulls/workload.h"
#include "core/snags/instant.h"
#include "core/snags/need_fails.h"

namespace wend::sight {
struct KnownSight;
}
namespace wend::answers {
struct KnownInstants;
}

namespace wend::snags {

using geometry::Span;

/// A span in which somebody or something is in sight, or may be.
struct SeenSpan {
  Span span;
  std::string via;  ///< "direct", or the id of the mirror; empty: no instant looked at shows it, but that none does
                    ///< could not be told
  std::string by;   ///< the openings passed, on both legs of a mirror's, joined with '+'
  Point pos;        ///< where it stands at `span.from`
  double marginDeg = 0;  ///< how far inside the frame it gets, degrees
};

/// A span in which somebody is clear, with the smallest angle to the frame's edge in it.
struct ClearSpan {
  Span span;
  double marginDeg = 180;
};

enum class BodyKind { crew, gear, lens, carried };

/// Everything of one crew member, piece of gear or carried body that the lens must not see.
struct SightOf {
  std::string id;
  BodyKind kind = BodyKind::crew;
  std::vector<SeenSpan> seen;
  std::vector<ClearSpan> clear;
  std::shared_ptr<const sight::KnownSight> known;  ///< kept for the next edit, which asks only what it touched
};

/// A move of one axis between two holds; a variable density counts as one. A cut takes no time: it ends where it
/// begins, and its rates are infinite.
struct Move {
  enum class Axis { focus, iris, zoom, density };
  Axis axis = Axis::focus;
  double from = 0, until = 0;
  bool cut() const { return until <= from; }
  double valueBefore = 0, valueAfter = 0;    ///< metres (infinite allowed), T-number, mm, stops
  double barrelBefore = 0, barrelAfter = 0;  ///< degrees
  double peakDegPerSecond = 0;
  double peakStopsPerSecond = 0;            ///< iris and density
  double peakPercentPerSecond = 0;          ///< zoom, of the focal length
  std::string beat;                         ///< the beat before it, empty before the first
  double plus = 0;                          ///< seconds after that beat
  std::string cover;                        ///< what hides it, in words; empty: nothing known
  std::vector<pulls::CoverSpan> coveredBy;  ///< the same as values, best first; none for focus
  std::optional<pulls::Exposed> exposed;    ///< what of it stays seen; nothing for focus
  std::optional<pulls::Slot> better;        ///< where all of it would hide, when something stays seen
  std::string betterCover;                  ///< what hides it there, in words
  std::optional<double> flowShare;          ///< zoom: of the picture's flow, its own, the most; a heuristic
  std::string on;                           ///< focus: who it arrives on
  int hands = 1;                            ///< hands needed while it runs
  /// Seconds over which a planned move may speed up and slow down, half of them outside it (pulls/ease.h). Nothing for
  /// one set by hand, which runs as the plan says.
  std::optional<std::array<double, 2>> ease;
  /// The latest start from which the ring, at its limit, still stays inside the slack and arrives in time. Nothing for
  /// a zoom, and where the move leaves the slack anyway.
  std::optional<double> latest;
};

/// A stretch in which the focus can be left at one setting: everything from `near` to infinity is sharp all along.
struct FocusRest {
  Span span;
  double setting = 0;     ///< metres from the sensor
  double near = 0;        ///< metres from the sensor: the nearest that stays sharp throughout
  double hyperfocal = 0;  ///< metres from the sensor, the farthest in the stretch
};

/// A span in which an axis of the lens leaves its slack or its limit, and why: no track exists, or it is set so.
struct Unmet {
  Span span;
  std::string reason;          ///< a sentence without its full stop
  std::string axis = "focus";  ///< or "iris", "zoom" or "density"
};

/// A stretch in which somebody's eyes are in the frame and within the blur circle, followed or not.
struct SharpSpan {
  std::string who;  ///< performer
  Span span;
  bool followed = false;  ///< the focus is on them all along
};

/// Two or three people in the frame at once, and whether one setting would hold all of them inside the slack.
struct Together {
  std::vector<std::string> who;  ///< performers
  Span span;
  bool holds = false;  ///< throughout, each instant by a setting of its own
  /// Settings, metres from the sensor, that hold all throughout: the focus may rest at one. Nothing where none does.
  std::optional<BandAt> settings;
  /// Where it does not hold: the T-number, or the focal length in mm, that would at the hardest instant, each alone.
  std::optional<double> stop, focal;
};

/// What one person's hands have to do on the lens.
struct LensWork {
  std::string who;  ///< crew id; empty: nobody is named
  std::vector<Move::Axis> axes;
  pulls::Workload load;  ///< axes as places in Move::Axis
};

/// When a thing may change hands.
struct HandWindows {
  std::string what;  ///< "focus", "boom" or "rig"
  std::vector<Span> spans;
};

/// The nearest thing to a body at an instant.
struct ClearanceAt {
  double time = 0;
  std::string body;      ///< "camera", or a crew id
  std::string obstacle;  ///< id of a wall, opening, piece, performer or crew member
  bool person = false;   ///< the obstacle is a person
  bool hot = false;
  double metres = 0;  ///< edge to edge; negative: they overlap
  bool onLeft = false;
  Point pos;  ///< of the body
};

/// Somebody steps over an edge of the ground.
struct Crossing {
  double time = 0;
  std::string who;    ///< "camera" or a crew id
  std::string place;  ///< area or opening
  double height = 0;  ///< metres, positive
  bool backwards = false;
  double panRate = 0;
  Point pos;
};

/// The lens sees ground of a room other than its own.
struct ThroughSight {
  Span span;
  std::string room;  ///< id, or "outside"
  std::vector<std::string> openings;
};

/// The camera meets a leaf that is shut or moving.
struct LeafMet {
  double time = 0;
  std::string who;  ///< "camera"; what crew walk into is among the clearances
  std::string opening;
  Point pos;
};

/// The centre of a taped mark in the unwidened frame, unhidden, within 8 m.
struct MarkSeen {
  Span span;
  std::string who;
  std::size_t mark = 0;
  Point pos;
};

/// A stretch in which the size that a zoom key asks for is out of the lens' reach.
struct ZoomClipped {
  Span span;
  std::string size;   ///< as the key names it
  double wanted = 0;  ///< mm, furthest from the lens' own
  double end = 0;     ///< mm, where the lens ends on that side
};

/// A jump that a hand cannot make.
struct Jump {
  double time = 0;
  double degrees = 0;
};

/// A radio link over the take.
struct LinkOver {
  std::string id;
  std::vector<std::optional<LinkAt>> at;  ///< one a sample; nothing while an end is not there or nobody knows where
};

/// A line of speech and the pole that picks it up.
struct BoomLine {
  std::size_t speech = 0;  ///< its place in the plan's list
  std::string pole;
  std::string who;  ///< the performer
  Span span;
  std::vector<BoomAt> at;  ///< the samples of the line in which the speaker is there
};

/// Somebody or something takes a lamp away from a face in frame.
struct ShadowOn {
  Span span;
  std::string who;  ///< the performer
  std::string lamp;
  std::string by;    ///< "camera", a crew id, a pole or another performer
  double share = 0;  ///< of the face's exposure that the lamp gives, the most of the span
  Point pos;         ///< of the performer at its start
};

/// A body keeps a lamp that matters off what is in frame: a wall, a piece, the ground.
struct SurfaceShadow {
  Span span;
  std::string lamp;
  std::string by;    ///< "camera", a crew id or a pole
  std::string on;    ///< a wall, an opening or a piece; empty: the ground
  double share = 0;  ///< of the exposure there that the lamp gives, the most of the span
  Point pos;         ///< where it falls at first
};

/// A leaf is shut where a cable lies through its opening.
struct CableShutIn {
  double time = 0;
  std::string cable, opening;
  Point pos;
};

/// The camera's own cable runs out.
struct CableOut {
  double time = 0;
  double most = 0;  ///< metres it would have to be
  Point pos;        ///< of the camera at `time`
};

/// Something stands in a lane that has to stay free.
struct LaneTaken {
  Span span;
  std::string area;
  std::string by;  ///< a shelter, a piece of gear, a piece or somebody of the crew who stands there
  Point pos;
};

/// The lens sees ground that is not the set's.
struct OutsideSeen {
  Span span;
  std::string area;
};

/// Somebody without a drawn way for whom none is found that stays unseen and keeps what they need.
struct NoRoute {
  std::string who;
  Span span;                    ///< of what is seen on the way that is seen least; else the instant nobody gets past
  std::optional<Point> pos;     ///< where it begins; nothing where there is nowhere to start from
  std::optional<double> least;  ///< seconds in bars of sight on that way; nothing: there is no way even seen
  std::string why;              ///< when and where it ends and what is seen at best, in words
  std::string cures;            ///< what would free it, in words; empty: nothing that was tried
};

/// A drawn route on which somebody fails what the plan says they need.
struct NeedUnmet {
  std::string who;
  Span span;
  Point pos;  ///< where it begins
  NeedFails why = NeedFails::far;
};

/// Glass in frame that has turned into a mirror, alone or with somebody in it.
struct PaneMirror {
  Span span;
  std::string pane;      ///< an opening or a piece
  std::string who;       ///< who shows in it: a crew id, a piece of gear or "camera"; empty: the pane alone
  double returned = 0;   ///< brightness of what it returns over that of what comes through, the most of the span
  double darker = 0;     ///< stops by which the far side is darker there and then; negative: it is brighter
  double incidence = 0;  ///< degrees off square at which the lens looks at it there and then
  Point pos;             ///< of that part of the pane
};

/// A glossy piece in frame stands about as a mirror would that shows somebody.
struct Glint {
  Span span;
  std::string piece;
  std::vector<std::string> who;  ///< crew ids, pieces of gear or "camera", as they come; at least one
  double offDegrees = 0;         ///< between its face and the face of such a mirror, the least of the span
  Point pos;                     ///< of that face there and then
};

/// The sun shines into the lens, or would if the frame were a little wider.
struct SunInLens {
  Span span;
  double offFrame = 0;   ///< degrees to the frame's side, the least of the span; negative: that far inside
  double elevation = 0;  ///< of the sun there and then, degrees
  Point pos;             ///< of the camera
};

/// Somebody's or something's shadow by the sun falls into the picture.
struct SunShadow {
  Span span;
  std::string by;     ///< "camera", a crew id or a pole
  std::string on;     ///< a performer, a wall or a piece; empty: the ground
  bool face = false;  ///< `on` is a performer, and it falls on the face
  Point pos;          ///< where it falls at first
};

struct Evidence {
  plan::PlanPtr plan;
  double length = 0;
  double step = 1.0 / 24;
  std::vector<Instant> samples;
  std::vector<SightOf> sight;
  std::vector<Move> moves;
  std::vector<pulls::CoverSpan> covers;  ///< what could hide a change of iris or zoom, in order of starts
  std::vector<Unmet> unmet;
  std::vector<FocusRest> rests;
  std::vector<SharpSpan> sharp;
  std::vector<Together> together;
  std::vector<LensWork> work;
  std::vector<HandWindows> handWindows;
  std::vector<ClearanceAt> clearances;  ///< per body, side and sample: the nearest obstacle under 0.6 m
  std::vector<Crossing> crossings;
  std::vector<ThroughSight> throughs;
  std::vector<LeafMet> leaves;
  std::vector<MarkSeen> marks;
  std::vector<Jump> aimCuts;
  std::vector<ZoomClipped> zoomClipped;
  std::vector<LinkOver> links;
  std::vector<BoomLine> boom;  ///< empty without poles
  std::vector<ShadowOn> shadows;
  std::vector<SurfaceShadow> surfaceShadows;  ///< by lamps; those by the sun are in `sunShadows`
  std::vector<PaneMirror> panes;
  std::vector<Glint> glints;
  std::vector<SunInLens> sunInLens;  ///< empty without a site, a date and a time of day
  std::vector<SunShadow> sunShadows;
  std::vector<CableShutIn> cablesShutIn;
  std::optional<CableOut> cameraCableOut;
  std::vector<LaneTaken> lanes;
  std::vector<OutsideSeen> outside;  ///< areas used as outside
  std::vector<NoRoute> noRoutes;     ///< empty until routes were looked for (answers/routes.h)
  /// Whose way in `links`, `boom` and all shadows is a route found for them (answers/on_found_routes.h).
  /// Everybody else without drawn marks is nowhere there, and what hangs on them is unknown.
  std::vector<std::string> routed;
  std::vector<NeedUnmet> unmetNeeds;                    ///< of drawn routes
  bool sightKnown = false;                              ///< false without a lens
  std::shared_ptr<const answers::KnownInstants> known;  ///< kept for the next edit, as what is known of sights is
};

}  // namespace wend::snags
