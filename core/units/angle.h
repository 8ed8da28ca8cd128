/// Angles as people type and read them: decimal degrees.
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"

namespace wend::units {

/// A typed angle in degrees: "12.5", "12,5°", "-90 deg".
///
/// Ensures   (1) point and comma are both the decimal mark; (2) nothing is wrapped: 450 stays 450
/// Fails     bad-angle for anything else; out-of-range beyond 100 full turns
base::Result<double> angleFrom(std::string_view text);

}  // namespace wend::units
