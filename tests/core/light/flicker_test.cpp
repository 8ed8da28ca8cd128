#include "core/light/flicker.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/light/exposure.h"

namespace wend::light {
namespace {

std::vector<double> degreesOf(double rate, double mains) {
  std::vector<double> degrees;
  for (const auto& steady : steadyShutters(rate, mains)) degrees.push_back(steady.degrees);
  return degrees;
}

TEST(SteadyShutters, HoldWholePulses) {
  for (const double rate : {23.976, 24.0, 25.0, 30.0, 48.0})
    for (const double mains : {50.0, 60.0})
      for (const auto& steady : steadyShutters(rate, mains)) {
        EXPECT_NEAR(shutterSeconds(steady.degrees, rate) * 2 * mains, steady.pulses, 1e-12);
        EXPECT_LE(steady.degrees, 360 + 1e-9);
      }
}

TEST(SteadyShutters, AreNoneWhereAFrameIsShorterThanAPulse) {
  EXPECT_TRUE(steadyShutters(200, 50).empty());
  ASSERT_EQ(steadyShutters(100, 50).size(), 1u);
  EXPECT_NEAR(steadyShutters(100, 50)[0].degrees, 360, 1e-9);
}

TEST(NearestSteady, IsTheOneToSet) {
  EXPECT_NEAR(nearestSteady(180, steadyShutters(24, 50)), 172.8, 1e-9);
  EXPECT_NEAR(nearestSteady(130, steadyShutters(24, 50)), 172.8, 1e-9);
  EXPECT_NEAR(nearestSteady(90, steadyShutters(24, 50)), 86.4, 1e-9);
  EXPECT_EQ(nearestSteady(15, {{10, 1}, {20, 2}}), 10);
}

/// Brightest over darkest of many frames, by adding up the light over each.
double rippleBySumming(double shutterDeg, double rate, double mains, double depth) {
  double most = 0, least = 1e9;
  const double open = shutterSeconds(shutterDeg, rate);
  for (int frame = 0; frame < 400; ++frame) {
    double sum = 0;
    const int n = 400;
    for (int i = 0; i < n; ++i)
      sum += 1 + depth * std::cos(2 * std::numbers::pi * 2 * mains * (frame / rate + (i + 0.5) * open / n));
    most = std::max(most, sum);
    least = std::min(least, sum);
  }
  return std::log2(most / least);
}

TEST(RippleStops, AgreeWithAddingUpTheLightOfManyFrames) {
  for (const auto& [shutter, rate, mains] :
       {std::tuple{180.0, 23.98, 50.0}, {180, 24.01, 60}, {90, 25.03, 60}, {45, 23.976, 50}, {172.8, 23.98, 50}})
    EXPECT_NEAR(rippleStops(shutter, rate, mains, 0.8), rippleBySumming(shutter, rate, mains, 0.8), 2e-3)
        << shutter << " at " << rate;
}

TEST(RippleStops, AreNothingWhereTheShutterIsSteadyOrTheRateInStep) {
  for (const double degrees : degreesOf(24, 50)) EXPECT_NEAR(rippleStops(degrees, 24, 50), 0, 1e-12);
  EXPECT_EQ(rippleStops(37, 24, 60), 0);
  EXPECT_GT(rippleStops(180, 24, 50), 0.1);
  EXPECT_GT(rippleStops(37, 24, 50), rippleStops(180, 24, 50));
  EXPECT_LT(rippleStops(180, 24, 50, 0.1), rippleStops(180, 24, 50, 1));
}

TEST(InStep, TellsRatesThatDriftFromThoseThatStand) {
  EXPECT_TRUE(inStep(24, 60));
  EXPECT_TRUE(inStep(25, 50));
  EXPECT_FALSE(inStep(24, 50));
  EXPECT_FALSE(inStep(24000.0 / 1001, 60)) << "an eighth of a cycle a second";
  EXPECT_TRUE(inStep(24000.0 / 1001, 60, 0.01));
}

}  // namespace
}  // namespace wend::light
