#include "core/light/face.h"

#include <algorithm>

namespace wend::light {

Exposure Lighting::exposureAt(double t) const {
  Exposure now = exposure;
  now.ndStops += densityAt(density, t);
  return now;
}

namespace {

/// With the lux of every lamp, or of those only that count beside the readings.
FaceLight lightBy(const Lighting& lighting, const Face& face, double t, bool everyLamp) {
  const Exposure exposure = lighting.exposureAt(t);
  const AreaLight area = lighting.areas.lightAt(flat(face.at), t);
  FaceLight light;
  double added = 0;
  bool known = !area.covered || area.stop.has_value();
  const Blocked withBodies = [&lighting, &t](Point3 lamp, Point3 at) {
    return lighting.blocked(lamp, at) || lighting.bodies(lamp, at, t);
  };
  const Blocked& blocked = lighting.bodies ? withBodies : lighting.blocked;
  for (const Fixture& fixture : lighting.fixtures) {
    const bool inReadings = fixture.inReadings.value_or(area.covered);
    if (inReadings && !everyLamp) continue;
    light.fixtureLux.push_back(luxAtFace(fixture, face, t, lighting.receptor, blocked));
    if (inReadings) continue;
    added += light.fixtureLux.back();
    known = known && !shinesUnknown(fixture, face, t, blocked);
  }
  if (!known) return light;
  light.lux = added + (area.stop ? luxOfReading(*area.stop, exposure) : 0);
  if (light.lux <= 0) return light;
  // Without a lamp the reading passes straight through: the receptor's constant must not touch its last digit.
  light.needed = added > 0 ? stopFor(light.lux, exposure) : throughDensity(*area.stop, exposure.ndStops);
  return light;
}

}  // namespace

FaceLight lightOnFace(const Lighting& lighting, const Face& face, double t) {
  return lightBy(lighting, face, t, true);
}

std::optional<double> neededOnFace(const Lighting& lighting, const Face& face, double t) {
  return lightBy(lighting, face, t, false).needed;
}

std::optional<double> shareOfFixture(const FaceLight& light, std::size_t fixture) {
  if (!light.needed) return std::nullopt;
  // Readings may be dimmer than a lamp that is said to be in them; more than all of the light it cannot give.
  return std::min(1.0, light.fixtureLux[fixture] / light.lux);
}

std::optional<double> blendedNeed(std::optional<double> before, std::optional<double> after, double share) {
  if (share <= 0) return before;
  if (share >= 1) return after;
  if (!before || !after) return std::nullopt;
  return blendedStop(*before, *after, share);
}

}  // namespace wend::light
