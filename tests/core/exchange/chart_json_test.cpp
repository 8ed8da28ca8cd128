#include "core/exchange/chart_json.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

namespace wend::exchange {
namespace {

TEST(ChartJson, HoldsEachTableWithItsMisses) {
  plan::LensChart chart;
  chart.lens.name = "prime";
  chart.lens.stop = {2, 22};
  chart.lens.closeFocus = 0.75;
  chart.lens.focusMarks = {{std::nullopt, 0}, {3, 100}, {0.75, 300}};
  chart.notes = "spring";
  const auto json = nlohmann::json::parse(chartJson(chart));
  EXPECT_EQ(json["notes"], "spring");
  EXPECT_EQ(json["closeFocus"], 0.75);
  ASSERT_EQ(json["scales"].size(), 1u);
  const auto& focus = json["scales"][0];
  EXPECT_EQ(focus["axis"], "focus");
  EXPECT_TRUE(focus["marks"][0]["value"].is_null()) << "infinity";
  EXPECT_TRUE(focus["marks"][0]["missDegrees"].is_null()) << "an end is not left out";
  EXPECT_NEAR(focus["marks"][1]["missDegrees"].get<double>(), -25, 1e-9);
  EXPECT_NEAR(focus["marks"][1]["missValue"].get<double>(), -0.75, 1e-9);
  EXPECT_NEAR(focus["worstDegrees"].get<double>(), 25, 1e-9);
  EXPECT_NEAR(focus["markNext"].get<double>(), 1.2, 1e-9);
}

}  // namespace
}  // namespace wend::exchange
