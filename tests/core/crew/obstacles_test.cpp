#include "core/crew/obstacles.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace wend::crew {
namespace {

/// A wall along y = 0 with a doorway from x = 2 to 3.1, its door hinged at the start and opening to the left (north)
/// from 25 to 27 s; an oven, a mixer, a pane.
sight::Scene bakery() {
  sight::SceneInput input;
  input.walls.push_back({{{0, 0}, {9, 0}}, 0.2, 0, 3.1, 0, {}});
  sight::OpeningCut door;
  door.along = {2, 3.1};
  door.fill = sight::Fill::solid;
  door.moves = sight::LeafMotion{sight::LeafKind::swing, sight::End::start, sight::Side::left, 90};
  door.keys = {{0, 0, false}, {25, 2, false}};
  door.shares = {0, 1};
  input.openings.push_back(door);
  input.pieces.push_back(
      {sight::OutlineShape{{{1.6, 7.2}, {4.4, 7.2}, {4.4, 8}, {1.6, 8}}}, 0, 2.1, {}, {}, 0, {}, {}, {}, {}});
  input.pieces.push_back({sight::DiscShape{{1, 6.2}, 0.35}, 0, 1.2, {}, {}, 1, {}, {}, {}, {}});
  input.pieces.push_back({sight::LineShape{{{6, 3}, {7, 3}}}, 0, 2, sight::Surface::glass, {}, 2, {}, {}, {}, {}});
  return sight::Scene(input);
}

Named nameOf(sight::Source source) {
  if (source.owner == sight::Owner::wall) return {"wall"};
  if (source.owner == sight::Owner::opening) return {"door"};
  const char* pieces[] = {"oven", "mixer", "pane"};
  return {pieces[source.tag], source.tag == 0};
}

const Obstacle* named(const std::vector<Obstacle>& list, const std::string& id) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const Obstacle& o) { return o.id == id; });
  return found == list.end() ? nullptr : &*found;
}

double nearest(const std::vector<Obstacle>& list, const std::string& id, Point p) {
  std::vector<Obstacle> own;
  std::copy_if(list.begin(), list.end(), std::back_inserter(own), [&](const Obstacle& o) { return o.id == id; });
  const Clearance met = clearanceAt({"op", p, 0.25, 0, 1.8}, 0, own, 100);
  double metres = 1e9;
  for (const auto& side : {met.left, met.right})
    if (side) metres = std::min(metres, side->metres);
  return metres;
}

TEST(ObstaclesOf, AreWhatStandsWithItsNameAndHeat) {
  const auto list = obstaclesOf(bakery(), nameOf);
  ASSERT_TRUE(named(list, "wall") && named(list, "oven") && named(list, "mixer") && named(list, "pane"));
  EXPECT_TRUE(named(list, "oven")->hot);
  EXPECT_FALSE(named(list, "mixer")->hot);
  EXPECT_EQ(named(list, "oven")->top, 2.1);
  EXPECT_NEAR(nearest(list, "oven", {3, 6.7}), 0.25, 1e-9);
  EXPECT_NEAR(nearest(list, "mixer", {2, 6.2}), 0.40, 1e-9);
  EXPECT_NEAR(nearest(list, "pane", {6.5, 3.5}), 0.25, 1e-9);
}

TEST(ObstaclesOf, AWallLeavesItsDoorwayFree) {
  const auto list = obstaclesOf(bakery(), nameOf);
  EXPECT_NEAR(nearest(list, "wall", {2.55, 0}), 0.30, 1e-9) << "between the jambs";
  EXPECT_NEAR(nearest(list, "wall", {6, 1}), 0.65, 1e-9) << "from the face, not from the middle";
}

TEST(LeavesOf, ADoorStandsInTheWayShutAndBesideItOpen) {
  const sight::Scene scene = bakery();
  const auto stiff = [](int) { return true; };
  const auto shut = leavesOf(scene.at(0), nameOf, stiff), open = leavesOf(scene.at(30), nameOf, stiff);
  ASSERT_EQ(shut.size(), 1u);
  EXPECT_EQ(shut[0].id, "door");
  EXPECT_NEAR(nearest(shut, "door", {2.55, 0.6}), 0.25, 1e-9) << "flush with the face it opens towards";
  EXPECT_NEAR(nearest(open, "door", {2.55, 0.6}), 0.30, 1e-9) << "square to the wall at its hinge";
  const auto way = leavesOf(scene.at(26), nameOf, stiff);
  EXPECT_LT(nearest(way, "door", {2.55, 0.6}), 0) << "on its way it swings through";
}

/// One opening 1.1 wide that is shut until 25 s and open from then on.
sight::SceneAt opening(sight::Scene& scene, sight::Fill fill, bool barsWay, double t) {
  sight::SceneInput input;
  input.walls.push_back({{{0, 0}, {9, 0}}, 0.2, 0, 3.1, 0, {}});
  sight::OpeningCut cut;
  cut.along = {2, 3.1};
  cut.fill = fill;
  cut.barsWay = barsWay;
  cut.keys = {{0, 0, false}, {25, 0, false}};
  cut.shares = {0, 1};
  input.openings.push_back(cut);
  scene = sight::Scene(input);
  return scene.at(t);
}

TEST(LeavesOf, WhatIsNotStiffCountsOnlyWhileItIsInTheWay) {
  sight::Scene scene;
  EXPECT_EQ(leavesOf(opening(scene, sight::Fill::solid, true, 0), nameOf).size(), 1u);
  EXPECT_EQ(leavesOf(opening(scene, sight::Fill::glass, true, 0), nameOf).size(), 1u);
  EXPECT_TRUE(leavesOf(opening(scene, sight::Fill::solid, true, 30), nameOf).empty());
  EXPECT_TRUE(leavesOf(opening(scene, sight::Fill::curtain, false, 0), nameOf).empty()) << "walked through";
}

TEST(LeavesOf, WhatIsStiffCountsThoughItBarsNobody) {
  sight::Scene scene;
  const auto stiff = [](int) { return true; };
  EXPECT_EQ(leavesOf(opening(scene, sight::Fill::solid, false, 0), nameOf, stiff).size(), 1u);
}

}  // namespace
}  // namespace wend::crew
