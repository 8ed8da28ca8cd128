// Who the lens must not see, and when it sees them.
#include <algorithm>

#include "core/answers/hiders.h"
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

/// Ground that holds everything of the plan and everybody, with room for where a spot may be asked.
geometry::Extent groundOfTake(const Take& take) {
  geometry::Extent ground = extentOfSet(take);
  const geometry::Vec border{30, 30};
  return {ground.low - border, ground.high + border};
}

sight::Heights hull(sight::Heights heights, const sight::Body& body) {
  return {std::min(heights.bottom, body.floor), std::max(heights.top, body.top)};
}

/// From the lowest floor to the highest crown a body has during the take; nothing when it never exists.
std::optional<sight::Heights> heightsOf(const Take& take, const sight::BodyAt& body) {
  std::optional<sight::Heights> heights;
  for (const double t : take.frameTimes())
    if (const auto there = body(t)) heights = hull(heights.value_or(sight::Heights{there->floor, there->top}), *there);
  return heights;
}

/// What the lens sees during every step, made once for all whose feet stand no lower.
class Looks {
 public:
  Looks(const Take& take, const base::Cancel& cancel) : take_(take), cancel_(cancel) {}

  /// Null when cancelled.
  sight::TakeLook* lookFor(sight::Heights body) {
    for (const auto& look : looks_)
      if (holds(look->spec().bodies, body)) return look.get();
    sight::TakeSpec spec;
    spec.take = {0, take_.length()};
    spec.rate = take_.rate();
    // Rounded up, so that few are needed: a wall hides whoever is no taller than the tallest asked about.
    spec.bodies = {std::min(0.0, body.bottom), std::max(kTallest, body.top)};
    spec.ground = groundOfTake(take_);
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
  static bool holds(sight::Heights all, sight::Heights body) {
    return all.bottom <= body.bottom && body.top <= all.top && (all.bottom == 0 || body.bottom < 0);
  }
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
  const auto heights = heightsOf(take, body);
  sight::TakeLook* look = looks.lookFor(heights.value_or(sight::Heights{0, 1}));
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

sight::BodyAt crewBody(const Take& take, std::size_t i) {
  const double radius = take.plan().crew[i].radius;
  return [&take, i, radius](double t) -> std::optional<sight::Body> {
    const CrewPose pose = take.people().crewAt(i, t, take.view().sensorAt(t));
    if (!pose.present) return std::nullopt;
    return sight::Body{pose.pos, radius, pose.floor, pose.floor + pose.height};
  };
}

/// The rig itself: what a mirror may show of it. Directly it is behind its own lens.
sight::BodyAt rigBody(const Take& take) {
  return [&take](double t) -> std::optional<sight::Body> {
    const geometry::Pose sensor = take.view().sensorAt(t);
    // Nobody films the rig directly: it is told as a body a little behind the pupil, so that only mirrors reach it.
    const Point behind = geometry::flat(sensor.at) - geometry::direction(sensor.bearing) * 0.15;
    return sight::Body{behind, 0.1, sensor.at.z - 0.15, sensor.at.z + 0.15};
  };
}

}  // namespace

std::optional<std::vector<SightOf>> sightOfAll(const Take& take, const base::Cancel& cancel) {
  const plan::Plan& plan = take.plan();
  std::vector<SightOf> all;
  Looks looks(take, cancel);
  const auto add = [&](const std::string& id, BodyKind kind, const sight::BodyAt& body, int self = sight::kNobody) {
    auto sight = sightOfBody(take, looks, id, kind, body, self, cancel);
    if (sight) all.push_back(std::move(*sight));
    return sight.has_value();
  };
  for (std::size_t i = 0; i < plan.crew.size(); ++i) {
    const bool carried = std::any_of(plan.camera.bodies.begin(), plan.camera.bodies.end(),
                                     [&](const auto& body) { return body.crew == plan.crew[i].id.text(); });
    if (!add(plan.crew[i].id.text(), carried ? BodyKind::carried : BodyKind::crew, crewBody(take, i), crewTag(take, i)))
      return {};
  }
  for (const auto& gear : plan.gear) {
    const double floor = take.people().floorAt(gear.pos);
    const sight::Body body{gear.pos, gear.radius, floor, floor + gear.height};
    if (!add(gear.id.text(), BodyKind::gear, [body](double) { return body; })) return {};
  }
  if (!add("camera", BodyKind::lens, rigBody(take))) return {};
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
