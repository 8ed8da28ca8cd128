#include "core/answers/shadow_fall.h"

#include <limits>

#include "core/answers/set_scene.h"
#include "core/sight/ray.h"

namespace wend::answers {

namespace {

/// A shadow is looked for so far away; a hair before what it falls on.
constexpr double kReach = 60, kHair = 0.01;

}  // namespace

std::vector<Point3> axisOf(const light::Blocker& body) {
  std::vector<Point3> axis;
  if (const auto* upright = std::get_if<light::UprightBody>(&body)) {
    for (const double share : {1.0 / 3, 2.0 / 3, 1.0})
      axis.push_back(geometry::at(upright->centre, geometry::lerp(upright->bottom, upright->top, share)));
    return axis;
  }
  const auto& rod = std::get<light::Rod>(body);
  for (int i = 0; i <= 4; ++i) axis.push_back(rod.from + (rod.until - rod.from) * (i / 4.0));
  return axis;
}

std::optional<Fallen> fallOf(const Take& take, const sight::SceneAt& now, geometry::Vec3 along, Point3 point) {
  const double floor = take.people().floorAt(geometry::flat(point));
  const double toFloor = along.z < 0 ? (floor - point.z) / along.z : std::numeric_limits<double>::infinity();
  const auto hit = sight::rayHit(now, point, along, kReach);
  if (hit && hit->distance < toFloor)
    return Fallen{point + along * (hit->distance - kHair), idOf(take.plan(), hit->source)};
  if (toFloor > kReach) return std::nullopt;
  return Fallen{point + along * (toFloor - kHair), ""};
}

}  // namespace wend::answers
