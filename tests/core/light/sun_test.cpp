#include "core/light/sun.h"

#include <gtest/gtest.h>

#include <cmath>

namespace wend::light {
namespace {

TEST(DaysSince2000, FollowTheCalendar) {
  EXPECT_EQ(daysSince2000({2000, 1, 1, 43200}), 0);
  EXPECT_EQ(daysSince2000({2000, 1, 2, 0}), 0.5);
  EXPECT_EQ(daysSince2000({2000, 3, 1, 0}) - daysSince2000({2000, 2, 28, 0}), 2) << "2000 had a leap day";
  EXPECT_EQ(daysSince2000({1900, 3, 1, 0}) - daysSince2000({1900, 2, 28, 0}), 1) << "1900 had none";
  EXPECT_EQ(daysSince2000({2024, 12, 31, 86400}), daysSince2000({2025, 1, 1, 0}));
  EXPECT_EQ(daysSince2000({2025, 1, 1, -3600}), daysSince2000({2024, 12, 31, 82800}));
}

TEST(SunAt, IsHighestInTheSouthAtNoonNorthOfTheTropics) {
  double best = -90, bearing = 0;
  for (int minute = 0; minute < 1440; ++minute) {
    const SunPosition sun = sunAt({2025, 6, 21, minute * 60.0}, {50, 0});
    if (sun.elevation > best) best = sun.elevation, bearing = sun.bearing;
  }
  EXPECT_NEAR(best, 90 - 50 + 23.44, 0.02);
  EXPECT_NEAR(bearing, 180, 0.4);
}

TEST(SunAt, IsTheMirrorImageAcrossTheEquatorAtAnEquinox) {
  // The sun crosses the equator on 20 March 2025 at 09:01; at that moment its declination is nothing.
  const UniversalTime equinox{2025, 3, 20, 9 * 3600 + 60};
  const SunPosition north = sunAt(equinox, {40, 30}), south = sunAt(equinox, {-40, 30});
  EXPECT_NEAR(north.elevation, south.elevation, 0.01);
  EXPECT_NEAR(north.bearing, 180 - (south.bearing > 180 ? south.bearing - 360 : south.bearing), 0.01);
}

TEST(SunAt, TurnsWithTheEarth) {
  // Fifteen degrees further west is an hour later, but for the sun's own way among the stars.
  const SunPosition here = sunAt({2025, 9, 1, 36000}, {45, 10}), west = sunAt({2025, 9, 1, 39600}, {45, -5});
  EXPECT_NEAR(here.elevation, west.elevation, 0.03);
  EXPECT_NEAR(here.bearing, west.bearing, 0.03);
}

TEST(SunAt, StaysUpAllNightBeyondThePolarCircle) {
  for (int hour = 0; hour < 24; ++hour) EXPECT_GT(sunAt({2025, 6, 21, hour * 3600.0}, {70, 20}).elevation, 2);
  for (int hour = 0; hour < 24; ++hour) EXPECT_LT(sunAt({2025, 12, 21, hour * 3600.0}, {70, 20}).elevation, -2);
}

TEST(Lift, IsHalfADegreeAtTheHorizonAndNothingOverhead) {
  EXPECT_NEAR(lift(0), 0.48, 0.01);
  EXPECT_LT(lift(89.9), 1e-4);
  EXPECT_GE(lift(90), 0);
  EXPECT_EQ(lift(-5), 0);
  for (double h = 0; h < 89; h += 1) EXPECT_GE(lift(h), lift(h + 1));
}

}  // namespace
}  // namespace wend::light
