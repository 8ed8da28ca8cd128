#include "core/sheets/plan_sun.h"

#include <algorithm>

#include "core/answers/light_blockers.h"
#include "core/answers/sun.h"
#include "core/base/text.h"

namespace wend::sheets {

using namespace geometry;
using answers::Answers;
using answers::Instant;

namespace {

constexpr double kReach = 40;  // metres of a low sun's shadow that are drawn

double topOf(const light::Blocker& body) {
  if (const auto* upright = std::get_if<light::UprightBody>(&body)) return upright->top;
  const auto& rod = std::get<light::Rod>(body);
  return std::max(rod.from.z, rod.until.z);
}

Point middleOf(const light::Blocker& body) {
  if (const auto* upright = std::get_if<light::UprightBody>(&body)) return upright->centre;
  const auto& rod = std::get<light::Rod>(body);
  return lerp(flat(rod.from), flat(rod.until), 0.5);
}

void addRing(const Ring& ring, const PlanView& view, Drawing& drawing) {
  if (ring.size() < 3) return;
  Path path;
  path.rings.emplace_back();
  for (const Point p : ring) path.rings[0].push_back(view.toPicture(p));
  path.closed = true;
  path.fill = {Tone::ink, Pattern::plain, 0.18};
  drawing.add(path);
}

void addLength(const answers::Take& take, const snags::PerformerAt& at, const snags::SunAt& sun, const PlanView& view,
               Writing& writing) {
  const double metres = light::shadowLength(at.top - take.people().floorAt(at.pos), sun.elevation);
  if (metres > kReach) return;
  const Point end = view.toPicture(at.pos - direction(sun.bearing) * metres);
  writing.labels.push_back({.text = Text{.at = {end.x, end.y + 4},
                                         .text = base::fixed(metres, 2) + " m",
                                         .size = 12,
                                         .align = Align::centre,
                                         .tone = Tone::ink2,
                                         .halo = Tone::page},
                            .rank = LabelRank::detail,
                            .anchor = LabelAnchor{.at = end, .clear = 2}});
}

}  // namespace

Layer sunLayer(const Answers& answers, const Instant& instant, const PlanView& view) {
  Layer layer{view.sheet(), {}};
  const answers::Take& take = *answers.take;
  const auto towards = answers::towardsSun(take.plan(), instant.time);
  if (!towards) return layer;
  const sight::SceneAt now = take.scene().at(instant.time);
  auto blockers = answers.evidence ? answers::gearInLight(instant, answers.evidence->boom, answers.evidence->step / 2)
                                   : answers::gearInLight(instant, {});
  answers::addPerformers(take, instant, blockers);
  const auto reached = [&](Point pos, double top) { return answers::sunReaches(take, now, *towards, at(pos, top)); };
  for (const auto& body : blockers.bodies) {
    const Point pos = middleOf(body);
    if (reached(pos, topOf(body)))
      addRing(light::shadowOnFloor(*towards, body, take.people().floorAt(pos), kReach), view, layer.drawing);
  }
  const auto sun = answers::sunOf(take.plan(), instant.time);
  for (const auto& performer : instant.performers)
    if (performer.present && reached(performer.pos, performer.top))
      addLength(take, performer, *sun, view, layer.writing);
  return layer;
}

}  // namespace wend::sheets
