// A mirror along the y axis that shows to the west, and a lens three metres before it.
#include "core/sight/moving_mirror.h"

#include <gtest/gtest.h>

#include "core/sight/mirror_plan.h"

namespace wend::sight {
namespace {

constexpr Segment kFace{{0, 0}, {0, 2}};

SweptStep lensAt(Point from, Point until) {
  return {{from, 90, 30}, {until, 90, 30}, 0, 0};
}

/// All ground about the mirror.
SweptRegion everywhere() {
  SweptRegion region;
  const std::array<Point, 4> corners{Point{-9, -9}, Point{9, -9}, Point{9, 9}, Point{-9, 9}};
  for (std::size_t i = 0; i < 4; ++i) region.ring.push_back({corners[i], corners[(i + 1) % 4]});
  return region;
}

TEST(MovingMirror, ThatRestsIsLookedIntoAsItStands) {
  const SweptStep lens = lensAt({-3, 1}, {-3, 1.2});
  const auto glass = lookInto(kFace, {0, 0}, lens, everywhere());
  ASSERT_TRUE(glass);
  EXPECT_FALSE(glass->beside);
  EXPECT_EQ(glass->back, kFace);
  EXPECT_EQ(glass->seer, imageOf(lens, kFace));
}

// Half a step of 0.1 m and a degree, at 3.01 m at most from the middle of the face.
TEST(MovingMirror, IsAsMuchWiderAsItGoes) {
  const SweptStep lens = lensAt({-3, 1}, {-3, 1.2});
  const auto glass = lookInto(kFace, {0.1, 1}, lens, everywhere());
  ASSERT_TRUE(glass);
  const double sway = 2 * 0.1 + 2 * std::sin(geometry::radians(1)) * std::hypot(3, 0.2);
  EXPECT_NEAR(glass->image.sway, sway, 1e-12);
  EXPECT_EQ(glass->image.turn, 2);
  EXPECT_NEAR(glass->back.a.x, 0.1, 1e-12) << "behind it, and further on than its ends";
  EXPECT_LT(glass->back.a.y, -0.1);
  EXPECT_GT(glass->back.b.y, 2.1);
  EXPECT_NEAR(glass->front.a.x, -0.1, 1e-12);
}

TEST(MovingMirror, SeesAllRoundFromTheGlassWhenTheLensIsBesideIt) {
  const auto glass = lookInto(kFace, {0.1, 1}, lensAt({-0.2, -3}, {-0.2, -3}), everywhere());
  ASSERT_TRUE(glass);
  EXPECT_TRUE(glass->beside);
  EXPECT_EQ(glass->seer.from.halfAngle, 180);
  EXPECT_EQ(wallsPast(*glass, {}, {{-9, -9}, {9, 9}}).size(), 0u) << "and nothing closes its line";
}

TEST(MovingMirror, ShowsNothingToWhoStaysBehindItOrSeesNoneOfIt) {
  EXPECT_FALSE(lookInto(kFace, {0.1, 1}, lensAt({3, 1}, {3, 1.2}), everywhere()));
  EXPECT_TRUE(lookInto(kFace, {0.1, 1}, lensAt({0.05, 1}, {0.05, 1}), everywhere())) << "it may come past the lens";
  EXPECT_FALSE(lookInto(kFace, {0.1, 1}, lensAt({-3, 1}, {-3, 1.2}), SweptRegion{}));
}

TEST(MovingMirror, AsksItsEdgesWhereWhoIsHiddenIsHiddenAtTheGlass) {
  const auto glass = lookInto(kFace, {0.1, 1}, lensAt({-3, 1}, {-3, 1.2}), everywhere());
  ASSERT_TRUE(glass);
  EXPECT_EQ(edgeBelow(*glass, 0.8, {1.5, 1.6}), glass->back);
  EXPECT_EQ(edgeBelow(*glass, 0.8, {0.5, 0.6}), glass->front);
  EXPECT_EQ(edgeAbove(*glass, 1.8, {1.5, 1.6}), glass->back);
  EXPECT_EQ(edgeAbove(*glass, 1.8, {1.9, 2.0}), glass->front);
}

TEST(MovingMirror, KeepsOnlyWallsPastItAndClosesTheRestOfItsLine) {
  const auto glass = lookInto(kFace, {0.1, 1}, lensAt({-3, 1}, {-3, 1.2}), everywhere());
  ASSERT_TRUE(glass);
  const std::vector<Segment> walls{{{-1, 0}, {-1, 2}}, {{-0.05, 0}, {-0.05, 2}}, {{1, 0}, {1, 2}}};
  const auto past = wallsPast(*glass, walls, {{-9, -9}, {9, 9}});
  ASSERT_EQ(past.size(), 3u) << "one wall, and the line on both sides of the window";
  EXPECT_EQ(past[0], walls[0]);
  EXPECT_EQ(past[1].b, glass->back.a);
  EXPECT_EQ(past[2].a, glass->back.b);
}

}  // namespace
}  // namespace wend::sight
