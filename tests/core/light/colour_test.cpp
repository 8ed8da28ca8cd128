#include "core/light/colour.h"

#include <gtest/gtest.h>

namespace wend::light {
namespace {

TEST(Mired, GoThereAndBack) {
  EXPECT_DOUBLE_EQ(kelvinOf(mired(3200)), 3200);
  EXPECT_DOUBLE_EQ(mired(3200), 312.5);
}

TEST(MiredShift, IsPositiveTowardsWarm) {
  EXPECT_GT(miredShift(5600, 3200), 0);
  EXPECT_DOUBLE_EQ(miredShift(3200, 5600), -miredShift(5600, 3200));
  EXPECT_EQ(miredShift(4300, 4300), 0);
}

TEST(BlendedKelvin, IsHalfwayInMired) {
  EXPECT_EQ(blendedKelvin(3200, 5600, 0), 3200);
  EXPECT_EQ(blendedKelvin(3200, 5600, 1), 5600);
  EXPECT_DOUBLE_EQ(mired(blendedKelvin(3200, 5600, 0.5)), (mired(3200) + mired(5600)) / 2);
  EXPECT_LT(blendedKelvin(3200, 5600, 0.5), 4400) << "nearer to the warm one than the mean of the kelvins";
}

TEST(ColourJumps, PassOverWhatIsUnknown) {
  const auto jumps = colourJumps({std::nullopt, 3200.0, 3200.0, std::nullopt, 5600.0, 5500.0, std::nullopt}, 10);
  ASSERT_EQ(jumps.size(), 1u);
  EXPECT_EQ(jumps[0].before, 2u);
  EXPECT_EQ(jumps[0].after, 4u);
  EXPECT_DOUBLE_EQ(jumps[0].mired, miredShift(3200, 5600));
  EXPECT_TRUE(colourJumps({3200.0, std::nullopt, 3200.0}, 0).empty());
  EXPECT_TRUE(colourJumps({}, 0).empty());
}

TEST(ColourJumps, AddUpToTheShiftFromFirstToLast) {
  const std::vector<std::optional<double>> way{2700.0, 4000.0, std::nullopt, 3000.0, 6500.0};
  double sum = 0;
  for (const auto& jump : colourJumps(way, 0)) sum += jump.mired;
  EXPECT_NEAR(sum, miredShift(2700, 6500), 1e-9);
}

}  // namespace
}  // namespace wend::light
