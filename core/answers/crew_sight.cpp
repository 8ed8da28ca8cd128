// Who the lens must not see, and when it sees them.
#include <algorithm>
#include <cmath>
#include <limits>

#include "core/answers/hiders.h"
#include "core/answers/sight_steps.h"
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

/// For whoever walks a little off it.
geometry::Extent withRoom(const geometry::Extent& ground) {
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

/// How a body is to be looked at.
sight::TakeSpec specFor(const Take& take, const sight::BodyAt& body) {
  constexpr double kTallest = 1.9, kTaller = 0.5;
  const geometry::Extent set = extentOfSet(take);
  const Reach reach = reachOf(take, body).value_or(Reach{set, {}});
  const sight::Heights& heights = reach.heights;
  sight::TakeSpec spec;
  spec.take = {0, take.length()};
  spec.rate = sightRate(take);
  // Rounded up, so that few are needed: a wall hides whoever is no taller than the tallest asked about.
  const double above = std::max(0.0, std::ceil((heights.top - kTallest) / kTaller));
  spec.bodies = {std::min(0.0, heights.bottom), std::max(kTallest + above * kTaller, heights.top)};
  spec.ground = withRoom(set);
  if (!holds(spec.ground, reach.places)) spec.ground = withRoom(hull(set, reach.places));
  if (heights.bottom < 0 && farFromWalls(take, body)) spec.walls = sight::Walls::nearly;
  return spec;
}

/// What the lens sees during every step, made once for all whose feet stand no lower.
///
/// Which look serves a body depends on that body alone, so that nobody's answer depends on who else was asked about.
class Looks {
 public:
  Looks(const Take& take, const base::Cancel& cancel) : take_(take), cancel_(cancel) {}

  /// The steps of a look that are known by what an earlier take has of them. All looks have the same steps.
  const std::vector<char>& alike(const sight::TakeLook& look, const KnownSights& known) {
    if (alike_.empty()) alike_ = known.alike(look);
    return alike_;
  }

  /// Null when cancelled.
  sight::TakeLook* lookFor(const sight::TakeSpec& spec) {
    for (const auto& look : looks_)
      if (look->spec() == spec) return look.get();
    const double margin = take_.plan().sightRules.margin;
    const Take& take = take_;
    auto look = sight::TakeLook::over(
        take.scene(), [&take, margin](double t) { return take.eyeAt(t, margin); }, spec, hidersOf(take), cancel_);
    if (!look) return nullptr;
    looks_.push_back(std::move(look));
    return looks_.back().get();
  }

 private:
  const Take& take_;
  const base::Cancel& cancel_;
  std::vector<std::unique_ptr<sight::TakeLook>> looks_;
  std::vector<char> alike_;
};

/// The openings that a look passes on its way from place to place, joined with '+'.
std::string openingsOn(const Take& take, const std::vector<Point>& way) {
  std::string names;
  for (std::size_t i = 1; i < way.size(); ++i)
    for (const int tag : sight::openingsCrossed(take.scene(), way[i - 1], way[i]))
      names += (names.empty() ? "" : "+") + take.plan().set.openings[static_cast<std::size_t>(tag)].id.text();
  return names;
}

/// The way of a look from the pupil to the middle of a body, straight or by a mirror; nothing where the mirror shows no
/// more than its edge.
std::vector<Point> wayOfLook(const Take& take, double t, Point pos, std::optional<int> mirror) {
  const Point eye = geometry::flat(take.view().pupilAt(t).at);
  if (!mirror) return {eye, pos};
  const sight::SceneAt now = take.scene().at(t);
  for (const auto& shown : now.mirrors()) {
    const auto share = geometry::whereMeet(shown.face, {eye, geometry::reflected(pos, shown.face)});
    if (shown.tag == *mirror && share) return {eye, geometry::lerp(shown.face.a, shown.face.b, *share), pos};
  }
  return {};
}

/// What an earlier take has of the same body.
struct Earlier {
  const KnownSights& known;
  const SightOf& sight;
};

SeenSpan seenSpan(const Take& take, const sight::BodyAt& body, const sight::SeenSpan& seen) {
  SeenSpan span;
  span.span = seen.time;
  if (const auto at = body(seen.time.from)) span.pos = at->centre;
  if (!seen.found) return span;
  span.via = seen.mirror ? take.plan().set.pieces[static_cast<std::size_t>(*seen.mirror)].id.text() : "direct";
  // At either end of a span only an edge of the body shows, and a mirror's edge may be all it shows it in.
  const double when = seen.mirror ? (seen.time.from + seen.time.until) / 2 : seen.time.from;
  const auto then = body(when);
  span.by = openingsOn(take, wayOfLook(take, when, then ? then->centre : span.pos, seen.mirror));
  return span;
}

std::optional<SightOf> sightOfBody(const Take& take, Looks& looks, const Watched& watched, const base::Cancel& cancel,
                                   const std::optional<Earlier>& earlier = {}) {
  const sight::BodyAt& body = watched.body;
  const sight::TakeSpec spec = specFor(take, body);
  sight::TakeLook* look = looks.lookFor(spec);
  if (!look) return std::nullopt;
  std::optional<sight::KnownSteps> steps;
  if (earlier && earlier->sight.known->spec == spec)
    steps.emplace(looks.alike(*look, earlier->known), earlier->sight.known->asked);
  auto windows = sight::sightWindows(*look, body, watchOf(take), watched.self, cancel, steps ? &*steps : nullptr);
  if (!windows) return std::nullopt;
  SightOf sight;
  sight.id = watched.id;
  sight.kind = watched.kind;
  for (const auto& seen : windows->seen) sight.seen.push_back(seenSpan(take, body, seen));
  for (const auto& clear : windows->clear) sight.clear.push_back({clear.time, clear.marginDegrees});
  sight.known = std::make_shared<const sight::KnownSight>(sight::KnownSight{spec, std::move(windows->asked)});
  return sight;
}

}  // namespace

