/// Values as every verb's JSON writes them: what is unbounded or not known is null.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "core/geometry/point.h"
#include "core/snags/cures.h"

namespace wend::exchange {

using Json = nlohmann::ordered_json;

Json number(double value);
Json number(const std::optional<double>& value);
Json place(geometry::Point p);
Json pair(double a, double b);
Json idOrNull(const std::string& id);
/// An object of `from` and `until`, for more to be put in.
Json spanned(geometry::Span span);

/// A list of what would cool a hot focus: core/snags/cures.h.
Json curesJson(const std::vector<snags::HotCure>& cures);

std::string text(const Json& json);

}  // namespace wend::exchange
