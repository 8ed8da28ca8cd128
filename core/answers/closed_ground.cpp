#include "core/answers/closed_ground.h"

#include "core/answers/set_scene.h"
#include "core/geometry/polygon.h"
#include "core/geometry/segment.h"
#include "core/plan/area_use.h"

namespace wend::answers {

namespace {

/// Whether no area of a kind is touched.
template <class Kind>
bool touchesNone(const plan::Plan& plan, geometry::Point centre, double radius, Kind kind) {
  for (const auto& area : plan.set.areas)
    if (kind(area) && touches(outlineOf(area.shape), centre, radius)) return false;
  return true;
}

}  // namespace

bool isClosed(const plan::Area& area) {
  return usedAs(area, plan::AreaUse::hazard) || usedAs(area, plan::AreaUse::keepOut);
}

bool isLane(const plan::Area& area) {
  return usedAs(area, plan::AreaUse::exitLane);
}

bool touches(const std::vector<geometry::Point>& ring, geometry::Point centre, double radius) {
  if (geometry::contains(ring, centre)) return true;
  for (std::size_t i = 0; i < ring.size(); ++i)
    if (geometry::distance(centre, geometry::Segment{ring[i], ring[(i + 1) % ring.size()]}) < radius) return true;
  return false;
}

bool mayBe(const plan::Plan& plan, geometry::Point centre, double radius) {
  return touchesNone(plan, centre, radius, isClosed);
}

bool mayStand(const plan::Plan& plan, geometry::Point centre, double radius) {
  return touchesNone(plan, centre, radius, [](const plan::Area& area) { return isClosed(area) || isLane(area); });
}

}  // namespace wend::answers
