/// The sun, flicker and colour against worked examples and tables printed elsewhere.
#include "core/light/sun.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/light/colour.h"
#include "core/light/flicker.h"
#include "core/light/shadow.h"

namespace wend::light {
namespace {

// Jean Meeus, "Astronomical Algorithms", example 25.a: 13 October 1992 at 0h dynamical time (59 s after universal):
// right ascension 198.38083, declination -7.78507.
TEST(PublishedSun, AmongTheStars) {
  const SunInSky sun = sunInSky(daysSince2000({1992, 10, 13, 0}));
  EXPECT_NEAR(sun.rightAscension, 198.38083, 1e-4);
  EXPECT_NEAR(sun.declination, -7.78507, 1e-4);
}

// Jean Meeus, the same, chapter 7: 4.81 October 1957 is the Julian day 2436116.31; that of 2000 January 1.5 is 2451545.
TEST(PublishedJulianDays, CountFromNoon) {
  EXPECT_NEAR(daysSince2000({1957, 10, 4, 0.81 * 86400}), 2436116.31 - 2451545, 1e-6);
}

// I. Reda and A. Andreas, "Solar Position Algorithm for Solar Radiation Applications", NREL/TP-560-34302, table A5.1:
// 17 October 2003, 12:30:30 at UTC - 7, latitude 39.742476, longitude -105.1786, 820 mbar, 11 degrees Celsius: azimuth
// 194.34024, elevation without the air 39.872046, air 0.016332.
TEST(PublishedSun, OverAPlaceOnTheGround) {
  const SunPosition sun = sunAt({2003, 10, 17, (12 + 7) * 3600 + 30 * 60 + 30}, {39.742476, -105.1786});
  EXPECT_NEAR(sun.bearing, 194.34024, 0.01);
  EXPECT_NEAR(sun.elevation, 39.872046, 0.01);
  EXPECT_NEAR(lift(39.872046, 820, 11), 0.016332, 1e-5);
}

// A table of the trade, from memory: a person of 1.75 m throws a shadow of 2.24 m at 38 degrees and of 6.5 m at 15.
TEST(CommonShadows, OfAPerson) {
  EXPECT_NEAR(shadowLength(1.75, 38), 2.24, 0.005);
  EXPECT_NEAR(shadowLength(1.75, 15), 6.5, 0.05);
}

// Blain Brown, "Cinematography: Theory and Practice", table 10.6 (yumpu.com/en/document/view/41783602): at 24 frames
// 1/50 s is 172.8 degrees and 1/60 s is 144; both hold two pulses of their mains.
TEST(PublishedShutters, ThatHoldTwoPulses) {
  EXPECT_NEAR(steadyShutters(24, 50).at(1).degrees, 172.8, 1e-9);
  EXPECT_NEAR(steadyShutters(24, 60).at(1).degrees, 144, 1e-9);
}

// tumgag.com/tag/setlights, "Flicker free equation": 25 frames under 120 pulses a second: "75, 150, 225, and 300".
TEST(PublishedShutters, OfTwentyFiveFramesUnderSixtyHertz) {
  const auto steady = steadyShutters(25, 60);
  ASSERT_EQ(steady.size(), 4u);
  for (int n = 1; n <= 4; ++n) EXPECT_NEAR(steady[std::size_t(n - 1)].degrees, 75.0 * n, 1e-9);
}

// cinematography.com, topic 13437: rates that are steady at 60 Hz whatever the shutter: "1, 2, 3, 4, 5, 6, 8, 10, 12,
// 15, 20, 24, 30, 40, 60".
TEST(PublishedRates, ThatAreInStepWithSixtyHertz) {
  const std::vector<double> printed{1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 24, 30, 40, 60};
  std::vector<double> found;
  for (int rate = 1; rate <= 60; ++rate)
    if (inStep(rate, 60)) found.push_back(rate);
  EXPECT_EQ(found, printed);
}

// handwiki.org/wiki/Mired: 25000 K is 40, 5000 K is 200, and 3200 K to 5700 K is a shift of about -137.
// de.zxc.wiki/de/Mired: 6500 K to 3200 K is +159, 4000 to 3000 K is 83, 7000 to 6000 K is 24.
TEST(PublishedMireds, OfLightsAndFilters) {
  EXPECT_DOUBLE_EQ(mired(25000), 40);
  EXPECT_DOUBLE_EQ(mired(5000), 200);
  EXPECT_NEAR(miredShift(3200, 5700), -137, 0.5);
  EXPECT_NEAR(miredShift(6500, 3200), 159, 0.5);
  EXPECT_NEAR(miredShift(4000, 3000), 83, 0.5);
  EXPECT_NEAR(miredShift(7000, 6000), 24, 0.5);
}

}  // namespace
}  // namespace wend::light
