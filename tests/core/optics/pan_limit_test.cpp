#include "core/optics/pan_limit.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/geometry/pose.h"
#include "core/optics/figure.h"

namespace wend::optics {
namespace {

TEST(PanLimit, IsTheFieldOfViewOverTheCrossing) {
  const HalfTangents half = halfTangents({36, 24}, 18);  // 90 degrees wide
  EXPECT_NEAR(panLimit(half), 90.0 / 7, 1e-12);
  EXPECT_NEAR(panLimit(half, 5), 18, 1e-12);
}

TEST(PanLimit, CentreAllowsMoreThanTheMean) {
  for (const double focal : {18.0, 50.0, 200.0}) {
    const HalfTangents half = halfTangents({24.892, 18.669}, focal);
    EXPECT_GT(panLimitAtCentre(half), panLimit(half));
  }
}

TEST(PanLimit, AtTheMeanRateAStillPointTakesTheWholeCrossing) {
  const HalfTangents half = halfTangents({24.9, 14}, 35);
  const double rate = panLimit(half), side = fieldOfView(half).horizontal / 2;
  const geometry::Point3 lamp{0, 10, 1};
  const geometry::Pose entering{{0, 0, 1}, -side, 0}, leaving{{0, 0, 1}, -side + rate * kFrameCrossing, 0};
  EXPECT_NEAR(placeInFrame(lamp, entering, half)->x, 1, 1e-9);
  EXPECT_NEAR(placeInFrame(lamp, leaving, half)->x, -1, 1e-9);
}

TEST(ImageSpeed, CountsFrameWidths) {
  const HalfTangents half{0.5, 0.25};
  EXPECT_DOUBLE_EQ(imageSpeed({-1, 0}, {1, 0}, half, 7), 1.0 / 7);
  // The whole height of this frame is half its width.
  EXPECT_DOUBLE_EQ(imageSpeed({0, -1}, {0, 1}, half, 1), 0.5);
}

}  // namespace
}  // namespace wend::optics
