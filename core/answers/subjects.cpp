#include "core/answers/subjects.h"

#include <algorithm>

#include "core/base/text.h"

namespace wend::answers {

using optics::SubjectDistances;

double driving(const plan::Plan& plan, const SubjectDistances& distances) {
  switch (plan.focus.distance) {
    case plan::DistanceKind::slant:
      return distances.slant;
    case plan::DistanceKind::floor:
      return distances.floor;
    case plan::DistanceKind::flat:
      break;
  }
  return distances.flat;
}

Subjects::Subjects(plan::PlanPtr plan, const People& people)
    : plan_(std::move(plan)), people_(&people), keys_(resolvedKeys(*plan_, plan_->focus.keys)) {}

bool Subjects::changing(double t) const {
  return any() && blendAt(t).before != blendAt(t).after;
}

std::vector<geometry::Span> Subjects::changes() const {
  std::vector<geometry::Span> spans;
  for (std::size_t k = 1; k < keys_.size(); ++k)
    if (keys_[k].over > 0) spans.push_back({keys_[k].at, keys_[k].at + keys_[k].over});
  return spans;
}

std::string Subjects::firstOf(std::size_t k) const {
  const plan::Target& on = plan_->focus.keys[k].on;
  if (const auto* performer = std::get_if<plan::OnPerformer>(&on)) return performer->performer;
  if (const auto* prop = std::get_if<plan::OnProp>(&on)) return prop->prop;
  if (const auto* split = std::get_if<plan::OnSplit>(&on)) return split->who.empty() ? std::string() : split->who[0];
  return {};
}

std::vector<std::string> Subjects::splitOf(std::size_t k) const {
  const auto* split = std::get_if<plan::OnSplit>(&plan_->focus.keys[k].on);
  return split ? split->who : std::vector<std::string>();
}

std::string Subjects::nameOf(std::size_t k) const {
  const plan::Target& on = plan_->focus.keys[k].on;
  if (const auto* point = std::get_if<plan::OnPoint>(&on))
    return base::shortest(point->pos.x) + "," + base::shortest(point->pos.y);
  if (const auto* distance = std::get_if<plan::OnDistance>(&on)) return base::fixed(distance->metres, 2) + " m";
  if (const auto* split = std::get_if<plan::OnSplit>(&on)) {
    std::string names;
    for (const auto& id : split->who) names += (names.empty() ? "" : "+") + id;
    return names;
  }
  return firstOf(k);
}

std::optional<Point3> Subjects::placeOf(std::size_t k, double t) const {
  if (const auto* point = std::get_if<plan::OnPoint>(&plan_->focus.keys[k].on))
    return geometry::at(point->pos, point->height);
  const std::string id = firstOf(k);
  return id.empty() ? std::nullopt : people_->lookAt(id, t);
}

std::optional<SubjectDistances> Subjects::splitOn(const plan::OnSplit& split, double t,
                                                  const geometry::Pose& sensor) const {
  std::optional<SubjectDistances> nearest, furthest;
  for (const auto& id : split.who) {
    const auto place = people_->lookAt(id, t);
    if (!place) return std::nullopt;
    const SubjectDistances d = optics::distancesOf(*place, sensor);
    if (!nearest) nearest = furthest = d;
    nearest = SubjectDistances{std::min(nearest->slant, d.slant), std::min(nearest->flat, d.flat),
                               std::min(nearest->floor, d.floor)};
    furthest = SubjectDistances{std::max(furthest->slant, d.slant), std::max(furthest->flat, d.flat),
                                std::max(furthest->floor, d.floor)};
  }
  if (!nearest) return std::nullopt;
  const double ahead = plan_->lens ? plan_->lens->pupilAhead : 0;
  const auto between = [&](double near, double far) {
    const double a = optics::fromPupil(near, ahead), b = optics::fromPupil(far, ahead);
    return ahead + 2 * a * b / (a + b);
  };
  return SubjectDistances{between(nearest->slant, furthest->slant), between(nearest->flat, furthest->flat),
                          between(nearest->floor, furthest->floor)};
}

std::optional<SubjectDistances> Subjects::distancesOn(std::size_t k, double t, const geometry::Pose& sensor) const {
  const plan::Target& on = plan_->focus.keys[k].on;
  if (const auto* distance = std::get_if<plan::OnDistance>(&on))
    return SubjectDistances{distance->metres, distance->metres, distance->metres};
  if (const auto* split = std::get_if<plan::OnSplit>(&on)) return splitOn(*split, t, sensor);
  const auto place = placeOf(k, t);
  if (!place) return std::nullopt;
  return optics::distancesOf(*place, sensor);
}

std::optional<SubjectDistances> Subjects::wantedAt(double t, const geometry::Pose& sensor) const {
  if (!any()) return std::nullopt;
  const geometry::KeyBlend blend = blendAt(t);
  const auto after = distancesOn(blend.after, t, sensor);
  if (blend.before == blend.after) return after;
  const auto before = distancesOn(blend.before, t, sensor);
  if (!before || !after) return std::nullopt;
  return optics::blended(*before, *after, blend.share);
}

std::optional<double> Subjects::slantAt(double t, Point3 sensor) const {
  const auto wanted = wantedAt(t, geometry::Pose{sensor, 0, 0});
  if (!wanted) return std::nullopt;
  return wanted->slant;
}

std::vector<double> Subjects::drivingDistances(std::size_t k, double t, const geometry::Pose& sensor) const {
  std::vector<double> distances;
  if (const auto* split = std::get_if<plan::OnSplit>(&plan_->focus.keys[k].on)) {
    for (const auto& id : split->who)
      if (const auto place = people_->lookAt(id, t))
        distances.push_back(driving(*plan_, optics::distancesOf(*place, sensor)));
    return distances;
  }
  if (const auto one = distancesOn(k, t, sensor)) distances.push_back(driving(*plan_, *one));
  return distances;
}

}  // namespace wend::answers
