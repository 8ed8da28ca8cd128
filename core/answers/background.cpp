// The background of an instant: rays over the frame to the first solid or to the floor, and what the areas read there.
#include "core/light/background.h"

#include "core/answers/answers.h"
#include "core/answers/ray_end.h"
#include "core/light/exposure.h"

namespace wend::answers {

namespace {

constexpr int kAcross = 16, kUp = 9;

/// A ray stops so far short of what it meets, that the place read lies before it.
constexpr double kShort = 0.05;

}  // namespace

std::optional<snags::Background> backgroundAt(const Take& take, const Instant& instant) {
  if (!instant.lens) return std::nullopt;
  const geometry::Pose& pupil = instant.camera.pupil;
  const sight::SceneAt now = take.scene().at(instant.time);
  std::vector<std::optional<double>> stops;
  for (int i = 0; i < kAcross; ++i) {
    for (int k = 0; k < kUp; ++k) {
      const double x = (2 * i + 1.0) / kAcross - 1, y = (2 * k + 1.0) / kUp - 1;
      const geometry::Vec3 way = rayThrough(pupil, instant.lens->half, {x, y});
      const auto length = rayLength(take, now, pupil.at, way);
      const auto reading =
          length ? take.lighting().areas.stopAt(geometry::flat(pupil.at + way * (*length - kShort)), instant.time)
                 : std::nullopt;
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
