#include "core/answers/ray_end.h"

#include "core/sight/ray.h"

namespace wend::answers {

std::optional<double> rayLength(const Take& take, const sight::SceneAt& now, geometry::Point3 from,
                                geometry::Vec3 direction) {
  const auto hit = sight::rayHit(now, from, direction, kFarthestRay);
  std::optional<double> length;
  if (hit) length = hit->distance;
  if (direction.z < 0) {
    const double toFloor = (take.people().floorAt(geometry::flat(from)) - from.z) / direction.z;
    if (toFloor < length.value_or(kFarthestRay)) length = toFloor;
  }
  return length;
}

geometry::Vec3 rayThrough(const geometry::Pose& pupil, optics::HalfTangents half, geometry::Point place) {
  const geometry::Vec3 way =
      pupil.forward() + pupil.rightward() * (place.x * half.h) + pupil.upward() * (place.y * half.v);
  return way * (1 / geometry::length(way));
}

}  // namespace wend::answers
