// The fan against the loss of single paths, at thousands of places.
#include "core/crew/link_fan.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <random>

namespace wend::crew {
namespace {

constexpr double kMhz = 2400;

/// A wall with a mitred corner and a shut door, a half wall, and a wall that begins above the floor.
sight::Scene scene() {
  sight::SceneInput input;
  input.walls.push_back({{{2, -3}, {2, 2}, {6, 3}}, 0.2, 0, 2.6, 1, {}});
  input.walls.push_back({{{-4, 1}, {1, 4}}, 0.3, 0, 1.3, 2, {}});
  input.walls.push_back({{{-3, -2}, {1, -4}}, 0.1, 1.4, 2.6, 3, {}});
  sight::OpeningCut door;
  door.along = {1.07, 2.2};  // no jamb lies on a ray
  door.head = 2;
  door.fill = sight::Fill::solid;
  door.tag = 7;
  input.openings.push_back(door);
  return sight::Scene(input);
}

double ofWall(int tag) {
  return 10 * tag;
}
double ofLeaf(int) {
  return 5;
}

TEST(LinkFan, IsTheLossOfTheWorseOfTheTwoRaysBesideAPlace) {
  const sight::Scene set = scene();
  const sight::SceneAt now = set.at(0);
  const std::vector<Body> bodies = {{"tom", {0.5, -1.5}, 0.3, 0, 1.8}, {"mara", {-1, 0.5}, 0.3, 0, 1.0}};
  const Point3 aerial{0, 0, 1.5};
  const LinkFan fan(now, aerial, kMhz, 12, bodies, ofWall, ofLeaf);
  std::mt19937 random(20240611);
  std::uniform_real_distribution<double> turn(0, 2 * std::numbers::pi), far(0.1, 9), high(0.2, 2.5);
  int blocked = 0;
  for (int i = 0; i < 5000; ++i) {
    const double angle = turn(random), run = far(random), height = high(random);
    const auto lossAt = [&](double way) {
      const Point3 other{run * std::cos(way), run * std::sin(way), height};
      return pathLoss(now, aerial, other, kMhz, bodies, ofWall, ofLeaf).total;
    };
    const double step = 2 * std::numbers::pi / 720, before = std::floor(angle / step) * step;
    const double loss = fan.lossTo({run * std::cos(angle), run * std::sin(angle), height});
    EXPECT_NEAR(loss, std::max(lossAt(before), lossAt(before + step)), 1e-6) << angle << " " << run << " " << height;
    blocked += loss > freeSpaceLoss(kMhz, run) + 4;
  }
  EXPECT_GT(blocked, 500);
  EXPECT_LT(blocked, 4500);
}

TEST(LinkFan, SaysNothingOfWhatLiesFurtherAwayThanItLooked) {
  const sight::Scene set = scene();
  const LinkFan fan(set.at(0), {0, 0, 1.5}, kMhz, 5, {}, ofWall, ofLeaf);
  EXPECT_EQ(fan.lossTo({-5.01, 0, 1.5}), std::numeric_limits<double>::infinity());
  EXPECT_NEAR(fan.lossTo({-4.99, 0, 1.5}), freeSpaceLoss(kMhz, 4.99), 1e-9);
  EXPECT_EQ(fan.lossTo({0, 0, 1.2}), freeSpaceLoss(kMhz, 0.3)) << "under the aerial";
}

}  // namespace
}  // namespace wend::crew
