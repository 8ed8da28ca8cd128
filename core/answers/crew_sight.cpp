// Who the lens must not see, and when it sees them.
#include <algorithm>
#include <limits>

#include "core/answers/hiders.h"
#include "core/answers/watched.h"
#include "core/answers/whole_take.h"
#include "core/sight/ray.h"
#include "core/sight/windows.h"

namespace wend::answers {

using namespace snags;

namespace {

sight::Watch watchOf(const Take& take) {
  const plan::SightRules& rules = take.plan().sightRules;
  return {rules.early, rules.late};
}

/// Where a body is during the take, and from its lowest floor to its highest crown.
struct Reach {
  geometry::Extent places;
  sight::Heights heights{0, 1};
};

geometry::Extent hull(const geometry::Extent& a, const geometry::Extent& b) {
  return {{std::min(a.low.x, b.low.x), std::min(a.low.y, b.low.y)},
          {std::max(a.high.x, b.high.x), std::max(a.high.y, b.high.y)}};
}

bool holds(const geometry::Extent& box, const geometry::Extent& inner) {
  return box.low.x <= inner.low.x && box.low.y <= inner.low.y && inner.high.x <= box.high.x &&
         inner.high.y <= box.high.y;
}

/// Nothing when the body never exists.
std::optional<Reach> reachOf(const Take& take, const sight::BodyAt& body) {
  std::optional<Reach> reach;
  for (const double t : take.frameTimes()) {
    const auto there = body(t);
    if (!there) continue;
    const geometry::Vec around{there->radius, there->radius};
    const Reach now{{there->centre - around, there->centre + around}, {there->floor, there->top}};
    if (!reach) reach = now;
    reach->places = hull(reach->places, now.places);
    reach->heights = {std::min(reach->heights.bottom, now.heights.bottom),
                      std::max(reach->heights.top, now.heights.top)};
  }
  return reach;
}

/// Ground that holds everything of the plan and the body, with room around for what walks a little off it.
geometry::Extent groundFor(const Take& take, const geometry::Extent& places) {
  const geometry::Extent ground = hull(extentOfSet(take), places);
  const geometry::Vec border{30, 30};
  return {ground.low - border, ground.high + border};
}

/// Whether a body on ground lower than the walls' feet keeps so far from every wall that its feet show under none.
bool farFromWalls(const Take& take, const sight::BodyAt& body) {
  const sight::Scene& scene = take.scene();
  for (const double t : take.frameTimes()) {
    const auto there = body(t);
    if (!there) continue;
    double least = std::numeric_limits<double>::infinity();
    for (const sight::Prism& prism : scene.prisms()) {
      const auto corners = scene.corners(prism);
      for (std::size_t i = 0, j = corners.size() - 1; i < corners.size(); j = i++)
        least = std::min(least, geometry::distance(there->centre, {corners[j], corners[i]}));
    }
    const Point eye = geometry::flat(take.view().pupilAt(t).at);
    if (least < there->radius + 0.1 + (sight::kNearly - 1) * (geometry::distance(eye, there->centre) + least))
      return false;
  }
  return true;
}

/// What the lens sees during every step, made once for all whose feet stand no lower.
class Looks {
 public:
  Looks(const Take& take, const base::Cancel& cancel) : take_(take), cancel_(cancel) {}

  /// Null when cancelled.
  sight::TakeLook* lookFor(const sight::BodyAt& body) {
    const Reach reach = reachOf(take_, body).value_or(Reach{extentOfSet(take_), {}});
    const sight::Heights& heights = reach.heights;
    sight::TakeSpec spec;
    spec.take = {0, take_.length()};
    spec.rate = take_.rate();
    // Rounded up, so that few are needed: a wall hides whoever is no taller than the tallest asked about.
    spec.bodies = {std::min(0.0, heights.bottom), std::max(kTallest, heights.top)};
    spec.ground = groundFor(take_, reach.places);
    if (heights.bottom < 0 && farFromWalls(take_, body)) spec.walls = sight::Walls::nearly;
    for (const auto& look : looks_) {
      const sight::TakeSpec& made = look->spec();
      if (made.walls == spec.walls && made.bodies.bottom == spec.bodies.bottom && made.bodies.top >= spec.bodies.top &&
          holds(made.ground, reach.places))
        return look.get();
    }
    const double margin = take_.plan().sightRules.margin;
    const Take& take = take_;
    auto look = sight::TakeLook::over(
        take.scene(), [&take, margin](double t) { return take.eyeAt(t, margin); }, spec, hidersOf(take), cancel_);
    if (!look) return nullptr;
    looks_.push_back(std::move(look));
    return looks_.back().get();
  }