std::optional<std::vector<SightOf>> sightOfAll(const Take& take, const base::Cancel& cancel, const KnownSights* known) {
  std::vector<SightOf> all;
  Looks looks(take, cancel);
  for (const Watched& watched : watchedOf(take)) {
    if (const SightOf* whole = known != nullptr ? known->of(watched) : nullptr) {
      all.push_back(*whole);
      continue;
    }
    const SightOf* before = known != nullptr ? known->bySteps(watched) : nullptr;
    const auto earlier = before != nullptr ? std::optional<Earlier>({*known, *before}) : std::nullopt;
    auto sight = sightOfBody(take, looks, watched, cancel, earlier);
    if (!sight) return {};
    all.push_back(std::move(*sight));
  }
  return all;
}

SightOf sightOfSpot(const Take& take, Point pos, double height, double radius, const base::Cancel& cancel) {
  Looks looks(take, cancel);
  auto sight = sightOfBody(take, looks, standingAt(take, pos, height, radius), cancel);
  return sight ? std::move(*sight) : SightOf{};
}

namespace {

/// Who looks at each frame, worked out once for all marks.
class Looking {
 public:
  struct Look {
    geometry::Point3 pupil;
    sight::Frame frame;
  };
  Looking(const Take& take, double step) : take_(take), step_(step) {
    for (std::size_t k = 0; static_cast<double>(k) * step <= take.length(); ++k)
      frames_.push_back(lookAt(static_cast<double>(k) * step));
  }
  /// At a frame from memory, between two of them anew. Nothing while there is no lens.
  std::optional<Look> at(double t) const {
    const auto k = static_cast<std::size_t>(std::lround(t / step_));
    return k < frames_.size() && t == static_cast<double>(k) * step_ ? frames_[k] : lookAt(t);
  }

 private:
  std::optional<Look> lookAt(double t) const {
    const auto eye = take_.eyeAt(t, 0);
    return eye ? std::optional(Look{eye->pupil.at, sight::Frame(*eye)}) : std::nullopt;
  }
  const Take& take_;
  double step_;
  std::vector<std::optional<Look>> frames_;
};

}  // namespace

std::vector<MarkSeen> marksSeen(const Take& take) {
  constexpr double kReadable = 8;
  const double step = 1 / take.rate();
  const Looking looking(take, step);
  std::vector<MarkSeen> seen;
  const auto& performers = take.plan().performers;
  for (std::size_t i = 0; i < performers.size(); ++i) {
    for (std::size_t k = 0; k < performers[i].marks.size(); ++k) {
      const plan::Mark& mark = performers[i].marks[k];
      if (!mark.taped) continue;
      const geometry::Point3 at = geometry::at(mark.pos, take.people().floorAt(mark.pos));
      const auto shows = [&](double t) {
        const auto look = looking.at(t);
        return look && geometry::distance(look->pupil, at) <= kReadable && look->frame.holds(at) &&
               sight::openBetween(take.scene().at(t), look->pupil, at);
      };
      for (const auto& span : geometry::spansWhere({0, take.length()}, step, shows))
        seen.push_back({span, performers[i].id.text(), k, mark.pos});
    }
  }
  return seen;
}

}  // namespace wend::answers
