/// Where and on which day, as one line to type: what the sun needs to be known.
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/plan/plan.h"

namespace wend::ui {

/// "51.5, -0.12, 2026-06-21, 1": degrees north, degrees east, day, hours ahead of UTC.
std::string siteText(const plan::Site& site);

/// The site of a text like that; the hours may be left out and are 0 then. `before` gives what the line does not say.
/// Fails     "bad-site" with what is missing; whether the numbers lie on Earth the plan's own rules say.
base::Result<plan::Site> siteFrom(const std::string& text, plan::Site before);

}  // namespace wend::ui
