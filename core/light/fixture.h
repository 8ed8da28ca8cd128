/// Lamps in the set and what they put on a face.
///
/// Frame     metres, z above the set's datum; lux.
/// Source    inverse square and cosine law: E = I cos a / d^2 (Illuminating Engineering Society, "Cosine law",
///           ies.org/definitions/cosine-law).
/// Stops holding nearer than about five times the lamp's size, where it is no point; and nothing here bounces.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "core/geometry/keyed.h"
#include "core/geometry/pose.h"
#include "core/light/beam.h"

namespace wend::light {

using geometry::Point3;
using geometry::Vec3;

/// How the meter's receptor weighs light that comes from `a` degrees off the way it looks.
enum class Receptor {
  dome,  ///< (1 + cos a) / 2: a half dome, which sees from all sides but the back
  flat,  ///< max(0, cos a)
};
double response(Receptor receptor, double degreesOff);

struct LevelKey {
  geometry::KeySpan time;
  double share = 1;
};

struct Fixture {
  geometry::Pose pose;          ///< where it hangs and whither its axis points
  Distribution distribution;    ///< candela at full level; empty: unknown, as while its file is missing
  std::vector<LevelKey> level;  ///< empty: full throughout
  /// The readings of the areas were taken with it burning, so it must not be added again. Absent: true where an area
  /// with readings covers the face.
  std::optional<bool> inReadings;
};

/// A face, held to the light as a meter would be: the receptor looks from the face towards the lens.
struct Face {
  Point3 at;
  Vec3 towardsLens;  ///< any length but zero
};

/// Whether something solid stands on the open line between a lamp and a face.
using Blocked = std::function<bool(Point3 lamp, Point3 face)>;

/// 0 to 1 and beyond, as keyed; blends in level.
double levelAt(const Fixture& fixture, double t);

/// Candela towards a point at full level. Requires a known distribution.
double candelaTowards(const Fixture& fixture, Point3 p);

/// Lux on the face at time t: candela x level / d^2 x response, or 0 when blocked.
/// Ensures   (1) a quarter at twice the distance; (2) never negative. A lamp within 0.1 mm of the face counts as 0.1 mm
///           away; one of unknown candela gives 0.
double luxAtFace(const Fixture& fixture, const Face& face, double t, Receptor receptor, const Blocked& blocked);

/// Whether the lamp sends the face light of which nobody knows how much: it burns, nothing stands between, and its
/// candela are unknown.
bool shinesUnknown(const Fixture& fixture, const Face& face, double t, const Blocked& blocked);

}  // namespace wend::light
