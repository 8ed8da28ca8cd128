#include "core/answers/lens_charts.h"

#include <gtest/gtest.h>

#include <cmath>

namespace wend::answers {
namespace {

plan::Lens zoom() {
  plan::Lens lens;
  lens.focal = {24, 70};
  lens.stop = {2.8, 22};
  lens.closeFocus = 0.75;
  lens.focusMarks = {{std::nullopt, 0}, {3, 100}, {0.75, 300}};
  lens.irisMarks = {{2.8, 0, {}}, {22, 84, {}}};
  lens.zoomMarks = {{24, 0, {}}};
  return lens;
}

TEST(LensCharts, AreTheTablesThatHaveTwoMarks) {
  const auto scales = chartScales(zoom());
  ASSERT_EQ(scales.size(), 2u);
  EXPECT_EQ(scales[0].of, optics::ScaleOf::distance);
  EXPECT_TRUE(std::isinf(scales[0].marks[0].value));
  EXPECT_EQ(scales[1].of, optics::ScaleOf::stop);
  EXPECT_EQ(chartScales({}).size(), 0u);
}

TEST(LensCharts, MissOfTheMiddleOfThreeIsThatOfAStraightLine) {
  // Two marks left: straight in 1/distance from 0 at infinity to 300 degrees at 1/0.75; at 1/3 that is 75, not 100.
  const auto scales = chartScales(zoom());
  ASSERT_TRUE(scales[0].trust.rows[1]);
  EXPECT_NEAR(scales[0].trust.rows[1]->degrees, -25, 1e-9);
  EXPECT_NEAR(scales[0].trust.rows[1]->value, 300.0 / 100 * 0.75 - 3, 1e-9);
}

TEST(LensCharts, WantTheLensOwnReachMarked) {
  plan::Lens lens = zoom();
  lens.irisMarks.back().stop = 16;
  EXPECT_EQ(chartScales(lens)[1].trust.markNext, 22);
  lens.focusMarks.erase(lens.focusMarks.begin());
  EXPECT_TRUE(std::isinf(chartScales(lens)[0].trust.markNext));
}

}  // namespace
}  // namespace wend::answers
