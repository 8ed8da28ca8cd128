#include "core/sheets/chart_text.h"

#include <gtest/gtest.h>

namespace wend::sheets {
namespace {

plan::LensChart prime() {
  plan::LensChart chart;
  chart.lens.name = "prime of the house";
  chart.lens.focal = {35, 35};
  chart.lens.stop = {2, 22};
  chart.lens.closeFocus = 0.75;
  chart.lens.focusMarks = {{std::nullopt, 0}, {3, 100, "B"}, {0.75, 300}};
  return chart;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

TEST(ChartText, SaysWhatEachMarkIsWorthAndWhichToMarkNext) {
  const std::string text = chartText(prime(), units::LengthUnit::metres);
  EXPECT_TRUE(holds(text, "35 mm, T2 to T22, closest focus 0.75 m")) << text;
  // The straight line of the other two marks passes 25 degrees below the middle one and shows 2.25 m at its place.
  EXPECT_TRUE(holds(text, "-25.0°, 2.25 m")) << text;
  EXPECT_TRUE(holds(text, "between marks off by at most about 25.0°; mark next: 1.20 m")) << text;
  EXPECT_TRUE(holds(text, "B")) << text;
}

TEST(ChartText, SpeaksFeetAndInches) {
  const std::string text = chartText(prime(), units::LengthUnit::feet);
  EXPECT_TRUE(holds(text, "closest focus 2'-5½\"")) << text;
  EXPECT_FALSE(holds(text, " m;")) << text;
}

TEST(ChartText, SaysWhatCountsWhereThereAreNoMarks) {
  plan::LensChart chart = prime();
  chart.lens.focusMarks.clear();
  chart.notes = "never measured";
  const std::string text = chartText(chart, units::LengthUnit::metres);
  EXPECT_TRUE(holds(text, "no focus marks")) << text;
  EXPECT_TRUE(holds(text, "never measured\n")) << text;
  chart.lens.focusMarks = {{std::nullopt, 0}, {0.75, 300}};
  EXPECT_TRUE(holds(chartText(chart, units::LengthUnit::metres), "too few marks to tell"));
}

}  // namespace
}  // namespace wend::sheets
