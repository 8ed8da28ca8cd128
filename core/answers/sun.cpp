#include "core/answers/sun.h"

#include <cmath>

#include "core/geometry/polygon.h"
#include "core/light/shadow.h"
#include "core/light/sun.h"
#include "core/sight/ray.h"

namespace wend::answers {

namespace {

constexpr double kFarthest = 300;  // metres a house still counts

bool underACeiling(const plan::Plan& plan, geometry::Vec3 towards, Point3 point) {
  for (const plan::Room& room : plan.set.rooms) {
    if (room.openAbove || point.z >= room.ceiling) continue;
    const Point3 up = point + towards * ((room.ceiling - point.z) / towards.z);
    if (geometry::contains(room.outline, geometry::flat(up))) return true;
  }
  return false;
}

}  // namespace

std::optional<snags::SunAt> sunOf(const plan::Plan& plan, double t) {
  if (!plan.site || !plan.clock.timeOfDay) return std::nullopt;
  const plan::Site& site = *plan.site;
  const light::UniversalTime time{site.date.year, site.date.month, site.date.day,
                                  *plan.clock.timeOfDay + t - site.utcOffset * 3600};
  const light::SunPosition sun = light::sunAt(time, {site.latitude, site.longitude});
  const double bearing = std::fmod(std::fmod(sun.bearing - site.north, 360) + 360, 360);
  return snags::SunAt{bearing, sun.seen};
}

std::optional<geometry::Vec3> towardsSun(const plan::Plan& plan, double t) {
  const auto sun = sunOf(plan, t);
  if (!sun || sun->elevation <= 0) return std::nullopt;
  return light::towardsLight(sun->bearing, sun->elevation);
}

bool sunReaches(const Take& take, const sight::SceneAt& now, geometry::Vec3 towards, Point3 point) {
  return !underACeiling(take.plan(), towards, point) && !sight::rayHit(now, point, towards, kFarthest);
}

}  // namespace wend::answers
