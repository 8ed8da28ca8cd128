/// Small parts of the JSON that verbs print. For sources of this folder only.
#pragma once

#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "core/geometry/point.h"
#include "core/geometry/spans.h"

namespace wend::exchange {

using Json = nlohmann::ordered_json;

/// Infinity and what is not known are null.
inline Json number(double value) {
  return std::isfinite(value) ? Json(value) : Json(nullptr);
}
inline Json number(const std::optional<double>& value) {
  return value ? number(*value) : Json(nullptr);
}
inline Json place(geometry::Point p) {
  return Json::array({p.x, p.y});
}
inline Json pair(double a, double b) {
  return Json::array({number(a), number(b)});
}
inline Json idOrNull(const std::string& id) {
  return id.empty() ? Json(nullptr) : Json(id);
}

}  // namespace wend::exchange
