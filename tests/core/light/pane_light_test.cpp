#include "core/light/pane_light.h"

#include <gtest/gtest.h>

#include "core/light/exposure.h"
#include "core/units/stop.h"

namespace wend::light {
namespace {

// A shop west of x = 10 and a street east of it, with a window in the wall between.
const geometry::Segment kWindow{{10, 1}, {10, 4}};

Areas shopAndStreet(double shop, double street) {
  const Area inside{Outline{{{0, 0}, {10, 0}, {10, 6}, {0, 6}}}, {{{}, {{{5, 3}, shop}}}}, {}};
  const Area outside{Outline{{{10, 0}, {20, 0}, {20, 6}, {10, 6}}}, {{{}, {{{15, 3}, street}}}}, {}};
  // The window is a gap, whatever fills it: the soft edges reach through.
  return Areas({inside, outside}, {}, [](Point, Point) { return false; });
}

TEST(PaneLight, ReadsEitherSideClearOfTheOther) {
  const PaneLight light = paneLight(shopAndStreet(4, 11), kWindow, 0.1, {10, 2, 1.5}, {7, 2, 1.5}, 0);
  EXPECT_EQ(light.incidence, 0);
  EXPECT_NEAR(light.nearStop.value(), 4, 1e-12);
  EXPECT_NEAR(light.farStop.value(), 11, 1e-12);
  EXPECT_EQ(light.mirror, false);
  const PaneLight back = paneLight(shopAndStreet(4, 11), kWindow, 0.1, {10, 2, 1.5}, {13, 2, 1.5}, 0);
  EXPECT_NEAR(back.nearStop.value(), 11, 1e-12);
  EXPECT_NEAR(back.farStop.value(), 4, 1e-12);
  EXPECT_EQ(back.mirror, true) << "nearly three stops darker inside: from the street the shop window is a mirror";
}

TEST(PaneLight, LooksAtThePaneInSpace) {
  const Areas areas = shopAndStreet(4, 4);
  EXPECT_NEAR(paneLight(areas, kWindow, 0.1, {10, 2, 1}, {7, 5, 1}, 0).incidence, 45, 1e-9);
  EXPECT_NEAR(paneLight(areas, kWindow, 0.1, {10, 2, 1}, {7, 2, 4}, 0).incidence, 45, 1e-9);
  EXPECT_NEAR(paneLight(areas, {{10, 4}, {10, 1}}, 0.1, {10, 2, 1}, {7, 5, 1}, 0).incidence, 45, 1e-9);
}

TEST(PaneLight, TurnsIntoAMirrorAtItsContrast) {
  for (const double y : {2.0, 5.0, 9.0}) {
    const geometry::Point3 eye{7, y, 1.5}, on{10, 2, 1.5};
    const double closer = paneLight(shopAndStreet(8, 8), kWindow, 0.1, on, eye, 0).closer.value();
    EXPECT_EQ(paneLight(shopAndStreet(8, units::closedBy(8, -closer + 0.01)), kWindow, 0.1, on, eye, 0).mirror, false);
    EXPECT_EQ(paneLight(shopAndStreet(8, units::closedBy(8, -closer - 0.01)), kWindow, 0.1, on, eye, 0).mirror, true);
  }
}

// 7.7 % comes back of a clear pane square on: 1/13 of the light before it against 12/13 of that behind, a twelfth where
// both are alike, and half where the far side is log2(6) = 2.58 stops darker.
TEST(PaneLight, TellsWhatItReturnsOverWhatComesThrough) {
  const auto returned = [](double street) {
    return paneLight(shopAndStreet(8, street), kWindow, 0.1, {10, 2, 1.5}, {7, 2, 1.5}, 0).returned.value();
  };
  EXPECT_NEAR(returned(8), 1.0 / 12, 5e-4);
  EXPECT_NEAR(returned(units::closedBy(8, -2.585)), 0.5, 3e-3);
}

TEST(PaneLight, IsUnknownWhereASideIs) {
  const Areas shopOnly({{Outline{{{0, 0}, {10, 0}, {10, 6}, {0, 6}}}, {{{}, {{{5, 3}, 4}}}}, {}}}, {},
                       [](Point, Point) { return false; });
  const PaneLight half = paneLight(shopOnly, kWindow, 0.1, {10, 2, 1.5}, {7, 2, 1.5}, 0);
  EXPECT_FALSE(half.farStop.has_value());
  EXPECT_FALSE(half.mirror.has_value());
  EXPECT_FALSE(half.closer.has_value());
  EXPECT_FALSE(half.returned.has_value());
}

}  // namespace
}  // namespace wend::light
