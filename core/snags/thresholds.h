/// The one table of thresholds: what each rule holds against the take, for how long, and where the number comes from.
#pragma once

#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/snags/snag.h"

namespace wend::snags {

struct Threshold {
  std::string name;  ///< "pan", what a plan's "thresholds" names
  double value = 0;
  std::string unit;
  double hold = 0;  ///< seconds it must last to count
  Severity severity = Severity::note;
  std::string source;  ///< a citation, or "common practice, no source"
};

/// The table as it stands, one row a threshold.
const std::vector<Threshold>& thresholdTable();

/// The row of that name with the plan's factor on its value. Requires the name to be in the table.
Threshold threshold(const plan::Plan& plan, const std::string& name);

}  // namespace wend::snags
