#include "core/crew/boom.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace wend::crew {
namespace {

constexpr BoomPole kPole{3, 1.45, 0.15, 0.4, 0.9};

TEST(TopOfFrame, RisesWithDistanceAndTilt) {
  const geometry::Pose level{{0, 0, 1.5}, 0, 0};
  EXPECT_NEAR(*topOfFrame(level, 0.25, {0, 4}), 2.5, 1e-12);
  EXPECT_NEAR(*topOfFrame(level, 0.25, {3, 4}), 2.5, 1e-12) << "the same as far aside";
  const geometry::Pose up{{0, 0, 1.5}, 90, 10};
  EXPECT_NEAR(*topOfFrame(up, std::tan(geometry::radians(15)), {4, 0}), 1.5 + 4 * std::tan(geometry::radians(25)),
              1e-12);
  const geometry::Pose down{{0, 0, 1.5}, 90, -20};
  EXPECT_LT(*topOfFrame(down, std::tan(geometry::radians(15)), {4, 0}), 1.5);
}

TEST(TopOfFrame, IsNowhereBehindTheLensOrStraightUp) {
  EXPECT_FALSE(topOfFrame({{0, 0, 1.5}, 0, 0}, 0.25, {0, -4}));
  EXPECT_FALSE(topOfFrame({{0, 0, 1.5}, 0, 80}, std::tan(geometry::radians(15)), {0, 4}));
}

TEST(TopOfFrame, IsThePlaceThatProjectsToTheUpperEdge) {
  const geometry::Pose pupil{{1, 2, 1.6}, 37, -4};
  for (const Point place : {Point{3, 4}, Point{2.5, 6}, Point{5, 3}}) {
    const auto view = pupil.view(geometry::at(place, *topOfFrame(pupil, 0.2, place)));
    EXPECT_NEAR(view.up / view.ahead, 0.2, 1e-12);
  }
}

TEST(BoomStand, StaysOverTheTopOfTheFrame) {
  const BoomStand stand = boomStand(kPole, {0, 0}, 0.1, {2, 0, 1.5}, FrameTop{2.0});
  EXPECT_NEAR(stand.microphone.z, 2.15, 1e-12);
  EXPECT_NEAR(stand.gap, 0.65, 1e-12);
  EXPECT_NEAR(stand.reach, 2, 1e-12) << "on the level, whatever the heights";
  EXPECT_NEAR(stand.shoulder.z, 1.55, 1e-12);
}

TEST(BoomStand, NeverComesNearerThanThePoleAllows) {
  EXPECT_NEAR(boomStand(kPole, {0, 0}, 0, {2, 0, 1.5}, FrameTop{1.6}).gap, 0.4, 1e-12) << "a tight frame";
  EXPECT_NEAR(boomStand(kPole, {0, 0}, 0, {2, 0, 1.5}, std::nullopt).gap, 0.4, 1e-12) << "out of the picture";
}

/// The least gap over the edge found by looking at places a millimetre apart along the look.
double leastGap(const FrameTop& top, double mouth) {
  double least = 1e9;
  for (double lean = -top.distance; lean < 2; lean += 0.001)
    least = std::min(least, std::hypot(lean, top.height + kPole.above + top.rise * lean - mouth));
  return least;
}

TEST(BoomStand, ComesOutTowardsTheLensWhereTheFrameIsHigh) {
  const geometry::Pose pupil{{0, 0, 1.5}, 90, 5};
  for (const double tangent : {0.15, 0.3, 0.5, 0.8, 1.5}) {
    const Point3 mouth{3, 0.4, 1.5};
    const FrameTop top = *frameTopAt(pupil, tangent, flat(mouth));
    const BoomStand stand = boomStand(kPole, {3, 3}, 0, mouth, top);
    const double straight = std::max(top.height + kPole.above - mouth.z, kPole.nearest), least = leastGap(top, 1.5);
    EXPECT_NEAR(stand.gap, straight <= kPole.furthest ? straight : std::max(least, kPole.furthest), 1e-5) << tangent;
    EXPECT_NEAR(stand.microphone.z, *topOfFrame(pupil, tangent, flat(stand.microphone)) + kPole.above, 1e-9);
    EXPECT_EQ(stand.microphone.x<3 - 1e-9, straight> kPole.furthest) << "towards the lens, which is to the west";
    EXPECT_NEAR(stand.microphone.y, 0.4, 1e-9);
    EXPECT_NEAR(stand.reach, geometry::distance({3, 3}, flat(stand.microphone)), 1e-12);
  }
}

TEST(BoomStand, ComesOutAwayFromALensThatLooksDown) {
  const geometry::Pose pupil{{0, 0, 6}, 90, -50};
  const Point3 mouth{2, 0, 1.5};
  const FrameTop top = *frameTopAt(pupil, std::tan(geometry::radians(10)), flat(mouth));
  const BoomStand stand = boomStand(kPole, {2, 3}, 0, mouth, top);
  EXPECT_GT(top.height + kPole.above - 1.5, kPole.furthest);
  EXPECT_GT(stand.microphone.x, 2);
  EXPECT_NEAR(stand.gap, std::max(leastGap(top, 1.5), kPole.furthest), 1e-5);
}

TEST(LampBeside, MeasuresFromThePolesWholeLength) {
  const BoomStand stand = boomStand(kPole, {0, 0}, 0, {2, 0, 1.05}, std::nullopt);  // level, 1.45 m up
  const std::vector<Point3> lamps{{1, 0, 1.75}, {1, 0.2, 1.45}, {3, 0, 1.45}};
  const auto near = lampBeside(stand, lamps);
  ASSERT_TRUE(near);
  EXPECT_EQ(near->lamp, 1u);
  EXPECT_NEAR(near->metres, 0.2, 1e-12);
  EXPECT_NEAR(lampBeside(stand, std::vector<Point3>{lamps[0]})->metres, 0.3, 1e-12) << "above the middle";
  EXPECT_NEAR(lampBeside(stand, std::vector<Point3>{lamps[2]})->metres, 1, 1e-12) << "beyond the microphone";
  EXPECT_FALSE(lampBeside(stand, {}));
}

}  // namespace
}  // namespace wend::crew
