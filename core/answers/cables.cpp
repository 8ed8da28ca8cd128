// Cables: leaves that shut on them, and the camera's own that runs out.
#include "core/answers/cables.h"

#include <algorithm>

#include "core/answers/whole_take.h"
#include "core/geometry/band.h"
#include "core/geometry/segment.h"

namespace wend::answers {

using namespace snags;

namespace {

/// The line across an opening that something lies through which stands up so high from the floor.
std::optional<geometry::Segment> gapOf(const plan::Plan& plan, const plan::Opening& opening, double height) {
  const plan::Wall* wall = plan.set.walls.find(opening.wall);
  if (!wall || opening.sill > height) return std::nullopt;
  const geometry::Course course(wall->points);
  return geometry::Segment{course.at(opening.along.from), course.at(opening.along.until)};
}

bool canShut(const plan::Opening& opening) {
  return opening.fill != plan::OpeningFill::open && opening.fill != plan::OpeningFill::curtain;
}

/// Where the cable lies through the opening.
std::optional<Point> whereThrough(const plan::Plan& plan, const plan::Opening& opening, const plan::Cable& cable) {
  const auto gap = gapOf(plan, opening, cable.height);
  if (!gap) return std::nullopt;
  for (std::size_t i = 0; i + 1 < cable.points.size(); ++i)
    if (const auto share = geometry::whereMeet(*gap, {cable.points[i], cable.points[i + 1]}))
      return geometry::lerp(gap->a, gap->b, *share);
  return std::nullopt;
}

bool shutAt(const plan::Plan& plan, const plan::Opening& opening, double t) {
  const auto keys = resolvedKeys(plan, opening.open);
  if (keys.empty()) return true;
  const geometry::KeyBlend blend = geometry::blendAt(keys, t);
  return geometry::lerp(opening.open[blend.before].share, opening.open[blend.after].share, blend.share) == 0;
}

void addLaid(const Take& take, std::vector<Pinch>& pinches) {
  const plan::Plan& plan = take.plan();
  for (const auto& cable : plan.cables) {
    const Span lies{cable.from ? plan::secondsOf(plan, *cable.from) : 0,
                    cable.until ? plan::secondsOf(plan, *cable.until) : take.length()};
    for (const auto& opening : plan.set.openings) {
      const auto where = canShut(opening) ? whereThrough(plan, opening, cable) : std::nullopt;
      if (where) pinches.push_back({cable.id.text(), &opening, *where, lies});
    }
  }
}

/// The frame by which the camera, its cable trailing from the anchor, has gone over a line; and where.
struct Passage {
  double time = 0;
  Point where;
};
std::optional<Passage> passageOver(const Take& take, geometry::Segment line) {
  Point before = take.plan().camera.cable->anchor;
  for (const double t : take.frameTimes()) {
    const Point here = take.people().camera().place(t);
    if (const auto share = geometry::whereMeet(line, {before, here}))
      return Passage{t, geometry::lerp(line.a, line.b, *share)};
    before = here;
  }
  return std::nullopt;
}

/// The camera's own lies where the camera has gone, from the anchor on.
void addTrailing(const Take& take, std::vector<Pinch>& pinches) {
  const plan::Plan& plan = take.plan();
  if (!plan.camera.cable) return;
  for (const auto& opening : plan.set.openings) {
    if (!canShut(opening)) continue;
    const auto gap = gapOf(plan, opening, kTrailingHeight);
    if (!gap) continue;
    if (const auto passed = passageOver(take, *gap))
      pinches.push_back({plan::kCameraEnd, &opening, passed->where, {passed->time, take.length()}});
  }
}

}  // namespace

std::vector<Pinch> pinchesOf(const Take& take) {
  std::vector<Pinch> pinches;
  addLaid(take, pinches);
  addTrailing(take, pinches);
  return pinches;
}

bool isShutIn(const Take& take, const Pinch& pinch, double t) {
  return pinch.lies.from <= t && t <= pinch.lies.until && shutAt(take.plan(), *pinch.opening, t);
}

CableLength::CableLength(const Take& take) {
  const auto& cable = take.plan().camera.cable;
  if (!cable) return;
  Point before = cable->anchor;
  for (const double t : take.frameTimes()) {
    const Point here = take.people().camera().place(t);
    times_.push_back(t);
    gone_.push_back((gone_.empty() ? 0 : gone_.back()) + geometry::distance(before, here));
    before = here;
  }
}

std::optional<double> CableLength::neededAt(double t) const {
  if (times_.empty()) return std::nullopt;
  const auto after = std::upper_bound(times_.begin(), times_.end(), t);
  return after == times_.begin() ? 0 : gone_[static_cast<std::size_t>(after - times_.begin()) - 1];
}

std::optional<CableLength::Over> CableLength::over(double length) const {
  const auto first = std::upper_bound(gone_.begin(), gone_.end(), length);
  if (first == gone_.end()) return std::nullopt;
  return Over{times_[static_cast<std::size_t>(first - gone_.begin())], gone_.back()};
}

std::vector<CableShutIn> cablesShutIn(const Take& take) {
  std::vector<CableShutIn> found;
  const std::vector<double> times = take.frameTimes();
  for (const Pinch& pinch : pinchesOf(take)) {
    const auto shut = std::find_if(times.begin(), times.end(), [&](double t) { return isShutIn(take, pinch, t); });
    if (shut != times.end()) found.push_back({*shut, pinch.cable, pinch.opening->id.text(), pinch.where});
  }
  std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.time < b.time; });
  return found;
}

std::optional<CableOut> cameraCableOut(const Take& take) {
  const auto& cable = take.plan().camera.cable;
  if (!cable) return std::nullopt;
  const auto over = CableLength(take).over(cable->length);
  if (!over) return std::nullopt;
  return CableOut{over->from, over->most, take.people().camera().place(over->from)};
}

}  // namespace wend::answers
