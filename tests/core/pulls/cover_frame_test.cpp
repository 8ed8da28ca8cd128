// The share of the frame that a flat shape fills, against rays counted one by one.
#include "core/pulls/cover_frame.h"

#include <gtest/gtest.h>

#include <random>

namespace wend::pulls {
namespace {

using geometry::Point3;
using geometry::Pose;
using geometry::Vec3;

/// A rectangle that stands upright from a to b.
std::vector<Point3> upright(geometry::Point a, geometry::Point b, double bottom, double top) {
  return {at(a, bottom), at(b, bottom), at(b, top), at(a, top)};
}

/// The share of 400 x 400 rays that pass through the rectangle from a to b.
double countedShare(geometry::Point a, geometry::Point b, double bottom, double top, const Pose& pupil, double h,
                    double v) {
  const int n = 400;
  int hits = 0;
  const geometry::Vec way = b - a;
  for (int i = 0; i < n; ++i)
    for (int k = 0; k < n; ++k) {
      const double x = ((2 * i + 1.0) / n - 1) * h, y = ((2 * k + 1.0) / n - 1) * v;
      const Vec3 ray = pupil.forward() + pupil.rightward() * x + pupil.upward() * y;
      const double across = cross(geometry::Vec{ray.x, ray.y}, way);
      if (across == 0) continue;
      const geometry::Vec to = a - geometry::flat(pupil.at);
      const double ahead = cross(to, way) / across, along = cross(to, geometry::Vec{ray.x, ray.y}) / across;
      const double z = pupil.at.z + ray.z * ahead;
      hits += ahead > 0 && along >= 0 && along <= 1 && z >= bottom && z <= top;
    }
  return hits / static_cast<double>(n * n);
}

TEST(ShareOfFrame, AgreesWithRaysCountedOneByOne) {
  const unsigned seed = 7;
  std::mt19937_64 random(seed);
  const auto uniform = [&](double from, double until) {
    return from + (until - from) * static_cast<double>(random() >> 11) * 0x1.0p-53;
  };
  int partly = 0;
  for (int i = 0; i < 60; ++i) {
    const geometry::Point a{uniform(-3, 3), uniform(-3, 3)}, b{uniform(-3, 3), uniform(-3, 3)};
    const Pose pupil{{0, 0, 1.5}, uniform(-180, 180), uniform(-25, 25)};
    const double h = uniform(0.15, 0.6), v = uniform(0.1, 0.4), bottom = uniform(0, 1.2), top = bottom + 1.5;
    const double share = shareOfFrame(upright(a, b, bottom, top), pupil, h, v);
    EXPECT_NEAR(share, countedShare(a, b, bottom, top, pupil, h, v), 0.005) << "seed " << seed << " case " << i;
    partly += share > 0.01 && share < 0.99;
  }
  EXPECT_GT(partly, 5) << "the cases must not all be trivial";
}

TEST(ShareOfFrame, IsTheQuotientOfAreasWhenItStandsSquareInTheFrame) {
  // 1 m x 0.5 m at 4 m, in a frame of 4 m x 2 m there.
  const Pose pupil{{0, 0, 1.5}, 0, 0};
  EXPECT_NEAR(shareOfFrame(upright({-0.5, 4}, {0.5, 4}, 1.25, 1.75), pupil, 0.5, 0.25), 0.5 / 8, 1e-12);
  EXPECT_NEAR(shareOfFrame(upright({-9, 4}, {9, 4}, 0, 9), pupil, 0.5, 0.25), 1, 1e-12);
  EXPECT_EQ(shareOfFrame(upright({-9, -4}, {9, -4}, 0, 9), pupil, 0.5, 0.25), 0);
  EXPECT_EQ(shareOfFrame(upright({8, 4}, {9, 4}, 0, 9), pupil, 0.5, 0.25), 0);
}

}  // namespace
}  // namespace wend::pulls
