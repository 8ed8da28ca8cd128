#include "ui/canvas/plan_hit.h"

#include <cmath>

#include "core/answers/set_scene.h"
#include "core/geometry/band.h"
#include "core/geometry/nearest.h"
#include "core/geometry/polygon.h"

namespace wend::ui {

using geometry::Point;
using plan::MarkRef;
using plan::Owner;

namespace {

Selection selectionOf(const MarkRef& mark) {
  const Kind kind = mark.owner == Owner::camera      ? Kind::camera
                    : mark.owner == Owner::performer ? Kind::performer
                                                     : Kind::crew;
  return {kind, mark.id, static_cast<int>(mark.index)};
}

/// Collects the best mark: nearest in px, then nearest in time.
class MarkSearch {
 public:
  MarkSearch(const sheets::PlanView& view, Point px, double time) : view_(view), px_(px), time_(time) {}

  void look(const motion::Track* track, Owner owner, const std::string& id) {
    if (!track) return;
    for (std::size_t k = 0; k < track->marks().size(); ++k) {
      const auto& mark = track->marks()[k];
      const double away = distance(view_.toPicture(mark.pos), px_);
      if (away > kReach) continue;
      const double late = time_ < mark.at ? mark.at - time_ : std::max(0.0, time_ - mark.until);
      const bool better = !best_ || away < away_ - 2 || (away < away_ + 2 && late < late_);
      if (!better) continue;
      best_ = MarkRef{owner, id, k};
      away_ = away;
      late_ = late;
    }
  }
  const std::optional<MarkRef>& best() const { return best_; }
  double away() const { return away_; }

 private:
  const sheets::PlanView& view_;
  Point px_;
  double time_;
  std::optional<MarkRef> best_;
  double away_ = 0, late_ = 0;
};

/// What is drawn of people and the camera at the instant: the nearest under the pointer.
class BodySearch {
 public:
  BodySearch(const answers::Answers& answers, const answers::Instant& instant, const sheets::PlanView& view, Point px)
      : answers_(answers), instant_(instant), view_(view), px_(px) {
    for (const auto& performer : instant.performers)
      if (performer.present) look(view.toPicture(performer.pos), kReach, {Kind::performer, performer.id, -1});
    look(view.toPicture(geometry::flat(instant.camera.sensor.at)), kReach, {Kind::camera, "", -1});
    lookCrew();
  }
  const std::optional<Selection>& best() const { return best_; }
  double away() const { return away_; }

 private:
  void lookCrew() {
    const auto& crew = answers_.take->plan().crew;
    for (const auto& slab : sheets::crewSlabs(answers_, instant_, view_))
      if (std::abs(slab.at.x - px_.x) <= kSlabHalfWidth && std::abs(slab.at.y - px_.y) <= kSlabHalfHeight)
        take(0, {Kind::crew, crew[slab.crew].id.text(), -1});
    for (std::size_t i = 0; i < instant_.crew.size(); ++i)
      if (const auto& at = instant_.crew[i]; at.present && at.carried)
        look(view_.toPicture(at.pos), std::max(4.0, at.radius * view_.pxPerMetre), {Kind::crew, at.id, -1});
  }
  void look(Point at, double reach, Selection what) {
    const double away = distance(at, px_);
    if (away <= reach) take(away, std::move(what));
  }
  void take(double away, Selection what) {
    if (best_ && away >= away_) return;
    best_ = std::move(what);
    away_ = away;
  }

