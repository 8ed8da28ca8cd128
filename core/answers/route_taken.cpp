#include "core/answers/route_taken.h"

#include <algorithm>
#include <cmath>

#include "core/answers/closed_ground.h"
#include "core/answers/on_found_routes.h"
#include "core/answers/set_scene.h"
#include "core/crew/obstacles.h"
#include "core/geometry/runs.h"
#include "core/geometry/tolerance.h"
#include "core/plan/invariants.h"

namespace wend::answers {

using geometry::Span;

namespace {

/// Times nearer than this are one.
constexpr double kSame = 1e-9;
/// Looks along a way, metres apart.
constexpr double kLook = 0.05;

class Sheltering {
 public:
  Sheltering(const Answers& answers, const FoundRoute& route)
      : take_(*answers.take),
        plan_(take_.plan()),
        maps_(answers.routeGround),
        route_(route),
        crew_(*plan_.crew.find(route.id)),
        fixed_(crew::obstaclesOf(take_.scene(), namesOf(plan_))),
        marks_(marksOf(route, take_.length())) {}

  std::vector<plan::Mark> named() {
    const auto together = [&](std::size_t a, std::size_t b) { return shelterOf(a) == shelterOf(b); };
    for (const auto& run : geometry::runsAlike(marks_.size(), together))
      if (const std::string shelter = shelterOf(run.first); !shelter.empty())
        nameWhereItHolds(run.first, run.last + 1, *plan_.shelters.find(shelter));
    return std::move(marks_);
  }

 private:
  static double leaves(const plan::Mark& mark) { return mark.until ? mark.until->seconds : mark.at.seconds; }

  /// Of the stand that the mark is; a corner of a walk has none.
  std::string shelterOf(std::size_t k) const {
    for (const auto& stand : route_.stands)
      if (std::abs(stand.span.from - marks_[k].at.seconds) < kSame && stand.pos == marks_[k].pos) return stand.shelter;
    return "";
  }

  /// Stands that follow one another in a shelter, as when somebody gets up in it, go there together or not at all.
  void nameWhereItHolds(std::size_t from, std::size_t end, const plan::Shelter& shelter) {
    if (!mayStand(plan_, shelter.pos, crew_.radius)) return;
    std::vector<plan::Mark> moved(marks_.begin() + static_cast<std::ptrdiff_t>(from),
                                  marks_.begin() + static_cast<std::ptrdiff_t>(end));
    for (auto& mark : moved) {
      if (!unseen(shelter.pos, {mark.at.seconds, leaves(mark)}, mark.posture == plan::Posture::crouch)) return;
      mark.pos = shelter.pos;
    }
    if (!giveTime(from, end, shelter.pos, moved)) return;
    if (from > 0 && !walkable(marks_[from - 1], moved.front())) return;
    if (end < marks_.size() && !walkable(moved.back(), marks_[end])) return;
    for (auto& mark : moved) {
      mark.shelter = shelter.id.text();
      // The place of a mark in a shelter is the shelter's.
      mark.pos = {};
    }
    std::copy(moved.begin(), moved.end(), marks_.begin() + static_cast<std::ptrdiff_t>(from));
  }

  /// Of the route between two marks, m/s.
  double paceOf(const plan::Mark& before, const plan::Mark& after) const {
    constexpr double kSlowest = 0.1;
    const double metres = geometry::distance(plan::placeOf(plan_, before), plan::placeOf(plan_, after));
    return std::clamp(metres / std::max(after.at.seconds - leaves(before), kSame), kSlowest, crew_.speed);
  }

  /// Comes later and leaves sooner, by whole milliseconds, as far as the longer way asks. False where no stand is left.
  bool giveTime(std::size_t from, std::size_t end, Point pos, std::vector<plan::Mark>& moved) const {
    constexpr double kStep = 0.001;
    const auto away = [&](const plan::Mark& other) { return geometry::distance(plan::placeOf(plan_, other), pos); };
    if (from > 0) {
      const double earliest =
          leaves(marks_[from - 1]) + away(marks_[from - 1]) / paceOf(marks_[from - 1], marks_[from]);
      if (earliest > moved.front().at.seconds) moved.front().at.seconds = std::ceil(earliest / kStep) * kStep;
    }
    if (end < marks_.size()) {
      const double latest = marks_[end].at.seconds - away(marks_[end]) / paceOf(marks_[end - 1], marks_[end]);
      if (latest < leaves(moved.back())) moved.back().until = plan::Moment{"", std::floor(latest / kStep) * kStep};
    }
    return moved.front().at.seconds < leaves(moved.front()) && moved.back().at.seconds < leaves(moved.back());
  }

  bool unseen(Point pos, Span span, bool crouching) const {
    const sight::GroundMap* map = crouching && maps_.low ? maps_.low.get() : maps_.upright.get();
    if (!map) return false;
    const auto cell = map->spec().grid.cellAt(pos);
    if (!cell) return false;
    const auto runs = map->seenRuns(*cell);
    return std::none_of(runs.begin(), runs.end(), [&](const auto& run) {
      const Span seen = map->timeOf(run);
      return seen.from - plan_.sightRules.early < span.until && seen.until + plan_.sightRules.late > span.from;
    });
  }

  bool clear(Point pos, double travel) const {
    if (!mayBe(plan_, pos, crew_.radius)) return false;
    const double floor = take_.people().floorAt(pos);
    const crew::Body body{crew_.id.text(), pos, crew_.radius, floor, floor + crew_.height};
    const auto gaps = crew::clearanceAt(body, travel, fixed_);
    const auto wide = [&](const auto& gap) { return !gap || gap->metres >= route_.room - geometry::kTouch; };
    return wide(gaps.left) && wide(gaps.right);
  }

  bool walkable(const plan::Mark& from, const plan::Mark& to) const {
    const Point a = plan::placeOf(plan_, from), b = plan::placeOf(plan_, to);
    const double metres = geometry::distance(a, b), start = leaves(from), seconds = to.at.seconds - start;
    if (metres < geometry::kTouch) return true;
    if (metres > crew_.speed * seconds + geometry::kTouch) return false;
    const double travel = geometry::bearingOf(b - a);
    const int looks = static_cast<int>(std::ceil(metres / kLook));
    for (int i = 0; i <= looks; ++i) {
      const double share = double(i) / looks, t = start + share * seconds;
      const Point at = geometry::lerp(a, b, share);
      if (!unseen(at, {t, t}, false) || !clear(at, travel)) return false;
    }
    return true;
  }

  const Take& take_;
  const plan::Plan& plan_;
  const RouteMaps& maps_;
  const FoundRoute& route_;
  const plan::Crew& crew_;
  std::vector<crew::Obstacle> fixed_;
  std::vector<plan::Mark> marks_;
};

}  // namespace

std::vector<plan::Mark> takenOver(const Answers& answers, const FoundRoute& route) {
  return Sheltering(answers, route).named();
}

}  // namespace wend::answers
