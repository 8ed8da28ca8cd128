// The background of an instant: rays over the frame to the first solid or to the floor, and what the areas read there.
#include "core/light/background.h"

#include "core/answers/answers.h"
#include "core/light/exposure.h"
#include "core/sight/ray.h"

namespace wend::answers {

namespace {

constexpr int kAcross = 16, kUp = 9;
constexpr double kFar = 200;

/// Where a ray ends: a hair in front of what it meets, or on the floor, or nowhere.
std::optional<geometry::Point3> endOf(const Take& take, const sight::SceneAt& now, geometry::Point3 from,
                                      geometry::Vec3 direction) {
  const auto hit = sight::rayHit(now, from, direction, kFar);
  double distance = hit ? hit->distance : kFar;
  bool ends = hit.has_value();
  if (direction.z < 0) {
    const double floor = take.people().floorAt(geometry::flat(from));
    const double toFloor = (floor - from.z) / direction.z;
    if (toFloor < distance) distance = toFloor, ends = true;
  }
  if (!ends) return std::nullopt;
  return from + direction * (distance - 0.05);
}

}  // namespace

std::optional<snags::Background> backgroundAt(const Take& take, const Instant& instant) {
  if (!instant.lens) return std::nullopt;
  const geometry::Pose& pupil = instant.camera.pupil;
  const sight::SceneAt now = take.scene().at(instant.time);
  std::vector<std::optional<double>> stops;
  for (int i = 0; i < kAcross; ++i) {
    for (int k = 0; k < kUp; ++k) {
      const double x = (2 * i + 1.0) / kAcross - 1, y = (2 * k + 1.0) / kUp - 1;
      geometry::Vec3 way = pupil.forward() + pupil.rightward() * (x * instant.lens->half.h) +
                           pupil.upward() * (y * instant.lens->half.v);
      way = way * (1 / geometry::length(way));
      const auto end = endOf(take, now, pupil.at, way);
      const auto reading = end ? take.lighting().areas.stopAt(geometry::flat(*end), instant.time) : std::nullopt;
      stops.push_back(reading ? std::optional<double>(
                                    light::throughDensity(*reading, take.lighting().exposureAt(instant.time).ndStops))
                              : std::nullopt);
    }
  }
  const auto background = light::backgroundAgainst(stops, instant.iris.set);
  if (!background) return std::nullopt;
  return snags::Background{background->brightest, background->darkest};
}

}  // namespace wend::answers
