#include "core/sight/through.h"

#include <gtest/gtest.h>

#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

TEST(ThroughSights, NameTheRoomSeenAndTheOpeningsPassed) {
  SceneInput input;
  input.walls.push_back(world::wall({{-10, 5}, {10, 5}}, 0.2, 3, 1));
  input.walls.push_back(world::wall({{-10, 10}, {10, 10}}, 0.2, 3, 2));
  for (const std::size_t w : {0u, 1u}) {
    OpeningCut cut;
    cut.wall = w;
    cut.along = {9.5, 10.5};
    cut.tag = static_cast<int>(w) + 11;
    input.openings.push_back(cut);
  }
  input.openings[1].fill = Fill::solid;
  input.openings[1].keys = {{0, 0, false}, {4, 0, false}};
  input.openings[1].shares = {0, 1};
  const Scene scene(input);
  const std::vector<RoomGround> rooms{{{{-10, 0}, {10, 0}, {10, 5}, {-10, 5}}, 1},
                                      {{{-10, 5}, {10, 5}, {10, 10}, {-10, 10}}, 2}};
  const EyeAt eye = [](double t) { return world::eyeAt({0, 1, 1.5}, t < 8 ? 0 : 180, 0, 5); };
  ThroughSpec spec;
  spec.take = {0, 10};
  const auto found = throughSights(scene, rooms, eye, spec);
  ASSERT_TRUE(found);
  const auto* sights = &found->sights;
  ASSERT_EQ(sights->size(), 2u);
  EXPECT_EQ((*sights)[0].from, 1);
  EXPECT_EQ((*sights)[0].room, 2);
  EXPECT_EQ((*sights)[0].openings, (std::vector<int>{11}));
  EXPECT_NEAR((*sights)[0].time.from, 0, 1e-9);
  EXPECT_NEAR((*sights)[0].time.until, 8, 1e-9);
  EXPECT_EQ((*sights)[1].room, kOutside);
  EXPECT_EQ((*sights)[1].openings, (std::vector<int>{11, 12}));
  EXPECT_NEAR((*sights)[1].time.from, 4, 1e-9);
}

/// A wall five metres north with an opening from half a degree left of north to half a degree right of it, and an eye
/// that turns by `rate` degrees a second through a frame four degrees wide, over north at `when`.
std::vector<ThroughSight> sightsOnAPan(double rate, double when) {
  SceneInput input;
  input.walls.push_back(world::wall({{-10, 5}, {10, 5}}, 0.002));
  OpeningCut cut;
  const double half = 5 * std::tan(geometry::radians(0.5));
  cut.along = {10 - half, 10 + half};
  input.openings.push_back(cut);
  const Scene scene(input);
  const std::vector<RoomGround> rooms{{{{-10, -9}, {10, -9}, {10, 5}, {-10, 5}}, 1},
                                      {{{-10, 5}, {10, 5}, {10, 99}, {-10, 99}}, 2}};
  ThroughSpec spec;
  spec.take = {0, 2};
  spec.step = 0.2;
  const auto found = throughSights(
      scene, rooms,
      [=](double t) {
        return world::eyeAt({0, 0, 1.5}, rate * (t - when), 0, 2);
      },
      spec);
  return found->sights;
}

TEST(ThroughSights, TellWhatIsSeenBetweenTwoStepsOnly) {
  // In frame for 5 degrees of the pan: a quarter of a step, between the instants at 0.2 and 0.4.
  const auto sights = sightsOnAPan(100, 0.3);
  ASSERT_EQ(sights.size(), 1u);
  EXPECT_EQ(sights[0].room, 2);
  EXPECT_GE(sights[0].time.from, 0.275);
  EXPECT_LE(sights[0].time.from, 0.275 + 0.0125 + 0.02 / 100);
  EXPECT_GE(sights[0].time.until, 0.325 - 0.02 / 100);
  EXPECT_LE(sights[0].time.until, 0.325 + 0.0125);
}

TEST(ThroughSights, EndWithinTheBoundOfWhereTheyTrulyDo) {
  for (const double when : {0.61, 0.7, 0.83, 0.99}) {
    const auto sights = sightsOnAPan(10, when);
    ASSERT_EQ(sights.size(), 1u) << when;
    EXPECT_GE(sights[0].time.from, when - 0.25) << when;
    EXPECT_LE(sights[0].time.from, when - 0.25 + 0.0125 + 0.02 / 10) << when;
    EXPECT_GE(sights[0].time.until, when + 0.25 - 0.02 / 10) << when;
    EXPECT_LE(sights[0].time.until, when + 0.25 + 0.0125) << when;
  }
}

}  // namespace
}  // namespace wend::sight
