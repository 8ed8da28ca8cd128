/// What `wend chart --json` answers: the lens and what each of its tables is worth. Fields are only ever added; the
/// schema stands in tests/golden/schemas.
#pragma once

#include <string>

#include "core/plan/lens_chart.h"

namespace wend::exchange {

std::string chartJson(const plan::LensChart& chart);

}  // namespace wend::exchange
