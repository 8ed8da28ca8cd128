/// Bodies and what they pass: the rig, who is carried along behind it, crew and performers against walls, leaves,
/// pieces and each other.
///
/// Frame     plan metres, heights above the set's datum, bearings in degrees clockwise from plan north.
/// Stops holding for what is not upright: arms, elbows, poles and cables reach further than the disc of a body, and a
///           clearance on the plan is no promise on the day.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/geometry/point.h"
#include "core/geometry/pose.h"

namespace wend::crew {

using geometry::Point;

/// An upright cylinder.
struct Body {
  std::string id;
  Point at;
  double radius = 0.28;
  double bottom = 0;
  double top = 1.8;
};

/// Someone who goes along with the camera, `behind` metres behind the sensor along the lens' bearing.
struct Carried {
  std::string id;
  double behind = 0.5;
  double right = 0;
  double radius = 0.28;
  double height = 1.8;
};

struct Rig {
  std::string id = "camera";
  double radius = 0.35;
};

/// The floor under a place.
using FloorAt = std::function<double(Point)>;

/// The rig first, then everyone carried, in their order. The rig reaches from the floor to its radius above the sensor;
/// a person stands on the floor beneath them.
/// Ensures   the tilt moves nobody: distances behind and aside are along the floor.
std::vector<Body> bodiesAlong(const geometry::Pose& sensor, const Rig& rig, const std::vector<Carried>& carried,
                              const FloorAt& floorAt);

/// Something to pass: a point, a line or an outline of the plan, swollen by a radius.
struct Obstacle {
  std::string id;
  std::vector<Point> points;  ///< one for a disc, at least one for all
  bool closed = false;        ///< an outline: its inside is solid
  double radius = 0;
  double bottom = 0;
  double top = 1;
  bool hot = false;
  bool person = false;
};

/// A body as others meet it.
Obstacle obstacleOf(const Body& body);

/// The way from a body's edge to an obstacle's.
struct Gap {
  std::size_t obstacle = 0;  ///< its place in the list
  double metres = 0;         ///< negative: they overlap by as much
  Point near;                ///< of the obstacle's line or outline
  bool onLeft = false;       ///< of the direction of travel; dead ahead and dead astern count as left
};

/// The nearest gap on either side, where one is near enough to be worth telling.
struct Clearance {
  std::optional<Gap> left, right;
};

/// Beyond this a gap is not told: twice the comfortable clearance.
inline constexpr double kTold = 0.6;

/// The nearest gap left and right of `travel` (a bearing).
/// Ensures   (1) an obstacle counts when its heights and the body's overlap by more than a touch: a lintel over a head
///           and a mark on the floor do not; (2) every straight piece of an obstacle counts on the side of its own
///           nearest point, so one wall round a passage is met on both; (3) inside an outline the gap is minus the way
///           out and the body's radius; (4) gaps over `told` are left out; of equal gaps the first in the list stays.
/// Error     exact at the instant asked. Between instants h seconds apart a gap g passed at v m/s may be narrower by at
///           most sqrt(g'^2 + (v h / 2)^2) - g', g' = g + radius: 0.6 mm at 1.3 m/s, 24 frames and g' = 0.6 m.
/// Cost      an extent test for every obstacle, and its points when it is near.
Clearance clearanceAt(const Body& body, double travel, std::span<const Obstacle> obstacles, double told = kTold);

/// The narrower gap of each side. `second`'s obstacles are those of another list; `offset` is added to their places.
Clearance narrower(const Clearance& first, Clearance second, std::size_t offset);

}  // namespace wend::crew
