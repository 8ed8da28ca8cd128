#include "core/light/exposure.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/units/stop.h"

namespace wend::light {
namespace {

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (double(random() >> 11) / 9007199254740992.0);
}

TEST(StopFor, FourTimesTheLightNeedsTwiceTheNumber) {
  const Exposure exposure{.index = 1600};
  EXPECT_DOUBLE_EQ(stopFor(400, exposure), 2 * stopFor(100, exposure));
  EXPECT_EQ(stopFor(0, exposure), 0);
}

TEST(StopFor, AStopOfDensityOpensByAStop) {
  Exposure exposure;
  const double clear = stopFor(250, exposure);
  exposure.ndStops = 1;
  EXPECT_DOUBLE_EQ(stopFor(250, exposure), clear / std::sqrt(2.0));
  exposure.ndStops = 4;
  EXPECT_DOUBLE_EQ(stopFor(250, exposure), clear / 4);
}

TEST(LuxOfReading, UndoesStopForWhateverTheDensity) {
  std::mt19937_64 random(11);
  for (int i = 0; i < 200; ++i) {
    Exposure e{uniform(random, 50, 6400), uniform(random, 5, 360), uniform(random, 1, 120), uniform(random, 240, 540)};
    const double lux = std::exp2(uniform(random, -4, 17));
    ASSERT_NEAR(luxOfReading(stopFor(lux, e), e) / lux, 1, 1e-12);
    const double reading = stopFor(lux, e);
    e.ndStops = uniform(random, 0, 10);
    ASSERT_NEAR(luxOfReading(reading, e) / lux, 1, 1e-12);
    ASSERT_NEAR(throughDensity(reading, e.ndStops) / stopFor(lux, e), 1, 1e-12);
  }
}

TEST(OffsetStops, IsPositiveWhereTheFaceNeedsASmallerIris) {
  EXPECT_DOUBLE_EQ(offsetStops(4, 2), 2);
  EXPECT_DOUBLE_EQ(offsetStops(1.4, 2.8), -2);
  EXPECT_EQ(offsetStops(5.6, 5.6), 0);
}

TEST(OffsetStops, AtTheDoorFromTheBakehouseIsAThirdOverAStop) {
  // From T4 to a third past T5.6 in 3.5 s: a stop and a third, 0.38 stop a second.
  const double to = units::closedBy(4, 4.0 / 3);
  EXPECT_NEAR(to, 6.35, 0.005);
  EXPECT_NEAR(units::stopsBetween(4, to) / 3.5, 0.38, 0.005);
}

TEST(BlendedStop, IsLinearInStopsAndExactAtItsEnds) {
  EXPECT_EQ(blendedStop(2.8, 5.6, 0), 2.8);
  EXPECT_EQ(blendedStop(2.8, 5.6, 1), 5.6);
  EXPECT_DOUBLE_EQ(blendedStop(2, 8, 0.5), 4);
  EXPECT_NEAR(units::stopsBetween(2.8, blendedStop(2.8, 11, 0.3)), 0.3 * units::stopsBetween(2.8, 11), 1e-12);
}

}  // namespace
}  // namespace wend::light
