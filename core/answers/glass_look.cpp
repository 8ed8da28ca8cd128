#include "core/answers/glass_look.h"

#include <algorithm>

#include "core/sight/body.h"

namespace wend::answers {

using geometry::Point;
using geometry::Vec;

GlassLook::GlassLook(const Take& take, const std::vector<TurnedGlass>& glass, const sight::Eye& eye, double t)
    : eye_(eye), foot_(geometry::flat(eye.pupil.at)), ofSet_(static_cast<int>(take.plan().set.pieces.size())) {
  const sight::SceneAt now = take.scene().at(t);
  for (const TurnedGlass& turned : glass) {
    const sight::Mirror& mirror = turned.face;
    Part part{now, mirror.face, geometry::unit(mirror.face.b - mirror.face.a), {}, {}, 0, {}, parts_.size()};
    if (!parts_.empty() && glass[parts_.size() - 1].pane == turned.pane) part.firstOfPane = parts_.back().firstOfPane;
    addMirrors({turned}, take, part.now);
    part.toA = geometry::unit(mirror.face.a - foot_);
    part.toB = geometry::unit(mirror.face.b - foot_);
    part.nearest = geometry::distance(foot_, mirror.face);
    const double furthest =
        std::max(geometry::distance(foot_, mirror.face.a), geometry::distance(foot_, mirror.face.b));
    part.slopes = sight::slopesOf(eye.pupil.at.z, {part.nearest, furthest, mirror.bottom, mirror.top});
    parts_.push_back(std::move(part));
  }
}

double GlassLook::depth(const Part& part, const sight::Body& body) const {
  const double radius = body.radius;
  if (geometry::cross(part.along, body.centre - part.face.a) <= -radius) return -1;
  // The reflected body against the two rays past the ends of the face: a lies to the right of b.
  const Vec way = geometry::reflected(body.centre, part.face) - foot_;
  const double aside = std::min(geometry::cross(part.toA, way), geometry::cross(way, part.toB)) + radius;
  if (aside < 0 || geometry::dot(part.toA + part.toB, way) < -2 * radius) return -1;
  const double away = geometry::length(way);
  const sight::Upright box{std::max(part.nearest, away - radius), away + radius, body.floor, body.top};
  const sight::Slopes both = sight::meet(part.slopes, sight::slopesOf(eye_.pupil.at.z, box));
  return both.empty() ? -1 : std::min(aside, (both.high - both.low) * away);
}

std::optional<GlassLook::Answer> GlassLook::ask(std::size_t part, const sight::Body& body) const {
  const sight::BodySight sight = sight::bodySight(parts_[part].now, eye_, body);
  if (!sight.seen) return std::nullopt;
  return sight.mirror.value_or(-1) < ofSet_ ? Answer{} : Answer{part};
}

std::optional<GlassLook::Answer> GlassLook::firstOf(std::size_t parts, const sight::Body& body) const {
  for (std::size_t i = 0; i < parts; ++i)
    if (depth(parts_[i], body) >= 0)
      if (const auto answer = ask(i, body)) return answer;
  return std::nullopt;
}

std::optional<std::size_t> GlassLook::showing(const sight::Body& body) const {
  std::size_t likeliest = parts_.size();
  double deepest = 0;
  for (std::size_t i = 0; i < parts_.size(); ++i)
    if (const double deep = depth(parts_[i], body); deep >= deepest) likeliest = i, deepest = deep;
  if (likeliest == parts_.size()) return std::nullopt;
  if (const auto answer = ask(likeliest, body)) {
    const auto before = firstOf(parts_[likeliest].firstOfPane, body);
    return (before ? *before : *answer).part;
  }
  const auto answer = firstOf(parts_.size(), body);
  return answer ? answer->part : std::nullopt;
}

}  // namespace wend::answers
