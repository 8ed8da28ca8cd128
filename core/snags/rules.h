/// The rules, each in a file of its own: plain results in, findings out. To add one: write rule_<name>.cpp with its
/// function, declare it below, give it a line in the registry (rules.cpp) and a test.
#pragma once

#include <string>
#include <vector>

#include "core/snags/evidence.h"
#include "core/snags/snag.h"
#include "core/snags/thresholds.h"

namespace wend::snags {

using Findings = std::vector<Finding>;

struct Rule {
  std::string name;  ///< first part of every key
  Findings (*find)(const Evidence&);
};

/// Every rule, in the order snags of one instant are listed.
const std::vector<Rule>& rules();

/// What every rule finds, with keys, beats and acceptance, ordered by `from`, severity, rule.
/// Ensures   (1) keys are unique and hold no coordinate  (2) the same plan gives the same list
Snags snagsOf(const Evidence& evidence);

}  // namespace wend::snags
