#include "core/light/beam.h"

#include <gtest/gtest.h>

#include <utility>

namespace wend::light {
namespace {

TEST(Beam, IsAHalfAtTheBeamAndATenthAtTheField) {
  for (const auto& [beam, field] : {std::pair{40.0, 60.0}, {12.0, 30.0}, {60.0, 61.0}}) {
    const Beam spot{900, beam, field};
    EXPECT_DOUBLE_EQ(intensity(spot, 0), 900);
    EXPECT_NEAR(intensity(spot, beam / 2), 450, 1e-9);
    EXPECT_NEAR(intensity(spot, field / 2), 90, 1e-7);
    EXPECT_DOUBLE_EQ(intensity(spot, -7), intensity(spot, 7));
  }
}

TEST(Beam, NeverRisesAwayFromItsAxis) {
  const Beam spot{900, 25, 70};
  for (double a = 0; a < 180; a += 0.5) ASSERT_GE(intensity(spot, a), intensity(spot, a + 0.5));
}

TEST(DistributionOf, ABeamIsTheSameAllRoundItsAxis) {
  const Distribution spot = distributionOf({900, 40, 60});
  EXPECT_NEAR(spot(20, 0), 450, 1e-9);
  EXPECT_EQ(spot(20, 133), spot(20, 0));
}

}  // namespace
}  // namespace wend::light
