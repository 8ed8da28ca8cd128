/// Small parts of the JSON that verbs print. For sources of this folder only.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>

#include "core/geometry/point.h"

namespace wend::exchange {

using Json = nlohmann::ordered_json;

/// Infinity and what is not known are null.
Json number(double value);
Json number(const std::optional<double>& value);
Json place(geometry::Point p);
Json pair(double a, double b);
Json idOrNull(const std::string& id);

}  // namespace wend::exchange