  static constexpr double kSlabHalfWidth = 13, kSlabHalfHeight = 9;
  const answers::Answers& answers_;
  const answers::Instant& instant_;
  const sheets::PlanView& view_;
  Point px_;
  std::optional<Selection> best_;
  double away_ = 0;
};

std::optional<Selection> snagAt(const answers::Answers& answers, double t, const sheets::PlanView& view, Point px) {
  constexpr double kLozenge = 12;
  std::optional<Selection> top;
  for (const auto& lozenge : sheets::snagLozenges(answers, t, view))
    if (std::abs(lozenge.at.x - px.x) + std::abs(lozenge.at.y - px.y) <= kLozenge)
      top = Selection{Kind::snag, lozenge.snag->key, -1};
  return top;
}

/// How near the pointer has to be to what is drawn as a line, px.
constexpr double kLineReach = 7;

std::optional<Selection> openingAt(const plan::Plan& plan, Point at, double metres) {
  for (const auto& opening : plan.set.openings) {
    const plan::Wall* wall = plan.set.walls.find(opening.wall);
    if (!wall) continue;
    const geometry::Course course(wall->points);
    const Point from = course.at(opening.along.from), until = course.at(opening.along.until);
    if (distance(geometry::nearestOnSegment(at, from, until), at) <= std::max(metres, wall->thickness / 2))
      return Selection{Kind::opening, opening.id.text(), -1};
  }
  for (const auto& piece : plan.set.pieces)
    if (const auto* line = std::get_if<plan::Line>(&piece.shape))
      if (geometry::nearestOnLine(at, line->points).distance <= metres)
        return Selection{Kind::piece, piece.id.text(), -1};
  return std::nullopt;
}

std::optional<Selection> wallAt(const plan::Plan& plan, Point at, double metres) {
  for (const auto& wall : plan.set.walls)
    if (geometry::nearestOnLine(at, wall.points).distance <= std::max(metres, wall.thickness / 2))
      return Selection{Kind::wall, wall.id.text(), -1};
  return std::nullopt;
}

std::optional<Selection> thingAt(const plan::Plan& plan, const sheets::PlanView& view, Point px) {
  const double metres = kLineReach / view.pxPerMetre;
  const Point at = view.toPlan(px);
  for (const auto& shelter : plan.shelters)
    if (distance(view.toPicture(shelter.pos), px) < 14) return Selection{Kind::shelter, shelter.id.text(), -1};
  for (const auto& gear : plan.gear)
    if (distance(view.toPicture(gear.pos), px) < std::max(kReach, gear.radius * view.pxPerMetre))
      return Selection{Kind::gear, gear.id.text(), -1};
  if (auto opening = openingAt(plan, at, metres)) return opening;
  for (std::size_t i = plan.set.pieces.size(); i-- > 0;) {
    const plan::Piece& piece = plan.set.pieces[i];
    if (std::holds_alternative<plan::Line>(piece.shape)) continue;
    if (geometry::contains(answers::outlineOf(piece.shape), at)) return Selection{Kind::piece, piece.id.text(), -1};
  }
  return wallAt(plan, at, metres);
}

MarkSearch markSearch(const answers::Take& take, const sheets::PlanView& view, Point px, double time) {
  const plan::Plan& plan = take.plan();
  MarkSearch search(view, px, time);
  search.look(&take.people().camera(), Owner::camera, "");
  for (std::size_t i = 0; i < plan.performers.size(); ++i)
    search.look(take.people().performer(i), Owner::performer, plan.performers[i].id.text());
  for (std::size_t i = 0; i < plan.crew.size(); ++i)
    search.look(take.people().crew(i), Owner::crew, plan.crew[i].id.text());
  return search;
}

}  // namespace

std::optional<PlanHit> planHit(const answers::Answers& answers, const answers::Instant& instant,
                               const sheets::PlanView& view, Point px) {
  // A mark somebody stands on is the mark, which can be dragged; one that they only pass by is not meant.
  constexpr double kClearlyNearer = 3;
  if (px.y > view.height - sheets::kLegendHeight) return std::nullopt;
  if (auto snag = snagAt(answers, instant.time, view, px)) return PlanHit{*snag, {}};
  const MarkSearch marks = markSearch(*answers.take, view, px, instant.time);
  const BodySearch bodies(answers, instant, view, px);
  if (marks.best() && !(bodies.best() && bodies.away() < marks.away() - kClearlyNearer))
    return PlanHit{selectionOf(*marks.best()), marks.best()};
  if (bodies.best()) return PlanHit{*bodies.best(), {}};
  if (auto thing = thingAt(answers.take->plan(), view, px)) return PlanHit{*thing, {}};
  return std::nullopt;
}

sheets::Chosen chosenOf(const Selection& selection) {
  using sheets::Chosen;
  if (selection.index < 0 && selection.kind == Kind::camera) return {Chosen::Kind::camera, "", 0};
  if (selection.index < 0) return {Chosen::Kind::thing, selection.id, 0};
  const auto mark = static_cast<std::size_t>(selection.index);
  if (selection.kind == Kind::camera) return {Chosen::Kind::cameraMark, "", mark};
  if (selection.kind == Kind::performer) return {Chosen::Kind::performerMark, selection.id, mark};
  if (selection.kind == Kind::crew) return {Chosen::Kind::crewMark, selection.id, mark};
  return {};
}

std::optional<MarkRef> markOf(const Selection& selection) {
  if (selection.index < 0) return std::nullopt;
  const auto index = static_cast<std::size_t>(selection.index);
  if (selection.kind == Kind::camera) return MarkRef{Owner::camera, "", index};
  if (selection.kind == Kind::performer) return MarkRef{Owner::performer, selection.id, index};
  if (selection.kind == Kind::crew) return MarkRef{Owner::crew, selection.id, index};
  return std::nullopt;
}

}  // namespace wend::ui
