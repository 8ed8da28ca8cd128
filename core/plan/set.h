/// The set: rooms, walls with their openings, pieces, areas, and the image it was drawn over. Metres; heights above the
/// set's datum.
#pragma once

#include "core/plan/moment.h"

namespace wend::plan {

struct Underlay {
  std::string file;  ///< relative to the plan, below its folder
  double metresPerPixel = 0.01;
  Point pos;             ///< where its lower left corner lies
  double bearing = 0;    ///< degrees
  double opacity = 0.4;  ///< 0 to 1
  Extras extra;
  bool operator==(const Underlay&) const = default;
};

struct Room {
  base::Id<Room> id;
  std::string name;
  std::vector<Point> outline;
  double floor = 0;
  double ceiling = 3;
  bool openAbove = false;  ///< a yard, a street: the sun comes in from above
  Extras extra{};
  bool operator==(const Room&) const = default;
};

/// A band of `thickness` centred on a polyline; joints inside the points are mitred, ends are square.
struct Wall {
  base::Id<Wall> id;
  std::string name;
  std::vector<Point> points;
  double thickness = 0.1;
  double bottom = 0;
  double top = 3;
  std::optional<double> radioLoss{};  ///< dB a radio link loses through it; absent: what such a wall usually takes
  Extras extra{};
  bool operator==(const Wall&) const = default;
};

enum class OpeningFill { open, solid, glass, curtain };
enum class LeafKind { swing, slide, lift };
enum class LeafHinge { start, end };
enum class WallSide { left, right };  ///< of the wall's direction, first point to last

struct LeafMoves {
  LeafKind kind = LeafKind::swing;
  LeafHinge hinge = LeafHinge::start;
  WallSide towards = WallSide::left;
  double full = 90;  ///< degrees at share 1; swing only
  Extras extra;
  bool operator==(const LeafMoves&) const = default;
};

struct OpenKey {
  KeyTime time;
  double share = 0;  ///< 0 shut, 1 fully open
  std::string name, by;
  Extras extra;
  bool operator==(const OpenKey&) const = default;
};

struct Opening {
  base::Id<Opening> id;
  std::string name;
  std::string wall;
  geometry::Span along;  ///< metres from the wall's first point
  double sill = 0;
  double head = 2.05;
  double threshold = 0;
  OpeningFill fill = OpeningFill::open;
  bool barsWay = true;  ///< when shut, nobody walks through
  std::optional<LeafMoves> moves;
  std::vector<OpenKey> open;          ///< empty: shut all take
  std::optional<double> radioLoss{};  ///< dB a radio link loses through the shut leaf; absent: the usual
  Extras extra{};
  bool operator==(const Opening&) const = default;
};

struct Disc {
  Point centre;
  double radius = 0.5;
  bool operator==(const Disc&) const = default;
};
struct Outline {
  std::vector<Point> points;
  bool operator==(const Outline&) const = default;
};
/// A sheet without thickness along a polyline.
struct Line {
  std::vector<Point> points;
  bool operator==(const Line&) const = default;
};
using Footprint = std::variant<Outline, Disc, Line>;

enum class Surface { solid, glass, mirror };

/// Where a piece stands from then on: moved from where it is drawn, then turned about the centre of its footprint
/// (placed() in footprint.h).
struct PieceKey {
  KeyTime time;
  geometry::Vec offset;  ///< metres
  double turn = 0;       ///< degrees, clockwise
  std::string name, by;
  Extras extra;
  bool operator==(const PieceKey&) const = default;
};

struct Piece {
  base::Id<Piece> id;
  std::string name;
  Footprint shape;
  double bottom = 0;
  double top = 1;
  Surface surface = Surface::solid;
  bool hot = false;
  bool glossy = false;
  std::optional<WallSide> reflects;  ///< mirrors along a line only
  std::vector<PieceKey> moved{};     ///< empty: stands as drawn all take
  Extras extra{};
  bool operator==(const Piece&) const = default;
};

struct Reading {
  Point pos;
  double stop = 0;  ///< T-number at the plan's exposure index and shutter, no density
  Extras extra;
  bool operator==(const Reading&) const = default;
};

struct AreaState {
  KeyTime time;
  std::string name, by;
  std::vector<Reading> readings;   ///< empty: the area is transparent
  std::optional<double> kelvin{};  ///< colour temperature of the light in it
  Extras extra{};
  bool operator==(const AreaState&) const = default;
};

struct ClockReading {
  double timeOfDay = 0;  ///< seconds after midnight
  double stop = 0;
  std::optional<double> kelvin{};  ///< colour temperature of the light then
  bool operator==(const ClockReading&) const = default;
};

enum class AreaUse { light, hazard, keepOut, exitLane, noisy, outside };

struct Area {
  base::Id<Area> id;
  std::string name;
  Footprint shape;  ///< outline or disc
  std::vector<AreaUse> use;
  std::vector<AreaState> states;
  std::vector<ClockReading> byClock;
  std::optional<double> step;   ///< height of the edge, as a kerb
  std::optional<double> floor;  ///< of the ground inside
  Extras extra;
  bool operator==(const Area&) const = default;
};

}  // namespace wend::plan
