/// What may change along a zoom, as one line to type: "80", or "80 at 24, 65 at 70" with focal lengths in mm.
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/plan/over_focal.h"

namespace wend::ui {

/// `scale` shown for one: 100 for shares in percent, 1000 for metres in millimetres.
std::string overFocalText(const plan::OverFocal& over, double scale);

/// The values of a text like that; a number by itself holds for every focal length. Rows may come in any order.
/// Fails     "bad-over-zoom" with the part that cannot be read; a focal length given twice the plan's own rules refuse.
base::Result<plan::OverFocal> overFocalFrom(const std::string& text, double scale);

}  // namespace wend::ui
