#include "core/answers/take.h"

#include "core/answers/iris_cover.h"
#include "core/answers/light_blockers.h"
#include "core/answers/shot_sizes.h"
#include "core/optics/figure.h"

namespace wend::answers {

using base::Result;

Take::Take(plan::PlanPtr plan, light::Luminaires luminaires)
    : plan_(std::move(plan)),
      luminaires_(std::move(luminaires)),
      rate_{plan_->clock.rateNumerator, plan_->clock.rateDenominator},
      scene_(sceneOf(*plan_)) {}

Result<TakePtr> Take::of(const plan::PlanPtr& plan, light::Luminaires luminaires) {
  if (auto unknown = unknownSizes(*plan); !unknown.empty()) return unknown;
  auto people = People::of(plan);
  if (!people) return people.problems();
  std::shared_ptr<Take> take(new Take(plan, std::move(luminaires)));
  take->people_ = std::make_unique<People>(std::move(people).value());
  take->subjects_ = std::make_unique<Subjects>(plan, *take->people_);
  auto view = CameraView::of(plan, *take->people_, *take->subjects_);
  if (!view) return view.problems();
  take->view_ = std::make_unique<CameraView>(std::move(view).value());
  take->lighting_ = std::make_unique<light::Lighting>(lightingOf(*plan, take->scene_, take->luminaires_));
  if (plan->performers.size() > 0 && plan->fixtures.size() > 0) take->lighting_->bodies = performersInLight(*take);
  take->setLens();
  return TakePtr(take);
}

void Take::setLens() {
  const std::vector<double> times = frameTimes();
  lens_ = std::make_unique<LensTracks>(LensTracks::of(plan_, *subjects_, *view_, *lighting_, times));
  if (auto iris = irisUnderCover(*this))
    *lens_ = lens_->withIris(std::move(*iris), plan_, *subjects_, *view_, *lighting_, times);
}

std::vector<double> Take::frameTimes() const {
  std::vector<double> times;
  for (std::int64_t frame = 0;; ++frame) {
    const double t = units::secondsAt(frame, rate_);
    if (t >= length()) break;
    times.push_back(t);
  }
  times.push_back(length());
  return times;
}

std::string Take::timecodeAt(double t) const {
  const units::TimecodeKind kind{rate_, plan_->clock.dropFrame};
  const auto start = units::framesFrom(plan_->clock.startTimecode, kind);
  return units::timecodeText((start ? *start : 0) + units::frameAt(t, rate_), kind);
}

std::optional<sight::Eye> Take::eyeAt(double t, double marginDegrees) const {
  const auto half = view_->halfTangentsAt(t);
  if (!half) return std::nullopt;
  return sight::Eye{view_->pupilAt(t), half->h, half->v, marginDegrees};
}

std::optional<optics::Figure> Take::figureAt(std::size_t i, double t) const {
  const PerformerPose pose = people_->performerAt(i, t);
  if (!pose.present) return std::nullopt;
  const plan::Performer& performer = plan_->performers[i];
  return optics::figureOf(geometry::at(pose.pos, pose.floor), performer.radius, pose.eyes - pose.floor,
                          performer.stature);
}

std::optional<double> Take::neededAt(Point3 place, double t) const {
  return light::neededOnFace(*lighting_, {place, view_->pupilAt(t).at - place}, t);
}

}  // namespace wend::answers
