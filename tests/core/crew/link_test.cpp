#include "core/crew/link.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace wend::crew {
namespace {

// Recommendation ITU-R P.525, "Calculation of free-space attenuation", formula for point-to-point links:
// L = 32.4 + 20 log f(MHz) + 20 log d(km). Values worked from it; the constant itself is 20 log(4 pi 10^9 / c)
// = 32.4478, and the recommendation rounds it, so either stays within 0.06 dB of the other.
TEST(FreeSpaceLoss, IsTheRecommendations) {
  struct Row {
    double mhz, metres, loss;
  };
  for (const Row& row : {Row{2400, 1, 40.004}, Row{2400, 100, 80.004}, Row{2400, 1000, 100.004}, Row{5200, 100, 86.720},
                         Row{5800, 100, 87.669}, Row{5800, 1000, 107.669}, Row{600, 100, 67.963}, Row{1900, 50, 71.954},
                         Row{10000, 3000, 121.942}}) {
    EXPECT_NEAR(freeSpaceLoss(row.mhz, row.metres), row.loss, 5e-4) << row.mhz << " MHz over " << row.metres << " m";
    const double exact = 20 * std::log10(4 * std::numbers::pi * row.metres * row.mhz * 1e6 / 299792458.0);
    EXPECT_NEAR(freeSpaceLoss(row.mhz, row.metres), exact, 0.06);
  }
}

TEST(FreeSpaceLoss, GrowsBySixDecibelsAtTwiceTheDistanceOrFrequencyAndNotUnderAMetre) {
  EXPECT_NEAR(freeSpaceLoss(2400, 20) - freeSpaceLoss(2400, 10), 6.0206, 1e-4);
  EXPECT_NEAR(freeSpaceLoss(4800, 10) - freeSpaceLoss(2400, 10), 6.0206, 1e-4);
  EXPECT_EQ(freeSpaceLoss(2400, 0), freeSpaceLoss(2400, 1));
  EXPECT_LT(freeSpaceLoss(2400, 0.5), freeSpaceLoss(2400, 1.1));
}

TEST(FreeSpaceReach, IsWhereTheLossIsTheBudget) {
  EXPECT_NEAR(freeSpaceReach(5800, 90), 130.79, 0.005) << "worked from the same formula";
  EXPECT_NEAR(freeSpaceLoss(5800, freeSpaceReach(5800, 90)), 90, 1e-9);
  EXPECT_NEAR(freeSpaceReach(2400, 96) / freeSpaceReach(2400, 90), std::pow(10, 0.3), 1e-9);
}

/// A wall along x = 5 from y = -5 to 5 with a door of 1 m at y = 0, shut until 10 s; its head is 2 m, the wall 3 m
/// high. It turns off to x = 9 at its upper end.
sight::Scene hall() {
  sight::SceneInput input;
  input.walls.push_back({{{5, -5}, {5, 5}, {9, 5}}, 0.1, 0, 3, 7, {}});
  sight::OpeningCut door;
  door.along = {4.5, 5.5};
  door.head = 2;
  door.fill = sight::Fill::solid;
  door.moves = sight::LeafMotion{};
  door.keys = {{10, 2, false}};
  door.shares = {1};
  door.keys.insert(door.keys.begin(), geometry::KeySpan{0, 0, false});
  door.shares.insert(door.shares.begin(), 0);
  door.tag = 3;
  input.openings.push_back(door);
  return sight::Scene(input);
}

PathLoss lossIn(double t, Point3 a, Point3 b, std::vector<Body> bodies = {}) {
  const sight::Scene scene = hall();
  return pathLoss(
      scene.at(t), a, b, 2400, bodies, [](int tag) { return tag == 7 ? 10.0 : 1000; },
      [](int tag) { return tag == 3 ? 6.0 : 1000; });
}

TEST(PathLoss, AddsTheWallItGoesThrough) {
  const PathLoss open = lossIn(0, {0, 2, 1.5}, {4, 2, 1.5});
  EXPECT_EQ(open.total, freeSpaceLoss(2400, 4));
  const PathLoss through = lossIn(0, {0, 2, 1.5}, {10, 2, 1.5});
  EXPECT_EQ(through.walls, std::vector<int>{7});
  EXPECT_NEAR(through.total, freeSpaceLoss(2400, 10) + 10, 1e-9);
}

TEST(PathLoss, PassesOverAWallAndUnderItsLintelButNotThroughIt) {
  EXPECT_TRUE(lossIn(0, {0, 2, 3.5}, {10, 2, 3.5}).walls.empty()) << "over the top";
  EXPECT_TRUE(lossIn(0, {0, 2, 6}, {10, 2, 1}).walls.empty()) << "sloping, 3.5 m high at the wall";
  EXPECT_EQ(lossIn(0, {0, 2, 4}, {10, 2, 1}).walls.size(), 1u) << "sloping, 2.5 m high at the wall";
  EXPECT_EQ(lossIn(20, {0, 0, 2.5}, {10, 0, 2.5}).walls.size(), 1u) << "the lintel above the door";
  EXPECT_TRUE(lossIn(20, {0, 0, 1.5}, {10, 0, 1.5}).walls.empty()) << "the doorway";
}

TEST(PathLoss, AddsALeafWhileItIsShutOrOnItsWay) {
  EXPECT_EQ(lossIn(5, {0, 0, 1.5}, {10, 0, 1.5}).leaves, std::vector<int>{3});
  EXPECT_NEAR(lossIn(5, {0, 0, 1.5}, {10, 0, 1.5}).total, freeSpaceLoss(2400, 10) + 6, 1e-9);
  EXPECT_TRUE(lossIn(20, {0, 0, 1.5}, {10, 0, 1.5}).leaves.empty()) << "open at a right angle, along the path";
  EXPECT_TRUE(lossIn(5, {0, 0, 2.5}, {10, 0, 2.5}).leaves.empty()) << "above the leaf";
}

TEST(PathLoss, CountsACornerOnceAndTwoPassagesTwice) {
  EXPECT_EQ(lossIn(0, {4, 6, 1.5}, {6, 4, 1.5}).walls.size(), 1u) << "through the mitred corner";
  EXPECT_EQ(lossIn(0, {4, 4, 1.5}, {8, 6, 1.5}).walls.size(), 2u) << "in through one side and out through the other";
}

TEST(PathLoss, HalvesTheRangeForABodyInTheWay) {
  const Body person{"ac1", {2, 2}, 0.25, 0, 1.8};
  EXPECT_EQ(lossIn(0, {0, 2, 1.5}, {4, 2, 1.5}, {person}).bodies, 1);
  EXPECT_NEAR(lossIn(0, {0, 2, 1.5}, {4, 2, 1.5}, {person}).total, freeSpaceLoss(2400, 4) + 6, 1e-9);
  EXPECT_EQ(lossIn(0, {0, 2, 1.9}, {4, 2, 1.9}, {person}).bodies, 0) << "over the head";
  EXPECT_EQ(lossIn(0, {0, 2.3, 1.5}, {4, 2.3, 1.5}, {person}).bodies, 0) << "beside";
  EXPECT_EQ(lossIn(0, {0, 2, 1.5}, {1.5, 2, 1.5}, {person}).bodies, 0) << "beyond the end";
}

TEST(PathLoss, IsTheSameBothWays) {
  const Body person{"ac1", {2, 1}, 0.25, 0, 1.8};
  for (const Point3 b : {Point3{10, 2, 1.2}, Point3{7, 6, 2.2}, Point3{6, 0.2, 0.4}, Point3{0, 2, 1.5}}) {
    const Point3 a{0, 0.5, 1.5};
    EXPECT_NEAR(lossIn(5, a, b, {person}).total, lossIn(5, b, a, {person}).total, 1e-9);
  }
}

TEST(PathLoss, IsPlainStraightUpAndAtNoDistance) {
  EXPECT_EQ(lossIn(0, {0, 0, 1}, {0, 0, 3}).total, freeSpaceLoss(2400, 2));
  EXPECT_EQ(lossIn(0, {0, 0, 1}, {0, 0, 1}).total, freeSpaceLoss(2400, 1));
}

}  // namespace
}  // namespace wend::crew