 private:
  static constexpr double kTallest = 1.9;
  const Take& take_;
  const base::Cancel& cancel_;
  std::vector<std::unique_ptr<sight::TakeLook>> looks_;
};

/// The openings a straight look from the pupil to the body passes, joined with '+'.
std::string openingsTo(const Take& take, double t, Point pos) {
  std::string names;
  const Point eye = geometry::flat(take.view().pupilAt(t).at);
  for (const int tag : sight::openingsCrossed(take.scene(), eye, pos))
    names += (names.empty() ? "" : "+") + take.plan().set.openings[static_cast<std::size_t>(tag)].id.text();
  return names;
}

std::optional<SightOf> sightOfBody(const Take& take, Looks& looks, const std::string& id, BodyKind kind,
                                   const sight::BodyAt& body, int self, const base::Cancel& cancel) {
  sight::TakeLook* look = looks.lookFor(body);
  if (!look) return std::nullopt;
  const auto windows = sight::sightWindows(*look, body, watchOf(take), self, cancel);
  if (!windows) return std::nullopt;
  SightOf sight;
  sight.id = id;
  sight.kind = kind;
  for (const auto& seen : windows->seen) {
    SeenSpan span;
    span.span = seen.time;
    const auto at = body(seen.time.from);
    if (at) span.pos = at->centre;
    span.via = seen.mirror ? take.plan().set.pieces[static_cast<std::size_t>(*seen.mirror)].id.text() : "direct";
    if (!seen.mirror) span.by = openingsTo(take, seen.time.from, span.pos);
    sight.seen.push_back(std::move(span));
  }
  for (const auto& clear : windows->clear) sight.clear.push_back({clear.time, clear.marginDegrees});
  return sight;
}

}  // namespace

std::optional<std::vector<SightOf>> sightOfAll(const Take& take, const base::Cancel& cancel) {
  std::vector<SightOf> all;
  Looks looks(take, cancel);
  for (const Watched& watched : watchedOf(take)) {
    auto sight = sightOfBody(take, looks, watched.id, watched.kind, watched.body, watched.self, cancel);
    if (!sight) return {};
    all.push_back(std::move(*sight));
  }
  return all;
}

SightOf sightOfSpot(const Take& take, Point pos, double height, double radius, const base::Cancel& cancel) {
  const double floor = take.people().floorAt(pos);
  const sight::Body body{pos, radius, floor, floor + height};
  Looks looks(take, cancel);
  auto sight = sightOfBody(
      take, looks, "", BodyKind::crew, [body](double) { return body; }, sight::kNobody, cancel);
  return sight ? std::move(*sight) : SightOf{};
}

std::vector<MarkSeen> marksSeen(const Take& take, const std::vector<Instant>& samples) {
  constexpr double kReadable = 8;
  std::vector<MarkSeen> seen;
  const auto& performers = take.plan().performers;
  for (std::size_t i = 0; i < performers.size(); ++i) {
    for (std::size_t k = 0; k < performers[i].marks.size(); ++k) {
      const plan::Mark& mark = performers[i].marks[k];
      if (!mark.taped) continue;
      const geometry::Point3 at = geometry::at(mark.pos, take.people().floorAt(mark.pos));
      const auto shows = [&](double t) {
        const auto eye = take.eyeAt(t, 0);
        return eye && geometry::distance(eye->pupil.at, at) <= kReadable &&
               sight::pointSight(take.scene().at(t), *eye, at).seen();
      };
      for (const auto& span : geometry::spansWhere({0, take.length()}, samples[1].time - samples[0].time, shows))
        seen.push_back({span, performers[i].id.text(), k, mark.pos});
    }
  }
  return seen;
}

}  // namespace wend::answers
