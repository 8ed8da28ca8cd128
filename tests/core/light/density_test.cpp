#include "core/light/density.h"

#include <gtest/gtest.h>

#include "core/units/stop.h"

namespace wend::light {
namespace {

// A shed and then a glasshouse: a stop to five in six seconds.
const std::vector<DensityKey> kRamp{{{0, 0, false}, 1.0}, {{20, 6, false}, 5.0}};

TEST(DensityAt, IsLinearInStopsWhileItsKeyIsUnderWay) {
  EXPECT_EQ(densityAt(kRamp, 5), 1.0);
  EXPECT_NEAR(densityAt(kRamp, 23), 3.0, 1e-12);
  EXPECT_EQ(densityAt(kRamp, 30), 5.0);
  EXPECT_EQ(densityAt({}, 30, 2), 2);
}

TEST(DensityRate, IsTheSlopeOfTheDensity) {
  EXPECT_NEAR(densityRate(kRamp, 23), 4.0 / 6, 1e-12);
  EXPECT_EQ(densityRate(kRamp, 10), 0);
  EXPECT_EQ(densityRate(kRamp, 27), 0);
  EXPECT_EQ(densityRate({}, 27), 0);
  std::vector<DensityKey> eased = kRamp;
  eased[1].time.eased = true;
  EXPECT_NEAR(densityRate(eased, 23), 1.5 * 4.0 / 6, 1e-12);
  for (const double t : {20.5, 22.0, 25.0})
    EXPECT_NEAR(densityRate(eased, t), (densityAt(eased, t + 1e-5) - densityAt(eased, t - 1e-5)) / 2e-5, 1e-6);
}

}  // namespace
}  // namespace wend::light
