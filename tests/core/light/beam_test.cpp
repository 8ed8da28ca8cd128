#include "core/light/beam.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
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

// Field over beam chosen so that n = 2: a bell I0 2^-(a/h)^2 of half angle h, whose lumens over a narrow cone are
// 2 pi I0 times the integral of a 2^-(a/h)^2, pi I0 h^2 / ln 2 with h in radians (the sine replaced by the angle is off
// by less than a hundredth at 8 degrees).
TEST(BeamFlux, OfANarrowBellIsThatOfTheFormula) {
  const double half = 4, field = 2 * half * std::sqrt(std::log2(10.0)), h = half * std::numbers::pi / 180;
  EXPECT_NEAR(totalFlux({1000, 2 * half, field}) / (std::numbers::pi * 1000 * h * h / std::log(2)), 1, 0.003);
}

}  // namespace
}  // namespace wend::light
