/// Bodies in the light: which lines of light they cut, and the shadows they throw on the floor and on walls.
///
/// Frame     metres; light comes from a lamp's place or, as from the sun, all from one direction.
/// Stops holding for soft light: a lamp is a point and the sun is one too, so shadows have edges. From a large source
///           the shadow is lighter and wider than this; the core that is cut off altogether is smaller.
#pragma once

#include <span>
#include <variant>
#include <vector>

#include "core/geometry/polygon.h"
#include "core/light/face.h"

namespace wend::light {

/// A lamp's place, or the way towards what is too far off to have one; any length but zero.
using Source = std::variant<Point3, Vec3>;

/// The way towards a light at a bearing and an elevation, both in degrees.
Vec3 towardsLight(double bearing, double elevation);

/// Metres of shadow on a level floor behind something of that height: height / tan(elevation). Infinite at and below
/// the horizon.
double shadowLength(double height, double elevation);

/// A person, a camera on its rig, a piece of furniture: an upright cylinder.
struct UprightBody {
  Point centre;
  double radius = 0.25;
  double bottom = 0, top = 1.75;
  bool operator==(const UprightBody&) const = default;
};

/// A boom, an arm, a cable: a straight rod with round ends.
struct Rod {
  Point3 from, until;
  double radius = 0.02;
  bool operator==(const Rod&) const = default;
};

using Blocker = std::variant<UprightBody, Rod>;

/// True when the straight line between two points passes through the inside of the body. Touching does not count.
bool cuts(const Blocker& body, Point3 a, Point3 b);

/// The same for light on its way to a point, from wherever it comes.
bool cutsLight(const Blocker& body, const Source& source, Point3 point);

/// A body in the line of a lamp that matters.
struct LampCut {
  std::size_t fixture = 0, body = 0;  ///< places in their lists
  double share = 0;                   ///< of the face's exposure that the lamp gives, 0 to 1
};

/// The bodies that cut a lamp giving the face at least `least` of its exposure, by lamp, then by body. A tenth is an
/// eighth of a stop, which shows when it comes and goes; common practice, no source.
/// Ensures   (1) nothing while the exposure is unknown, or of lamps that are out or blocked already.
/// Requires  `light` of that face; bodies without the one whose face it is.
std::vector<LampCut> lampCuts(const Lighting& lighting, const Face& face, const FaceLight& light,
                              std::span<const Blocker> bodies, double least = 0.1);

/// The shadow on a level floor, a convex ring counter-clockwise in plan coordinates; empty when there is none: a light
/// at or below the floor, a body below it.
///
/// Error     the body's round sides are taken as 32 corners around it, a rod's ends as boxes: no shadow is missed; that
///           of an upright body is at most half a per cent of its radius too wide at its edge, that of a rod at most
///           three quarters of its radius.
/// Stops holding more than `reach` metres off the body, where it is cut: a lamp lower than the top of a body throws its
///           shadow without end.
geometry::Ring shadowOnFloor(const Source& source, const Blocker& body, double floor, double reach = 40);

}  // namespace wend::light
