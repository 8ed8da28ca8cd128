#include "core/exchange/json_values.h"

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

Json spanned(geometry::Span span) {
  return {{"from", span.from}, {"until", span.until}};
}

namespace {

const char* wordOf(snags::HotCure::Change change) {
  switch (change) {
    case snags::HotCure::Change::backOff:
      return "backOff";
    case snags::HotCure::Change::nearerTogether:
      return "nearerTogether";
    case snags::HotCure::Change::widen:
      return "widen";
    case snags::HotCure::Change::stopDown:
      return "stopDown";
    case snags::HotCure::Change::onTape:
      return "onTape";
    case snags::HotCure::Change::standStill:
      return "standStill";
  }
  return "";
}

}  // namespace

Json curesJson(const std::vector<snags::HotCure>& cures) {
  Json json = Json::array();
  for (const auto& cure : cures)
    json.push_back({{"change", wordOf(cure.change)},
                    {"value", number(cure.value)},
                    {"band", cure.band ? pair(cure.band->near, cure.band->far) : Json(nullptr)},
                    {"warmth", number(cure.warmth)},
                    {"enough", cure.enough},
                    {"moreLightStops", number(cure.moreLight)}});
  return json;
}

std::string text(const Json& json) {
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace wend::exchange
