#include "core/answers/route_taken.h"

#include <algorithm>
#include <cmath>

#include "core/answers/on_found_routes.h"
#include "core/answers/set_scene.h"
#include "core/crew/obstacles.h"
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
    for (std::size_t k = 0; k < marks_.size();) {
      const std::string shelter = shelterOf(k);
      std::size_t end = k + 1;
      while (end < marks_.size() && shelterOf(end) == shelter) ++end;
      if (!shelter.empty()) nameWhereItHolds(k, end, *plan_.shelters.find(shelter));
      k = end;
    }
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
    std::vector<plan::Mark> moved(marks_.begin() + static_cast<std::ptrdiff_t>(from),
                                  marks_.begin() + static_cast<std::ptrdiff_t>(end));
    for (auto& mark : moved) {
      if (!unseen(shelter.pos, {mark.at.seconds, leaves(mark)}, mark.posture == plan::Posture::crouch)) return;
      mark.pos = shelter.pos;
    }
    if (from > 0 && !walkable(marks_[from - 1], moved.front())) return;
    if (end < marks_.size() && !walkable(moved.back(), marks_[end])) return;
    for (auto& mark : moved) {
      mark.shelter = shelter.id.text();
      // The place of a mark in a shelter is the shelter's.
      mark.pos = {};
    }
    std::copy(moved.begin(), moved.end(), marks_.begin() + static_cast<std::ptrdiff_t>(from));
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
