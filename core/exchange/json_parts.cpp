#include "core/exchange/json_parts.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace wend::exchange {

Json number(double value) {
  return std::isfinite(value) ? Json(value) : Json(nullptr);
}

Json number(const std::optional<double>& value) {
  return value ? number(*value) : Json(nullptr);
}

Json place(geometry::Point p) {
  return Json::array({p.x, p.y});
}

Json pair(double a, double b) {
  return Json::array({number(a), number(b)});
}

Json idOrNull(const std::string& id) {
  return id.empty() ? Json(nullptr) : Json(id);
}

}  // namespace wend::exchange
