#include "core/exchange/chart_json.h"

#include <nlohmann/json.hpp>

#include "core/answers/lens_charts.h"
#include "core/exchange/json_values.h"

namespace wend::exchange {

namespace {

const char* wordOf(optics::ScaleOf of) {
  return of == optics::ScaleOf::distance ? "focus" : of == optics::ScaleOf::stop ? "iris" : "zoom";
}

Json scaleOf(const answers::ChartScale& scale) {
  Json rows = Json::array();
  for (std::size_t i = 0; i < scale.marks.size(); ++i) {
    const auto& miss = scale.trust.rows[i];
    rows.push_back({{"value", number(scale.marks[i].value)},
                    {"barrel", scale.marks[i].degrees},
                    {"missDegrees", miss ? number(miss->degrees) : Json(nullptr)},
                    {"missValue", miss ? number(miss->value) : Json(nullptr)}});
  }
  return {{"axis", wordOf(scale.of)},
          {"marks", std::move(rows)},
          {"worstDegrees", scale.trust.worstDegrees},
          {"markNext", number(scale.trust.markNext)}};
}

}  // namespace

std::string chartJson(const plan::LensChart& chart) {
  const plan::Lens& lens = chart.lens;
  Json scales = Json::array();
  for (const answers::ChartScale& scale : answers::chartScales(lens)) scales.push_back(scaleOf(scale));
  const Json json{{"name", lens.name},
                  {"notes", chart.notes},
                  {"focal", {lens.focal[0], lens.focal[1]}},
                  {"stop", {lens.stop[0], lens.stop[1]}},
                  {"closeFocus", lens.closeFocus},
                  {"scales", std::move(scales)}};
  return text(json);
}

}  // namespace wend::exchange
