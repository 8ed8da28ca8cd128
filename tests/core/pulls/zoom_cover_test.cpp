#include "core/pulls/zoom_cover.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace wend::pulls {
namespace {

using geometry::Pose;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

ZoomInstant still(double rate, double distance) {
  ZoomInstant now;
  now.before = now.after = Pose{{1, 2, 1.5}, 40, -3};
  now.focalPerSecond = rate;
  now.distance.fill(distance);
  return now;
}

TEST(CoverPoint, StandsInTheMiddleOfItsField) {
  EXPECT_NEAR(coverPoint(0).x, -0.8, 1e-15);
  EXPECT_NEAR(coverPoint(0).y, 2.0 / 3, 1e-15);
  EXPECT_NEAR(coverPoint(7).x, 0, 1e-15);
  EXPECT_NEAR(coverPoint(7).y, 0, 1e-15);
  EXPECT_NEAR(coverPoint(14).x, 0.8, 1e-15);
  EXPECT_NEAR(coverPoint(14).y, -2.0 / 3, 1e-15);
}

TEST(ZoomCover, NothingHidesAZoomInAStillFrame) {
  const ZoomCover cover = zoomCover(still(0.10, 3));
  EXPECT_NEAR(cover.share, 1, 1e-9);
  EXPECT_FALSE(cover.covered);
}

TEST(ZoomCover, SlowZoomHidesAnywhere) {
  EXPECT_TRUE(zoomCover(still(0.0349, 3)).covered);
  EXPECT_TRUE(zoomCover(still(-0.0349, 3)).covered);
  EXPECT_FALSE(zoomCover(still(0.035, 3)).covered);
}

TEST(ZoomCover, NoZoomIsNoShare) {
  EXPECT_EQ(zoomCover(still(0, 3)).share, 0);
  EXPECT_TRUE(zoomCover(still(0, 3)).covered);
}

// Small turns: every point near the axis flows by the rate in radians. With the mean |place| of the grid known, the
// share can be worked by hand.
TEST(ZoomCover, PanAddsItsRateAtEveryPoint) {
  ZoomInstant now = still(0.20, kInfinity);
  now.halfTangentH = 0.02;
  now.halfTangentV = 0.01;
  now.before = Pose{{0, 0, 1}, 0, 0};
  now.after = Pose{{0, 0, 1}, 0.01, 0};
  now.seconds = 0.04;
  double places = 0;
  for (std::size_t i = 0; i < 15; ++i) places += std::hypot(coverPoint(i).x * 0.02, coverPoint(i).y * 0.01);
  const double zoom = places * 0.20, pan = 15 * geometry::radians(0.01) / 0.04;
  EXPECT_NEAR(zoomCover(now).share, zoom / (zoom + pan), 1e-4);
}

// Walking straight in by a share of the distance a second makes a plane square to the lens flow just as a zoom by that
// share does: half and half.
TEST(ZoomCover, WalkingInAtTheSameRateIsHalfTheFlow) {
  ZoomInstant now = still(0.10, 0);
  now.before = Pose{{0, 0, 1.5}, 0, 0};
  now.seconds = 1e-4;
  now.after = Pose{{0, 4 * 0.10 * 1e-4, 1.5}, 0, 0};
  for (std::size_t i = 0; i < 15; ++i)
    now.distance[i] = 4 * std::hypot(1, coverPoint(i).x * now.halfTangentH, coverPoint(i).y * now.halfTangentV);
  EXPECT_NEAR(zoomCover(now).share, 0.5, 1e-4);
}

TEST(ZoomCover, InAndOutAreAlike) {
  ZoomInstant in = still(0.12, 5), out = still(-0.12, 5);
  in.after.bearing = out.after.bearing = 40.6;
  EXPECT_EQ(zoomCover(in).share, zoomCover(out).share);
  EXPECT_LT(zoomCover(in).share, 0.5) << "14 degrees a second of pan";
  EXPECT_TRUE(zoomCover(in).covered);
}

TEST(ZoomCover, NearThingsMoveMoreUnderTravel) {
  ZoomInstant near = still(0.10, 1), far = still(0.10, 20);
  near.after.at.x = far.after.at.x = 1.02;
  EXPECT_LT(zoomCover(near).share, zoomCover(far).share);
}

TEST(ZoomCover, WhatComesBehindCountsForNothing) {
  ZoomInstant now = still(0.10, 1);
  now.after.bearing = 220;
  EXPECT_EQ(zoomCover(now).share, 0);
}

}  // namespace
}  // namespace wend::pulls
