/// A lens chart in words: its range, its tables, what each mark is worth, and which to measure next.
#pragma once

#include <string>

#include "core/optics/lens_scale.h"
#include "core/plan/lens_chart.h"
#include "core/units/length.h"

namespace wend::sheets {

/// "1.37 m", "T4⅓", "35 mm".
std::string scaleValueText(optics::ScaleOf of, double value, units::LengthUnit unit);

std::string chartText(const plan::LensChart& chart, units::LengthUnit unit);

}  // namespace wend::sheets
