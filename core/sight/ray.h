/// What one line of sight meets: the crossings of a plan ray with everything that stands, straight or by way of a
/// mirror, and the questions that need no more than that.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/sight/scene.h"

namespace wend::sight {

/// A prism crossed by a plan ray, as the box it makes in the ray's upright half plane.
struct Crossing {
  Upright box;
  Source source;
  Surface surface = Surface::solid;
};

/// The crossings of a ray with one prism, appended. Grazing rays pass.
void appendCrossings(const SceneAt& now, const Prism& prism, Point origin, Vec direction,
                     std::vector<Crossing>& crossings);

/// The crossings of a ray with everything that begins before `upTo` metres, in no order.
std::vector<Crossing> crossingsAlong(const SceneAt& now, Point origin, Vec direction, double upTo);

/// A performer or another moving cylinder that hides for one question.
struct Hider {
  Body body;
  int tag = 0;
};

/// Whether a point of space is seen: in the widened frame, and nothing solid before it.
struct PointSight {
  bool inFrame = false;
  bool hidden = false;
  bool seen() const { return inFrame && !hidden; }
};
PointSight pointSight(const SceneAt& now, const Eye& eye, Point3 point, std::span<const Hider> others = {});

/// True when nothing solid stands on the way from a to b. Touching does not count.
bool openBetween(const SceneAt& now, Point3 a, Point3 b, std::span<const Hider> others = {});

/// The first solid a ray of space meets.
struct Hit {
  double distance = 0;  ///< metres along the ray
  Source source;
  Surface surface = Surface::solid;
};
/// Nothing within `upTo` metres: nothing. A ray that starts inside a solid meets it at once. Requires direction of
/// length 1. Floors and ceilings are not part of the scene.
std::optional<Hit> rayHit(const SceneAt& now, Point3 from, geometry::Vec3 direction, double upTo,
                          std::span<const Hider> others = {});

/// True when the straight way from a to b on the floor passes through a wall; openings are gaps, whatever hangs in
/// them.
bool crossesWall(const Scene& scene, Point a, Point b);

/// The openings whose gaps the straight way from a to b passes, in the order in which it does.
std::vector<int> openingsCrossed(const Scene& scene, Point a, Point b);

}  // namespace wend::sight
