#include "core/optics/warmth.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace wend::optics {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
const Optics kLens{50, 2.8, 0.025};

TEST(Wobble, AddsInSquares) {
  EXPECT_DOUBLE_EQ(wobbleOf({0.3, 0.4}), 0.5);
  EXPECT_EQ(wobbleOf({}), 0);
  EXPECT_NEAR(wobbleOf({0.12, 0.07}), 0.1389244, 1e-7);
}

TEST(Heat, ChangesAtItsTwoThresholds) {
  EXPECT_EQ(heatOf(1.5), Heat::cool);
  EXPECT_EQ(heatOf(std::nextafter(1.5, 0)), Heat::warm);
  EXPECT_EQ(heatOf(1.0), Heat::warm);
  EXPECT_EQ(heatOf(std::nextafter(1.0, 0)), Heat::hot);
}

TEST(Warmth, UsesTheSmallerHalf) {
  for (const double u : {0.8, 2.0, 5.0, 60.0}) {
    const Range band = depthOfField(u, kLens);
    EXPECT_EQ(smallerHalf(u, kLens), std::min(u - band.near, band.far - u)) << u;
  }
  EXPECT_NEAR(warmthOf(2, kLens, 0.1), (2 - depthOfField(2, kLens).near) / 0.1, 1e-12);
  EXPECT_EQ(warmthOf(2, kLens, 0), kInfinity);
  EXPECT_EQ(warmthOf(kInfinity, kLens, 0.3), kInfinity);
}

TEST(Cures, EachBringsWarmthToTheTarget) {
  std::mt19937_64 random(51);
  const auto uniform = [&](double a, double b) { return a + (b - a) * static_cast<double>(random() >> 11) * 0x1p-53; };
  int tried = 0;
  for (int i = 0; i < 3000; ++i) {
    const Optics lens{uniform(20, 150), std::exp2(uniform(0, 3)), 0.025};
    const double u = uniform(0.7, 8), wobble = uniform(0.03, 0.4);
    if (warmthOf(u, lens, wobble) >= 1.5) continue;
    ++tried;
    const Cures cures = curesFor(u, lens, wobble, 1.5, {1e-3, 1e9});
    ASSERT_TRUE(cures.backOff.enough && cures.widen.enough && cures.stopDown.enough) << "seed 51, round " << i;
    for (const Cure* cure : {&cures.backOff, &cures.widen, &cures.stopDown})
      ASSERT_NEAR(cure->warmth, 1.5, 1e-8) << "seed 51, round " << i;
    ASSERT_GT(cures.backOff.value, u);
    ASSERT_LT(cures.widen.value, lens.focal);
    ASSERT_GT(cures.stopDown.value, lens.fNumber);
    const Optics closed{lens.focal, cures.stopDown.value, 0.025};
    ASSERT_EQ(cures.stopDown.band, depthOfField(u, closed));
    ASSERT_EQ(cures.backOff.band, depthOfField(cures.backOff.value, lens));
  }
  EXPECT_GT(tried, 1000);
}

TEST(Cures, StopAtWhatTheLensHas) {
  const Cures cures = curesFor(1.2, kLens, 0.2, 1.0, {40, 5.6});
  EXPECT_EQ(cures.widen.value, 40);
  EXPECT_FALSE(cures.widen.enough);
  EXPECT_LT(cures.widen.warmth, 1);
  EXPECT_GT(cures.widen.warmth, warmthOf(1.2, kLens, 0.2));
  EXPECT_EQ(cures.stopDown.value, 5.6);
  EXPECT_FALSE(cures.stopDown.enough);
  EXPECT_TRUE(cures.backOff.enough);
}

TEST(Cures, NoLensHoldsAWobbleAsLargeAsTheDistance) {
  const Cures cures = curesFor(0.8, kLens, 0.9, 1.0, {18, 22});
  EXPECT_FALSE(cures.widen.enough);
  EXPECT_FALSE(cures.stopDown.enough);
  EXPECT_NEAR(cures.backOff.warmth, 1, 1e-9);
}

/// Thin lens: with the lens at s a point at d is blurred by f^2 |d - s| / (N d (s - f)).
Range bandAt(double s, const Optics& o) {
  const double f = o.focal / 1000, nc = o.fNumber * o.blurCircle / 1000;
  return {s * f * f / (f * f + nc * (s - f)), s * f * f / (f * f - nc * (s - f))};
}

TEST(SplitWarmth, IsTheLeastRoomOverItsOwnWobble) {
  const std::vector<Held> held{{2, 0.1}, {2.2, 0.3}};
  const Range band = bandAt(2 * 2 * 2.2 / 4.2, kLens);
  const double first = (2 - band.near) / 0.1, second = (band.far - 2.2) / 0.3;
  ASSERT_LT(second, first);
  const SplitWarmth warmth = splitWarmth(held, kLens);
  EXPECT_EQ(warmth.tightest, 1u);
  EXPECT_NEAR(warmth.warmth, second, 1e-9);
  EXPECT_EQ(splitWarmth({{2, 0.1}, {6, 0.1}}, kLens).warmth, 0) << "somebody is outside the band";
}

TEST(SplitWarmth, OfOneIsWarmth) {
  EXPECT_NEAR(splitWarmth({{2, 0.1}}, kLens).warmth, warmthOf(2, kLens, 0.1), 1e-12);
}

TEST(SplitCures, JustReachTheTargetWhereTheLensDoes) {
  const std::vector<Held> held{{2, 0.1}, {2.3, 0.12}};
  const SplitCures cures = curesForSplit(held, kLens, 1, {10, 64});
  ASSERT_TRUE(cures.widen.enough && cures.stopDown.enough);
  EXPECT_NEAR(splitWarmth(held, {cures.widen.value, 2.8, 0.025}).warmth, 1, 1e-6);
  EXPECT_NEAR(splitWarmth(held, {50, cures.stopDown.value, 0.025}).warmth, 1, 1e-6);
  const SplitCures none = curesForSplit(held, kLens, 1, {45, 3});
  EXPECT_FALSE(none.widen.enough || none.stopDown.enough);
  EXPECT_EQ(none.widen.value, 45);
  EXPECT_LT(none.stopDown.warmth, 1);
}

}  // namespace
}  // namespace wend::optics
