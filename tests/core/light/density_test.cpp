#include "core/light/density.h"

#include <gtest/gtest.h>

#include "core/light/exposure.h"
#include "core/units/stop.h"

namespace wend::light {
namespace {

// A shed and then a glasshouse: density 0.3 to 1.5 in six seconds.
const std::vector<DensityKey> kRamp{{{0, 0, false}, densityStops(0.3)}, {{20, 6, false}, densityStops(1.5)}};

TEST(DensityAt, IsLinearInStopsWhileItsKeyIsUnderWay) {
  EXPECT_EQ(densityAt(kRamp, 5), densityStops(0.3));
  EXPECT_NEAR(densityAt(kRamp, 23), densityStops(0.9), 1e-12);
  EXPECT_EQ(densityAt(kRamp, 30), densityStops(1.5));
  EXPECT_EQ(densityAt({}, 30, 2), 2);
}

TEST(NeededBehind, OpensByHalfTheStopsInTheNumber) {
  EXPECT_NEAR(neededBehind(11, kRamp, 30), 11 / std::exp2(densityStops(1.5) / 2), 1e-12);
  EXPECT_NEAR(neededBehind(8, {}, 0, 2), 4, 1e-12);
  // Density and iris share the way: four stops by the filter leave two of six for the iris.
  const double shed = neededBehind(2.8, kRamp, 0), glass = neededBehind(units::closedBy(2.8, 6), kRamp, 30);
  EXPECT_NEAR(units::stopsBetween(shed, glass), 6 - densityStops(1.2), 1e-12);
}

TEST(DensityFor, BringsAReadingToTheStop) {
  EXPECT_NEAR(densityFor(11, 2.75), 4, 1e-12);
  EXPECT_NEAR(throughDensity(11, densityFor(11, 2.8)), 2.8, 1e-12);
  EXPECT_LT(densityFor(2, 2.8), 0);
}

TEST(DensityRate, IsTheSlopeOfTheDensity) {
  EXPECT_NEAR(densityRate(kRamp, 23), densityStops(1.2) / 6, 1e-12);
  EXPECT_EQ(densityRate(kRamp, 10), 0);
  EXPECT_EQ(densityRate(kRamp, 27), 0);
  EXPECT_EQ(densityRate({}, 27), 0);
  std::vector<DensityKey> eased = kRamp;
  eased[1].time.eased = true;
  EXPECT_NEAR(densityRate(eased, 23), 1.5 * densityStops(1.2) / 6, 1e-12);
  for (const double t : {20.5, 22.0, 25.0})
    EXPECT_NEAR(densityRate(eased, t), (densityAt(eased, t + 1e-5) - densityAt(eased, t - 1e-5)) / 2e-5, 1e-6);
}

}  // namespace
}  // namespace wend::light
