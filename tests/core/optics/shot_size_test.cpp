#include "core/optics/shot_size.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/optics/frame.h"

namespace wend::optics {
namespace {

const std::string& nameAt(double q) {
  return usualShotSizes()[nearestShotSize(q)].name;
}

TEST(ShotSize, EachSizeNamesItself) {
  for (const ShotSize& size : usualShotSizes()) {
    EXPECT_EQ(nameAt(size.q), size.name);
    EXPECT_EQ(shotSizeNamed(size.name)->q, size.q);
  }
  EXPECT_FALSE(shotSizeNamed("cowboy"));
}

TEST(ShotSize, NearestIsMeasuredInTheLogarithm) {
  // Between full 1.05 and wide 1.5 the border is their geometric mean 1.25499, not their mean 1.275.
  EXPECT_EQ(nameAt(1.254), "full");
  EXPECT_EQ(nameAt(1.256), "wide");
  EXPECT_EQ(nameAt(1000), "extreme wide");
  EXPECT_EQ(nameAt(0.001), "extreme close");
}

TEST(ShotSize, HalfwayIsTheWider) {
  const ShotSizes two{{"far", 4}, {"near", 1}};
  EXPECT_EQ(nearestShotSize(2, two), 0u);
  EXPECT_EQ(nearestShotSize(1.999, two), 1u);
}

TEST(ShotSize, IsTheFrameHeightOverTheStature) {
  const HalfTangents half = halfTangents({24.9, 14}, 35);
  // 14 / 35 x 3 m = 1.2 m of height at 3 m.
  EXPECT_NEAR(frameOverStature(half.v, 3, 1.6), 1.2 / 1.6, 1e-15);
}

TEST(FocalForSize, FramesThePersonAtTheSizeAsked) {
  for (const ShotSize& size : usualShotSizes()) {
    const auto found = focalForSize(14, 2.9, size.q, 1.72, {1, 1000});
    EXPECT_FALSE(found.clipped);
    EXPECT_NEAR(frameOverStature(halfTangents({24.9, 14}, found.focal).v, 2.9, 1.72), size.q, 1e-12) << size.name;
  }
}

TEST(FocalForSize, StopsAtTheEndsOfTheLensAndSaysSo) {
  const auto tele = focalForSize(14, 4, 0.10, 1.72, {24, 70});
  EXPECT_EQ(tele.focal, 70);
  EXPECT_TRUE(tele.clipped);
  const auto wide = focalForSize(14, 1, 3, 1.72, {24, 70});
  EXPECT_EQ(wide.focal, 24);
  EXPECT_TRUE(wide.clipped);
}

}  // namespace
}  // namespace wend::optics
