#include "core/light/luminaire.h"

#include <gtest/gtest.h>

#include "core/light/fixture.h"

namespace wend::light {
namespace {

std::shared_ptr<const Luminaire> luminaire(base::Result<Photometry> table, std::vector<TiltFactor> tilt) {
  return std::make_shared<const Luminaire>(Luminaire{std::move(table).value(), std::move(tilt), 0.3});
}

TEST(TiltFactor, IsLinearBetweenItsEntriesAndHeldBeyond) {
  const std::vector<TiltFactor> factors{{0, 1}, {90, 0.8}, {180, 1}};
  EXPECT_NEAR(tiltFactor(factors, 45), 0.9, 1e-12);
  EXPECT_EQ(tiltFactor(factors, 0), 1);
  EXPECT_EQ(tiltFactor(factors, 90), 0.8);
  EXPECT_NEAR(tiltFactor(factors, 135), 0.9, 1e-12);
  EXPECT_EQ(tiltFactor(factors, 180), 1);
  EXPECT_NEAR(tiltFactor(factors, -45), 0.9, 1e-12);
  EXPECT_EQ(tiltFactor({{10, 0.9}, {170, 0.7}}, 5), 0.9);
  EXPECT_EQ(tiltFactor({{10, 0.9}, {170, 0.7}}, 175), 0.7);
  EXPECT_EQ(tiltFactor({}, 60), 1);
}

TEST(TiltFactor, OfAListUpToTheLevelCountsForALampTurnedOver) {
  const std::vector<TiltFactor> factors{{0, 1}, {60, 0.6}, {90, 0.9}};
  EXPECT_NEAR(tiltFactor(factors, 120), 0.6, 1e-12);
  EXPECT_NEAR(tiltFactor(factors, 180), 1, 1e-12);
}

TEST(LuminaireDistribution, AHangingLampTurnsItsTableCounterClockwiseSeenFromAbove) {
  // Bright at 90 degrees, dark at 270: hung with its top to the north, that is to the west.
  const auto table = Photometry::of({0, 90}, {0, 90, 180, 270, 360}, {{0, 0}, {50, 50}, {0, 0}, {0, 0}, {0, 0}});
  const Fixture lamp{{{0, 0, 3}, 0, -90}, distributionOf(luminaire(table, {}), -90, 2), {}, {}};
  EXPECT_NEAR(candelaTowards(lamp, {-2, 0, 0}), 100, 1e-9);
  EXPECT_NEAR(candelaTowards(lamp, {2, 0, 0}), 0, 1e-9);
  EXPECT_NEAR(candelaTowards(lamp, {-2, 2, 0}), 50, 1e-9);
}

TEST(LuminaireDistribution, CountsTheTiltFromHangingStraightDown) {
  const auto table = Photometry::of({0, 180}, {0}, {{100, 100}});
  const auto lamp = luminaire(table, {{0, 1}, {90, 0.8}, {180, 0.5}});
  EXPECT_NEAR(distributionOf(lamp, -90, 1)(10, 0), 100, 1e-9);
  EXPECT_NEAR(distributionOf(lamp, -45, 1)(10, 0), 90, 1e-9);
  EXPECT_NEAR(distributionOf(lamp, 0, 3)(10, 0), 240, 1e-9);
  EXPECT_NEAR(distributionOf(lamp, 90, 1)(10, 0), 50, 1e-9);
}

}  // namespace
}  // namespace wend::light
