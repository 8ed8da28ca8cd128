// When glass has turned into a mirror, and whom it shows.
#include <algorithm>
#include <tuple>

#include "core/answers/hiders.h"
#include "core/answers/panes.h"
#include "core/answers/span_log.h"
#include "core/answers/watched.h"
#include "core/answers/whole_take.h"
#include "core/light/exposure.h"
#include "core/sight/body.h"
#include "core/units/stop.h"

namespace wend::answers {

using snags::PaneMirror;

namespace {

using PaneLog = SpanLog<std::pair<std::string, std::string>, PaneMirror>;  ///< pane, who

void note(PaneLog& log, double t, const TurnedGlass& glass, const std::string& who) {
  const light::PaneLight& light = glass.light;
  PaneMirror now{{},
                 glass.pane,
                 who,
                 *light.returned,
                 units::stopsBetween(*light.farStop, *light.nearStop),
                 light.incidence,
                 lerp(glass.face.face.a, glass.face.face.b, 0.5)};
  PaneMirror& entry = log.add(t, {glass.pane, who}, now);
  if (now.returned <= entry.returned) return;
  now.span = entry.span;
  entry = now;
}

void noteWho(const Take& take, double t, const sight::Eye& eye, const std::vector<TurnedGlass>& glass,
             const std::vector<Watched>& bodies, PaneLog& log) {
  sight::SceneAt now = take.scene().at(t);
  addMirrors(glass, take, now);
  const int first = static_cast<int>(take.plan().set.pieces.size());
  for (const Watched& watched : bodies) {
    const auto body = watched.body(t);
    if (!body) continue;
    const auto sight = sight::bodySight(now, eye, *body);
    if (sight.mirror.value_or(-1) >= first)
      note(log, t, glass[static_cast<std::size_t>(*sight.mirror - first)], watched.id);
  }
}

std::optional<std::vector<PaneMirror>> showing(const Take& take, const std::vector<Watched>& bodies,
                                               const base::Cancel& cancel, ByInstant<GlassAt>& instants) {
  PaneLog log(kGlassStep);
  const int steps = static_cast<int>(take.length() / kGlassStep);
  for (int i = 0; i <= steps; ++i) {
    if (cancel.fired()) return std::nullopt;
    const double t = i * kGlassStep;
    const auto eye = take.eyeAt(t, take.plan().sightRules.margin);
    if (!eye) continue;
    const GlassAt* before = instants.known(t);
    const auto& glass =
        instants.keep(before != nullptr ? *before : GlassAt{t, turnedGlass(take, take.scene().at(t), *eye, t)}).glass;
    for (const TurnedGlass& part : glass)
      if (part.inFrame) note(log, t, part, "");
    if (!glass.empty()) noteWho(take, t, *eye, glass, bodies, log);
  }
  return log.inOrder();
}

}  // namespace

std::optional<std::vector<PaneMirror>> paneMirrors(const Take& take, const base::Cancel& cancel,
                                                   ByInstant<GlassAt>* known) {
  ByInstant<GlassAt> nothing;
  return showing(take, watchedOf(take), cancel, known != nullptr ? *known : nothing);
}

std::vector<PaneMirror> panesShowing(const Take& take, Point pos, double height, double radius) {
  constexpr const char* kSpot = "spot";
  Watched watched = standingAt(take, pos, height, radius);
  watched.id = kSpot;
  ByInstant<GlassAt> nothing;
  std::vector<PaneMirror> panes = *showing(take, {watched}, {}, nothing);
  std::erase_if(panes, [](const PaneMirror& pane) { return pane.who != kSpot; });
  return panes;
}

}  // namespace wend::answers
