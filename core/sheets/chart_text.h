/// A lens chart in words: its range, its tables, what each mark is worth, and which to measure next.
#pragma once

#include <string>

#include "core/answers/lens_charts.h"
#include "core/optics/lens_scale.h"
#include "core/plan/lens_chart.h"
#include "core/units/length.h"

namespace wend::sheets {

/// "1.37 m", "T4⅓", "35 mm".
std::string scaleValueText(optics::ScaleOf of, double value, units::LengthUnit unit);

/// What leaving the mark out shows: "+1.2°, 2.02 m", how far off the others are on the ring and what they have at its
/// place.
std::string markMissText(const answers::ChartScale& scale, std::size_t row, units::LengthUnit unit);

/// How far off the marks are between, and which to measure next.
std::string scaleAdvice(const answers::ChartScale& scale, units::LengthUnit unit);

std::string chartText(const plan::LensChart& chart, units::LengthUnit unit);

}  // namespace wend::sheets
