/// The light computations against figures printed elsewhere. Where a print is rounded or nominal the tolerance says so.
#include <gtest/gtest.h>

#include <cmath>

#include "core/light/exposure.h"
#include "core/light/fixture.h"
#include "core/light/pane.h"
#include "core/units/stop.h"

namespace wend::light {
namespace {

const Blocked kOpen = [](Point3, Point3) { return false; };

/// A bare point source, the same in every direction.
Fixture source(Point3 at, double candela) {
  return {{at, 0, -90}, [candela](double, double) { return candela; }, {}, {}};
}

double luxOnFloor(const Fixture& lamp, double x, double y) {
  return luxAtFace(lamp, {{x, y, 0}, {0, 0, 1}}, 0, Receptor::flat, kOpen);
}

/// A flat receptor at ISO 100, the shutter open for all of every frame: a T-number at a second and EV 2 log2 T.
Exposure meter(double rate = 1) {
  return {.index = 100, .shutterDeg = 360, .rate = rate, .constant = 250};
}

/// A footcandle is a lumen per square foot; sizes.com/units/footcandle.htm: "10.76391 lux".
constexpr double kFootcandle = 1 / (0.3048 * 0.3048);

// Encyclopedia table "Exposure value", EV as a measure of illuminance, ISO 100, C 250, as copied at
// e-com-net.com/article/1275207877182636032.htm; the formula at
// liquisearch.com/exposure_value/ev_as_a_measure_of_luminance_and_illuminance.
TEST(PublishedExposureValues, StandForTheirIlluminance) {
  struct Row {
    double ev, lux, footcandles;
  };
  for (const Row& row : {Row{-1, 1.25, 0.116}, Row{3, 20, 1.86}, Row{5, 80, 7.43}, Row{7, 320, 29.7}, Row{8, 640, 59.5},
                         Row{10, 2560, 238}, Row{14, 40960, 3805}}) {
    const double lux = luxOfReading(std::exp2(row.ev / 2), meter());
    EXPECT_NEAR(lux / row.lux, 1, 1e-9) << row.ev;
    EXPECT_NEAR(units::stopsOf(stopFor(row.lux, meter())), row.ev, 1e-9);
    // Printed to three digits.
    EXPECT_NEAR(lux / kFootcandle / row.footcandles, 1, 0.005) << row.ev;
  }
}

// theinfolist.com "Exposure value": f/16 at 1/125 s is EV 15 (marks are nominal, hence 0.05);
// wiki-gateway.eudic.net "Exposure value": f/1.0 at 1 s is EV 0; the grid's corners rebelxt.blogspot.com, 2005, EV
// table.
TEST(PublishedExposureValues, OfSettings) {
  const auto exposureValue = [](double stop, double rate) {
    return std::log2(luxOfReading(stop, meter(rate)) / luxOfReading(1, meter()));
  };
  EXPECT_NEAR(exposureValue(16, 125), 15, 0.05);
  EXPECT_EQ(exposureValue(1, 1), 0);
  EXPECT_NEAR(exposureValue(1.4, 1), 1, 0.1);
  EXPECT_NEAR(exposureValue(32, 1000), 20, 0.1);
}

// neiloseman.com/tag/exposure: a face at f/16, 1/100 s, ISO 100 takes 6,400 footcandles by the rule
// fc = 25 f^2 / (ISO t), which is C = 25 x 10.7639 in lux.
TEST(PublishedFootcandle, OfTheTwentyFiveRule) {
  EXPECT_NEAR(kFootcandle, 10.76391, 5e-6);
  Exposure rule{.index = 100, .shutterDeg = 360, .rate = 100, .constant = 25 * kFootcandle};
  EXPECT_NEAR(luxOfReading(16, rule) / kFootcandle, 6400, 1e-9);
}

// A saying of the trade, from memory: 100 footcandles, ISO 100, f/2.8 at 24 frames and 180 degrees. It agrees with both
// receptors within a quarter of a stop, not exactly.
TEST(CommonSaying, AHundredFootcandlesForAHundredAtTwoEight) {
  for (const double constant : {250.0, 330.0}) {
    const Exposure exposure{.index = 100, .constant = constant};
    EXPECT_NEAR(offsetStops(stopFor(100 * kFootcandle, exposure), 2.8), 0, 0.25) << constant;
  }
}

// liquisearch.com/shutter_speed/cinematographic_shutter_formula: 24 frames, 180 degrees: "1/48 second".
// Blain Brown, "Cinematography: Theory and Practice", table 10.6 (yumpu.com/en/document/view/41783602): degrees at 24
// frames for six shutter times. cinematography.com topic 24017: six frames a second at 180, 90 and 45 degrees.
TEST(PublishedShutterTimes, FromTheAngle) {
  EXPECT_NEAR(shutterSeconds(180, 24), 1.0 / 48, 1e-15);
  for (const auto& [degrees, part] : {std::pair{270.0, 32.0}, {180, 48}, {172.8, 50}, {144, 60}, {90, 96}, {72, 120}})
    EXPECT_NEAR(shutterSeconds(degrees, 24), 1 / part, 1e-12) << degrees;
  for (const auto& [degrees, part] : {std::pair{180.0, 12.0}, {90, 24}, {45, 48}})
    EXPECT_NEAR(shutterSeconds(degrees, 6), 1 / part, 1e-12) << degrees;
}

// largeformatphotography.info thread 8513: the exact series of thirds, printed to two decimals.
TEST(PublishedStops, ThirdsFromOneToThirtyTwo) {
  const double printed[] = {1.00,  1.12,  1.26,  1.41,  1.59,  1.78,  2.00,  2.24,  2.52, 2.83,  3.17,
                            3.56,  4.00,  4.49,  5.04,  5.66,  6.35,  7.13,  8.00,  8.98, 10.08, 11.31,
                            12.70, 14.25, 16.00, 17.96, 20.16, 22.63, 25.40, 28.51, 32.00};
  for (int k = 0; k <= 30; ++k) EXPECT_NEAR(units::closedBy(1, k / 3.0), printed[k], 0.0075) << k;
}

// US Army correspondence course SS0511, armycommunications.tpub.com/SS0511/SS05110095.htm: f/5.6 passes one-sixteenth
// of the light of f/1.4.
TEST(PublishedStops, LightAtFiveSixIsASixteenthOfThatAtOneFour) {
  EXPECT_NEAR(std::exp2(-units::stopsBetween(units::closedBy(1, 1), units::closedBy(1, 5))), 1.0 / 16, 1e-12);
}

// A source 10 m up: on the floor the light is a tenth of that below it at "19.08 m" (the worked example numbered 49.2
// of the collection that poses the four lamps below).
TEST(PublishedIlluminances, FallToATenthAsideOfALamp) {
  const Fixture lamp = source({0, 0, 10}, 1000);
  EXPECT_NEAR(luxOnFloor(lamp, 19.0831, 0) / luxOnFloor(lamp, 0, 0), 0.1, 1e-5);
}

// Inputs of the worked example numbered 49.3: four lamps of 200 cd, 10 m apart, 5 m up; below the middle of the inner
// pair. The answer is worked out by hand: 2 x 200 x 5 x (50^-3/2 + 250^-3/2).
TEST(PublishedIlluminances, OfFourLampsInARow) {
  double sum = 0;
  for (const double x : {-15.0, -5.0, 5.0, 15.0}) sum += luxOnFloor(source({x, 0, 5}, 200), 0, 0);
  EXPECT_NEAR(sum, 6.16282, 1e-4);
}

// byjus.com, question on a 628-lumen point source: "40 lux" at 1 m with the surface tilted by 37 degrees (its cosine
// taken as 4/5, hence 0.1).
TEST(PublishedIlluminances, OnATiltedSurface) {
  const double candela = 628 / (4 * 3.14159265358979323846);
  const double tilt = geometry::radians(37);
  const Face face{{0, 0, 0}, {std::sin(tilt), 0, std::cos(tilt)}};
  EXPECT_NEAR(luxAtFace(source({0, 0, 1}, candela), face, 0, Receptor::flat, kOpen), 40, 0.1);
}

// shaalaa.com, question 67959: 40 lux 1 m below, "14 lux" 1 m aside of there.
TEST(PublishedIlluminances, AMetreAside) {
  EXPECT_NEAR(luxOnFloor(source({0, 0, 1}, 40), 1, 0), 14, 0.2);
}

// askfilo.com: 500 cd in the centre of a room 20 x 10 x 5 m puts "0.83 lux" into a corner of the floor.
TEST(PublishedIlluminances, InACornerOfARoom) {
  EXPECT_NEAR(luxOnFloor(source({0, 0, 2.5}, 500), 10, 5), 0.83, 0.005);
}

// The cosine counts once: 100 cd, 4 m up, 3 m aside is 100 x 0.8 / 25. A printed student sheet squares it.
TEST(PublishedIlluminances, CountTheCosineOnce) {
  EXPECT_NEAR(luxOnFloor(source({0, 0, 4}, 100), 3, 0), 3.2, 1e-9);
}

// Common practice's table for a clear pane; the head-on figure by hand: r = (0.5 / 2.5)^2 = 4 %, 2r / (1 + r) = 7.69 %.
TEST(ClearPane, ReturnsMoreTheMoreItIsSlanted) {
  for (const auto& [degrees, percent] : {std::pair{0.0, 7.7}, {45, 9.3}, {60, 15.2}, {70, 27.1}, {80, 54.2}})
    EXPECT_NEAR(100 * paneReflectance(degrees), percent, 0.05) << degrees;
}

}  // namespace
}  // namespace wend::light
