#include "ui/canvas/plan_hit.h"

#include <cmath>

#include "core/answers/set_scene.h"
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

 private:
  const sheets::PlanView& view_;
  Point px_;
  double time_;
  std::optional<MarkRef> best_;
  double away_ = 0, late_ = 0;
};

}  // namespace

std::optional<PlanHit> planHit(const answers::Take& take, const sheets::PlanView& view, Point px, double time) {
  const plan::Plan& plan = take.plan();
  MarkSearch search(view, px, time);
  search.look(&take.people().camera(), Owner::camera, "");
  for (std::size_t i = 0; i < plan.performers.size(); ++i)
    search.look(take.people().performer(i), Owner::performer, plan.performers[i].id.text());
  for (std::size_t i = 0; i < plan.crew.size(); ++i)
    search.look(take.people().crew(i), Owner::crew, plan.crew[i].id.text());
  if (search.best()) return PlanHit{selectionOf(*search.best()), search.best()};
  for (const auto& shelter : plan.shelters)
    if (distance(view.toPicture(shelter.pos), px) < 14) return PlanHit{{Kind::shelter, shelter.id.text(), -1}, {}};
  for (const auto& gear : plan.gear)
    if (distance(view.toPicture(gear.pos), px) < std::max(kReach, gear.radius * view.pxPerMetre))
      return PlanHit{{Kind::gear, gear.id.text(), -1}, {}};
  for (std::size_t i = plan.set.pieces.size(); i-- > 0;) {
    const plan::Piece& piece = plan.set.pieces[i];
    if (std::holds_alternative<plan::Line>(piece.shape)) continue;
    if (geometry::contains(answers::outlineOf(piece.shape), view.toPlan(px)))
      return PlanHit{{Kind::piece, piece.id.text(), -1}, {}};
  }
  return std::nullopt;
}

sheets::Chosen chosenOf(const Selection& selection) {
  using sheets::Chosen;
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
