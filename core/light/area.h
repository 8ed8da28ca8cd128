/// What a meter would read at a place: areas of the floor with readings, blended where they meet.
///
/// Frame     plan metres; readings are T-numbers at the plan's exposure index and shutter, without density.
/// Stops holding where the light is not what the meter pass found: readings between readings are interpolated, and the
///           turn of a face away from the key is not in them.
#pragma once

#include <functional>
#include <optional>
#include <variant>
#include <vector>

#include "core/geometry/keyed.h"
#include "core/geometry/point.h"

namespace wend::light {

using geometry::Point;

/// Half the width over which an area's edge fades: it counts fully from 0.25 m inside and not at all from 0.25 m
/// outside. Common practice, no source.
inline constexpr double kSoftEdge = 0.25;

struct Outline {
  std::vector<Point> points;
};
struct Disc {
  Point centre;
  double radius = 0;
};
using AreaShape = std::variant<Outline, Disc>;

struct Reading {
  Point at;
  double stop = 0;
};

/// What the area reads once its key is done. Without readings the area is transparent: what lies beneath shows.
struct AreaState {
  geometry::KeySpan time;
  std::vector<Reading> readings;
};

/// What the whole area reads at a time of day, seconds after midnight.
struct ClockReading {
  double timeOfDay = 0;
  double stop = 0;
  std::optional<double> kelvin{};  ///< colour temperature; absent: not metered then
};

/// One area of light. `byClock`, when there is any, stands in the place of the states. An area with neither is
/// transparent.
struct Area {
  AreaShape shape;
  std::vector<AreaState> states;      ///< in order of time, none starting before the one before is done
  std::vector<ClockReading> byClock;  ///< times of day increasing
};

/// Whether the straight line between two places crosses a wall. An opening is a gap, whatever fills it.
using CrossesWall = std::function<bool(Point, Point)>;

/// How strongly an area counts at p, by its shape alone: the smoothstep of the signed edge distance over -0.25 to
/// +0.25 m, so one half on the edge itself.
/// Ensures   a place outside counts only when the line to the nearest edge point crosses no wall. Of several edge
///           points equally near the first along the outline is taken.
double edgeWeight(const AreaShape& shape, Point p, const CrossesWall& crossesWall);

/// The stop at p among readings: their stops weighted by inverse squared distance.
/// Requires  at least one reading, stops positive.
/// Ensures   (1) at a reading's own place it is that reading; (2) one reading is uniform; (3) the answer lies between
///           the smallest and the largest; (4) the order does not matter but for rounding.
double blendOfReadings(const std::vector<Reading>& readings, Point p);

/// The stop at a time of day: linear in stops between the entries; nothing before the first and after the last.
/// Requires  times of day increasing, stops positive.
std::optional<double> stopByClock(const std::vector<ClockReading>& readings, double timeOfDay);

/// The colour temperature at a time of day, in kelvin: linear in mired (colour.h) between the entries that tell one, as
/// filters are reckoned; common practice, no source. Nothing before the first of them and after the last.
/// Requires  times of day increasing, kelvins positive.
std::optional<double> kelvinByClock(const std::vector<ClockReading>& readings, double timeOfDay);

/// What the areas say about a place.
struct AreaLight {
  std::optional<double> stop;  ///< absent: unknown
  bool covered = false;        ///< some area with readings counts here, known or not
};

/// The areas of a plan in list order, later ones on top.
class Areas {
 public:
  /// `timeOfDay` is the time of day at the take's start; without it no area read by the clock is known.
  Areas(std::vector<Area> areas, std::optional<double> timeOfDay, CrossesWall crossesWall);

  /// The reading at p at time t, blended in stops with the weights w_i = s_i x product over later j of (1 - s_j),
  /// divided by their sum.
  /// Ensures   (1) deep inside the topmost area, that area's reading alone; (2) no area: unknown and not covered;
  ///           (3) an area read by the clock outside its list makes every place where it has a weight unknown;
  ///           (4) a change of state cross-fades in stops; from or to a transparent one it fades the area's weight;
  ///           (5) areas wholly beneath an opaque one change nothing.
  /// Cost      linear in the outline points of all areas.
  AreaLight lightAt(Point p, double t) const;

  /// What p reads at time t of the take when the take starts at one time of day or another: by the time of day it is
  /// then, at every time at which the course bends.
  /// Ensures   (1) between entries linear in stops, as stopByClock takes them, and exactly what lightAt would say;
  ///           (2) empty where no area read by the clock counts, or where something that counts is never known.
  std::vector<ClockReading> byClockAt(Point p, double t) const;

  /// lightAt(p, t).stop.
  std::optional<double> stopAt(Point p, double t) const { return lightAt(p, t).stop; }

 private:
  std::vector<Area> areas_;
  std::vector<std::vector<geometry::KeySpan>> keys_;  ///< of areas_[i].states
  std::optional<double> timeOfDay_;
  CrossesWall crossesWall_;

  struct Shown;
  Shown shownBy(std::size_t area, Point p, double t, std::optional<double> now) const;
  AreaLight lightAt(Point p, double t, std::optional<double> now) const;
  Shown shownByStates(std::size_t area, Point p, double t) const;
};

}  // namespace wend::light
