#include "core/light/pane.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/light/exposure.h"
#include "core/units/stop.h"

namespace wend::light {
namespace {

TEST(PaneReflectance, RisesToAllOfTheLightAtGrazing) {
  for (double a = 0; a < 90; a += 0.25) ASSERT_LE(paneReflectance(a), paneReflectance(a + 0.25) + 1e-12) << a;
  EXPECT_NEAR(paneReflectance(90), 1, 1e-12);
  EXPECT_NEAR(faceReturns(0).across, 0.04, 1e-15);
  EXPECT_NEAR(faceReturns(0).within, 0.04, 1e-15);
}

TEST(FaceReturns, AtThePolarisingAngleKeepOnePolarisationOnly) {
  // tan a = n: the light that vibrates in the plane of incidence passes whole; the other keeps
  // ((n^2 - 1) / (n^2 + 1))^2.
  const double polarising = std::atan(1.5) * 180 / std::numbers::pi;
  EXPECT_NEAR(faceReturns(polarising).within, 0, 1e-15);
  EXPECT_NEAR(faceReturns(polarising).across, std::pow(1.25 / 3.25, 2), 1e-12);
}

TEST(PaneReflectance, CountsAllReturnsBetweenTheTwoFaces) {
  const auto bounced = [](double r) {
    double sum = r, inside = (1 - r) * (1 - r) * r;
    for (int i = 0; i < 300; ++i, inside *= r * r) sum += inside;
    return sum;
  };
  for (const double a : {0.0, 45.0, 70.0, 80.0})
    EXPECT_NEAR(paneReflectance(a), (bounced(faceReturns(a).across) + bounced(faceReturns(a).within)) / 2, 1e-12) << a;
}

TEST(ActsAsMirror, ShopWindowByDayShowsTheStreetAndByNightTheShop) {
  const double shop = 4 * std::exp2(4.0 / 6);  // a third past T5.6, from inside
  EXPECT_EQ(actsAsMirror(0, shop, 11), false);
  EXPECT_EQ(actsAsMirror(0, shop, 2), true);
  EXPECT_EQ(actsAsMirror(0, 11, shop), false);
}

TEST(ActsAsMirror, TurnsAtItsContrast) {
  for (const double a : {0.0, 30.0, 60.0, 75.0, 85.0}) {
    const double edge = units::closedBy(8, -mirrorContrast(a));
    EXPECT_EQ(actsAsMirror(a, 8, edge * 0.999), true) << a;
    EXPECT_EQ(actsAsMirror(a, 8, edge * 1.001), false) << a;
  }
  EXPECT_NEAR(mirrorContrast(0), 2.58, 0.005);
  EXPECT_LT(mirrorContrast(80), 0);
}

TEST(ActsAsMirror, IsUnknownWithoutBothReadings) {
  EXPECT_FALSE(actsAsMirror(0, std::nullopt, 4).has_value());
  EXPECT_FALSE(actsAsMirror(0, 4, std::nullopt).has_value());
}

}  // namespace
}  // namespace wend::light
