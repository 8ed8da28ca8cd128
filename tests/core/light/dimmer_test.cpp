#include "core/light/dimmer.h"

#include <gtest/gtest.h>

#include <cmath>

namespace wend::light {
namespace {

TEST(ShareInstead, LeavesSoMuchOfTheWholeAsTheIrisWould) {
  for (const double lamp : {60.0, 80.0, 100.0})
    for (const double stops : {-1.0, -0.3, 0.0, 0.3, 1.0}) {
      const auto share = shareInstead(100, lamp, stops);
      ASSERT_TRUE(share) << lamp << " " << stops;
      EXPECT_NEAR(100 - lamp + *share * lamp, 100 * std::exp2(-stops), 1e-9) << lamp << " " << stops;
    }
}

TEST(ShareInstead, OfAllTheLightIsThatOfTheStops) {
  EXPECT_NEAR(*shareInstead(250, 250, 1), 0.5, 1e-12);
  EXPECT_NEAR(*shareInstead(250, 250, 2), 0.25, 1e-12);
  EXPECT_NEAR(*shareInstead(250, 250, -1), 2, 1e-12) << "brighter than it is";
}

TEST(ShareInstead, IsNothingForALampThatGivesTooLittle) {
  EXPECT_FALSE(shareInstead(100, 49, 1)) << "half of the light has to go";
  EXPECT_NEAR(*shareInstead(100, 50, 1), 0, 1e-12) << "switched off";
  EXPECT_FALSE(shareInstead(100, 0, 1));
}

TEST(ShareInstead, CountsNoLampForMoreThanThereIs) {
  EXPECT_EQ(shareInstead(100, 140, 1), shareInstead(100, 100, 1));
}

TEST(SharesInstead, AreUnknownWithTheExposure) {
  FaceLight light;
  light.fixtureLux = {10, 20};
  EXPECT_EQ(sharesInstead(light, 0.5), (std::vector<std::optional<double>>(2)));
  light.needed = 4;
  light.lux = 30;
  const auto shares = sharesInstead(light, 0.5);
  ASSERT_TRUE(shares[0] && shares[1]);
  EXPECT_NEAR(30 - 20 + *shares[1] * 20, 30 * std::exp2(-0.5), 1e-9);
}

}  // namespace
}  // namespace wend::light
