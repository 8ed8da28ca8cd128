#include "core/optics/distance.h"

#include <gtest/gtest.h>

#include <limits>
#include <random>

namespace wend::optics {
namespace {

using geometry::Point3;
using geometry::Pose;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

// Common practice worked by hand: a lens 0.50 m above the floor, eyes at 1.60 m, 1.20 m away on the plan: the tape
// reads 1.63 m.
TEST(SubjectDistances, SlantIsWhatATapeReads) {
  const auto d = distancesOf({0, 1.2, 1.6}, Pose{{0, 0, 0.5}, 0, 0});
  EXPECT_NEAR(d.slant, 1.63, 0.005);
  EXPECT_DOUBLE_EQ(d.floor, 1.2);
  EXPECT_NEAR(d.flat, 1.2, 1e-15);
}

// A subject 2.51 m off at 17.4 degrees from the axis is focused by a flat field at 2.40 m.
TEST(SubjectDistances, FlatIsAlongTheAxis) {
  const Pose sensor{{1, 2, 1.5}, 30, 0};
  const geometry::Vec way = geometry::direction(30 + 17.4);
  const auto d = distancesOf({1 + 2.51 * way.x, 2 + 2.51 * way.y, 1.5}, sensor);
  EXPECT_NEAR(d.flat, 2.40, 0.005);
  EXPECT_NEAR(d.slant, 2.51, 1e-12);
}

TEST(SubjectDistances, SlantStandsInBehindTheLens) {
  const auto d = distancesOf({0, -3, 1}, Pose{{0, 0, 1}, 0, 0});
  EXPECT_EQ(d.flat, d.slant);
  EXPECT_EQ(d.slant, 3);
}

TEST(SubjectDistances, SlantIsTheLongest) {
  std::mt19937_64 random(11);
  const auto uniform = [&](double a, double b) { return a + (b - a) * static_cast<double>(random() >> 11) * 0x1p-53; };
  for (int i = 0; i < 2000; ++i) {
    const Pose sensor{{uniform(-5, 5), uniform(-5, 5), uniform(0, 3)}, uniform(-400, 400), uniform(-80, 80)};
    const auto d = distancesOf({uniform(-5, 5), uniform(-5, 5), uniform(0, 3)}, sensor);
    ASSERT_LE(d.floor, d.slant) << "seed 11, round " << i;
    ASSERT_LE(d.flat, d.slant) << "seed 11, round " << i;
    ASSERT_GT(d.flat, 0) << "seed 11, round " << i;
  }
}

TEST(BlendedDistance, IsEvenInDioptres) {
  EXPECT_DOUBLE_EQ(blendedDistance(1, 2, 0.5), 4.0 / 3);
  EXPECT_DOUBLE_EQ(blendedDistance(2, kInfinity, 0.5), 4);
  EXPECT_EQ(blendedDistance(kInfinity, kInfinity, 0.3), kInfinity);
  EXPECT_EQ(blendedDistance(0.7, 3.3, 0), 0.7);
  EXPECT_EQ(blendedDistance(0.7, 3.3, 1), 3.3);
}

TEST(BlendedDistance, BlendsEachKindOnItsOwn) {
  const SubjectDistances mid = blended({1, 0.9, 0.8}, {3, 2, 4}, 0.25);
  EXPECT_DOUBLE_EQ(mid.slant, blendedDistance(1, 3, 0.25));
  EXPECT_DOUBLE_EQ(mid.flat, blendedDistance(0.9, 2, 0.25));
  EXPECT_DOUBLE_EQ(mid.floor, blendedDistance(0.8, 4, 0.25));
}

TEST(FromPupil, KeepsInfinity) {
  EXPECT_DOUBLE_EQ(fromPupil(2, 0.15), 1.85);
  EXPECT_EQ(fromPupil(kInfinity, 0.15), kInfinity);
}

}  // namespace
}  // namespace wend::optics
