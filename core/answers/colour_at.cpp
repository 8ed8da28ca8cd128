#include "core/answers/colour_at.h"

#include "core/answers/set_scene.h"
#include "core/snags/stretch.h"

namespace wend::answers {

namespace {

/// Whether an area lights what stands on it at t.
bool lights(const plan::AreaState* state) {
  return state != nullptr && !state->readings.empty();
}

const plan::AreaState* stateBy(const plan::Plan& plan, const plan::Area& area, double t) {
  const plan::AreaState* now = nullptr;
  for (const auto& state : area.states)
    if (plan::secondsOf(plan, state.time.at) <= t + 1e-9) now = &state;
  return now;
}

}  // namespace

std::optional<double> clockColour(const plan::Plan& plan, const plan::Area& area, double t) {
  if (!plan.clock.timeOfDay) return std::nullopt;
  return light::kelvinByClock(clockReadingsOf(area), *plan.clock.timeOfDay + t);
}

std::optional<ColourAt> colourAt(const plan::Plan& plan, geometry::Point pos, double t) {
  for (std::size_t i = plan.set.areas.size(); i-- > 0;) {
    const plan::Area& area = plan.set.areas[i];
    const bool byClock = !area.byClock.empty();
    const plan::AreaState* state = byClock ? nullptr : stateBy(plan, area, t);
    if ((!byClock && !lights(state)) || !snags::onArea(area, pos)) continue;
    const std::optional<double> kelvin = byClock ? clockColour(plan, area, t) : state->kelvin;
    return kelvin ? std::optional(ColourAt{area.id.text(), *kelvin}) : std::nullopt;
  }
  return std::nullopt;
}

}  // namespace wend::answers
