#include "core/light/fixture.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/tolerance.h"

namespace wend::light {
namespace {

/// atan2 of the cross and the dot product keeps its digits where an arc cosine loses them: near 0 and 180.
double degreesBetween(Vec3 a, Vec3 b) {
  const Vec3 c{a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
  return geometry::degrees(std::atan2(geometry::length(c), dot(a, b)));
}

}  // namespace

double response(Receptor receptor, double degreesOff) {
  const double cosine = std::cos(geometry::radians(degreesOff));
  return receptor == Receptor::dome ? (1 + cosine) / 2 : std::max(0.0, cosine);
}

double levelAt(const Fixture& fixture, double t) {
  if (fixture.level.empty()) return 1;
  std::vector<geometry::KeySpan> keys;
  for (const LevelKey& key : fixture.level) keys.push_back(key.time);
  const auto blend = geometry::blendAt(keys, t);
  return geometry::lerp(fixture.level[blend.before].share, fixture.level[blend.after].share, blend.share);
}

double candelaTowards(const Fixture& fixture, Point3 p) {
  const geometry::InView view = fixture.pose.view(p);
  const double aside = std::hypot(view.right, view.up);
  if (aside == 0 && view.ahead == 0) return fixture.distribution(0, 0);
  const double offAxis = geometry::degrees(std::atan2(aside, view.ahead));
  return fixture.distribution(offAxis, aside == 0 ? 0 : geometry::degrees(std::atan2(view.right, view.up)));
}

double luxAtFace(const Fixture& fixture, const Face& face, double t, Receptor receptor, const Blocked& blocked) {
  const double level = levelAt(fixture, t);
  if (!fixture.distribution || level <= 0 || blocked(fixture.pose.at, face.at)) return 0;
  const Vec3 toLamp = fixture.pose.at - face.at;
  const double d = std::max(geometry::length(toLamp), geometry::kTouch);
  return candelaTowards(fixture, face.at) * level / (d * d) *
         response(receptor, degreesBetween(face.towardsLens, toLamp));
}

bool shinesUnknown(const Fixture& fixture, const Face& face, double t, const Blocked& blocked) {
  return !fixture.distribution && levelAt(fixture, t) > 0 && !blocked(fixture.pose.at, face.at);
}

}  // namespace wend::light
