/// The colour of the light at a place of the set, as the plan's areas tell it. Plan metres; seconds from the start.
#pragma once

#include <optional>
#include <string>

#include "core/plan/plan.h"

namespace wend::answers {

struct ColourAt {
  std::string area;  ///< id
  double kelvin = 0;
};

/// That of the topmost area there with light in it: of its state by then, or of the clock at that moment of the take
/// (light::kelvinByClock). An area whose state has no readings is dark, and what lies below it counts.
///
/// Ensures   nothing where no area lights the place, where the topmost does not tell its colour, and where an area goes
///           by the clock in a plan without a time of day
std::optional<ColourAt> colourAt(const plan::Plan& plan, geometry::Point pos, double t);

/// That of an area that goes by the clock at that moment of the take; nothing where none is told, or no time of day.
std::optional<double> clockColour(const plan::Plan& plan, const plan::Area& area, double t);

}  // namespace wend::answers
