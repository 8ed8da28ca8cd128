#include "core/light/pane_light.h"

#include <cmath>

#include "core/light/exposure.h"
#include "core/units/stop.h"

namespace wend::light {

PaneLight paneLight(const Areas& areas, geometry::Segment pane, double thickness, geometry::Point3 on,
                    geometry::Point3 eye, double t) {
  geometry::Vec normal = geometry::left(geometry::unit(pane.b - pane.a));
  const geometry::Vec3 look = eye - on;
  const double away = normal.x * look.x + normal.y * look.y;
  if (away < 0) normal = -normal;
  const double aside = std::sqrt(std::max(0.0, dot(look, look) - away * away));
  const geometry::Vec clear = normal * (thickness / 2 + kSoftEdge);
  PaneLight light;
  light.incidence = geometry::degrees(std::atan2(aside, std::abs(away)));
  light.nearStop = areas.stopAt(flat(on) + clear, t);
  light.farStop = areas.stopAt(flat(on) - clear, t);
  light.mirror = actsAsMirror(light.incidence, light.nearStop, light.farStop);
  if (!light.mirror) return light;
  light.closer = mirrorContrast(light.incidence) - units::stopsBetween(*light.farStop, *light.nearStop);
  light.returned = std::exp2(-*light.closer) / 2;
  return light;
}

}  // namespace wend::light
