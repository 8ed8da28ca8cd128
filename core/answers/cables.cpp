// Cables: leaves that shut on them, and the camera's own that runs out.
#include <algorithm>

#include "core/answers/whole_take.h"
#include "core/geometry/band.h"
#include "core/geometry/segment.h"

namespace wend::answers {

using namespace snags;

namespace {

/// Where the cable lies through the opening.
std::optional<Point> whereThrough(const plan::Plan& plan, const plan::Opening& opening, const plan::Cable& cable) {
  const plan::Wall* wall = plan.set.walls.find(opening.wall);
  if (!wall || opening.sill > cable.height) return std::nullopt;
  const geometry::Course course(wall->points);
  const geometry::Segment gap{course.at(opening.along.from), course.at(opening.along.until)};
  for (std::size_t i = 0; i + 1 < cable.points.size(); ++i)
    if (const auto share = geometry::whereMeet(gap, {cable.points[i], cable.points[i + 1]}))
      return geometry::lerp(gap.a, gap.b, *share);
  return std::nullopt;
}

bool shutAt(const plan::Plan& plan, const plan::Opening& opening, double t) {
  const auto keys = resolvedKeys(plan, opening.open);
  if (keys.empty()) return true;
  const geometry::KeyBlend blend = geometry::blendAt(keys, t);
  return geometry::lerp(opening.open[blend.before].share, opening.open[blend.after].share, blend.share) == 0;
}

/// The first frame at which the opening is shut while the cable lies there.
std::optional<double> firstShut(const Take& take, const plan::Opening& opening, const plan::Cable& cable) {
  const plan::Plan& plan = take.plan();
  const double from = cable.from ? plan::secondsOf(plan, *cable.from) : 0;
  const double until = cable.until ? plan::secondsOf(plan, *cable.until) : take.length();
  for (const double t : take.frameTimes())
    if (t >= from && t <= until && shutAt(plan, opening, t)) return t;
  return std::nullopt;
}

}  // namespace

std::vector<CableShutIn> cablesShutIn(const Take& take) {
  const plan::Plan& plan = take.plan();
  std::vector<CableShutIn> found;
  for (const auto& cable : plan.cables) {
    for (const auto& opening : plan.set.openings) {
      if (opening.fill == plan::OpeningFill::open || opening.fill == plan::OpeningFill::curtain) continue;
      const auto where = whereThrough(plan, opening, cable);
      const auto when = where ? firstShut(take, opening, cable) : std::nullopt;
      if (when) found.push_back({*when, cable.id.text(), opening.id.text(), *where});
    }
  }
  std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.time < b.time; });
  return found;
}

std::optional<CableOut> cameraCableOut(const Take& take) {
  const auto& cable = take.plan().camera.cable;
  if (!cable) return std::nullopt;
  std::optional<CableOut> out;
  Point before = cable->anchor;
  double gone = 0;
  for (const double t : take.frameTimes()) {
    const Point here = take.people().camera().place(t);
    gone += geometry::distance(before, here);
    before = here;
    if (gone > cable->length && !out) out = CableOut{t, gone, here};
    if (out) out->most = gone;
  }
  return out;
}

}  // namespace wend::answers
