/// Reads and writes a lens chart on its own: what a shelf of charts keeps, one lens a file.
///
/// Chart format, version 1. One JSON object in UTF-8, ending .wendchart: format "wend-chart", version, `notes`, and
/// `lens` with the keys a plan's lens has (plan_reader.h): millimetres for focal lengths, metres from the sensor for
/// distances, T-numbers, degrees of barrel. Only format, version and lens must be there. Files in feet are files in
/// metres: the unit is a matter of who types and reads.
///
/// Ensures   (1) readChart(writeChart(c)) == c; the same chart gives the same bytes
///           (2) marks run one way, in value and in degrees, and the row that turns back is named
///           (3) unknown keys are kept, in order and with their numbers as written, and noted
///           (4) focus marks nearer than closeFocus are noted, each by its row
/// Fails     as readPlan does
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/plan/lens_chart.h"

namespace wend::file {

inline constexpr int kChartVersion = 1;
inline constexpr std::string_view kChartFormat = "wend-chart";

struct ChartRead {
  plan::LensChart chart;
  base::Problems notes;  ///< unknown keys, with "did you mean"; marks nearer than the lens focuses
};

base::Result<ChartRead> readChart(std::string_view json);
std::string writeChart(const plan::LensChart& chart);

}  // namespace wend::file
