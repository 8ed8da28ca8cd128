#include "core/sight/ground_map.h"

#include <gtest/gtest.h>

#include <cstdio>

#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

SceneInput randomScene(std::mt19937_64& random, bool mirror) {
  SceneInput input;
  for (int i = 0; i < 3; ++i) {
    const Point p{world::uniform(random, 0, 10), world::uniform(random, 0, 10)};
    const Vec d{world::uniform(random, -3, 3), world::uniform(random, -3, 3)};
    input.walls.push_back(world::wall({p, p + d}));
    const Point low{world::uniform(random, 0, 9), world::uniform(random, 0, 9)};
    input.pieces.push_back(world::box(low, low + Vec{1, 0.6}, 0, world::uniform(random, 0.5, 2.2)));
  }
  if (mirror) input.pieces.push_back(world::mirrorLine({3, 0.2}, {7, 0.2}, 0.3, 2.2, Side::left));
  return input;
}

GroundMapSpec specOf(double cell) {
  GroundMapSpec spec;
  spec.grid = geometry::gridOver({{0, 0}, {10, 10}}, cell);
  spec.take = {0, 1};
  return spec;
}

TEST(SeenGround, AgreesWithOneBodyACellOutsideTakenGround) {
  const std::uint64_t seed = 20266;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  std::size_t seen = 0, falseClear = 0, falseSeen = 0, cells = 0;
  for (int trial = 0; trial < 20; ++trial) {
    const Scene scene(randomScene(random, trial % 2 == 0));
    const GroundMapSpec spec = specOf(0.1);
    const SceneAt now = scene.at(0);
    const Point at{world::uniform(random, 1, 9), world::uniform(random, 1, 9)};
    const Eye eye = world::eyeAt(geometry::at(at, 1.5), world::uniform(random, 0, 360), world::uniform(random, -8, 8));
    const geometry::BitGrid taken = takenGround(now, spec);
    SeenGround ground(spec);
    const geometry::BitGrid& bits = ground.at(now, eye);
    for (std::size_t cell = 0; cell < spec.grid.cells(); cell += 7) {
      if (taken.at(cell) || geometry::distance(spec.grid.centre(cell), at) < 0.5) continue;
      ++cells;
      const Point centre = spec.grid.centre(cell);
      const bool least = bodySight(now, eye, {centre, spec.radius, 0, 1.8}).seen;
      const bool most = bodySight(now, eye, {centre, spec.radius + spec.grid.reach() + 0.02, 0, 1.8}).seen;
      seen += bits.at(cell);
      falseClear += least && !bits.at(cell);
      falseSeen += !most && bits.at(cell);
    }
  }
  std::printf("cells %zu seen %zu false clear %zu false seen %zu\n", cells, seen, falseClear, falseSeen);
  EXPECT_GT(seen, cells / 20);
  // Sampled: beams between two rays may be missed, but at the radius of the map itself hardly one.
  EXPECT_LE(falseClear, seen / 1000);
  EXPECT_LE(falseSeen, seen / 50);
}

TEST(GroundMap, RunsFollowAPan) {
  const Scene scene;
  GroundMapSpec spec = specOf(0.25);
  spec.take = {0, 12};
  const EyeAt pan = [](double t) { return world::eyeAt({5, 0, 1.5}, -60 + 10 * t); };
  const auto map = GroundMap::sampled(scene, pan, spec);
  ASSERT_TRUE(map);
  const auto cell = spec.grid.cellAt({5.1, 5.1});
  ASSERT_TRUE(cell);
  const Point centre = spec.grid.centre(*cell);
  const double middle = geometry::bearingOf(centre - Point{5, 0});
  const double reach =
      geometry::degrees(std::asin((0.28 + spec.grid.reach()) / geometry::distance(centre, Point{5, 0})));
  const auto runs = map->seenRuns(*cell);
  ASSERT_EQ(runs.size(), 1u);
  const double from = (middle - reach + 30) / 10, until = (middle + reach + 90) / 10;
  EXPECT_NEAR(map->timeOf(std::size_t{runs[0].from}), from, 0.1);
  EXPECT_NEAR(map->timeOf(std::size_t{runs[0].until}), until, 0.1);
  EXPECT_TRUE(map->seenAt(*cell, 6));
  EXPECT_FALSE(map->seenAt(*cell, 1));
  EXPECT_NEAR(map->secondsUntilSeen(1)[*cell], from - 1, 0.1);
  EXPECT_EQ(map->secondsUntilSeen(6)[*cell], 0);
  EXPECT_TRUE(std::isinf(map->secondsUntilSeen(11)[*cell]));
  EXPECT_EQ(map->clearOver({0, from - 0.2}, 0, 0)[*cell], 1);
  EXPECT_EQ(map->clearOver({0, from - 0.2}, 2, 0)[*cell], 0);
  EXPECT_EQ(map->clearOver({until + 0.2, 12}, 0, 0)[*cell], 1);
  EXPECT_EQ(map->clearOver({until + 0.2, 12}, 0, 1)[*cell], 0);
}

TEST(GroundMap, EveryCellsRunsAreTheStepsAtWhichTheInstantShowsIt) {
  std::mt19937_64 random(20267);
  const Scene scene(randomScene(random, true));
  GroundMapSpec spec = specOf(0.25);
  spec.take = {0, 2};
  spec.step = 0.125;
  const EyeAt eye = [](double t) { return world::eyeAt({2 + t, 8, 1.5}, 150 + 40 * t); };
  const auto map = GroundMap::sampled(scene, eye, spec);
  ASSERT_TRUE(map);
  ASSERT_EQ(map->steps(), 17u);
  SeenGround ground(spec);
  std::size_t seen = 0;
  for (std::size_t step = 0; step < map->steps(); ++step) {
    const geometry::BitGrid& bits = ground.at(scene.at(map->timeOf(step)), *eye(map->timeOf(step)));
    for (std::size_t cell = 0; cell < spec.grid.cells(); ++cell) {
      EXPECT_EQ(bits.at(cell), map->seenAt(cell, map->timeOf(step)));
      seen += bits.at(cell);
    }
  }
  EXPECT_GT(seen, 100u);
}

TEST(GroundMap, CancelledAtAnyPollPublishesNothing) {
  const Scene scene;
  const EyeAt eye = [](double) { return world::eyeAt({5, 0, 1.5}, 0); };
  GroundMapSpec spec = specOf(0.5);
  spec.step = 0.25;
  const base::Cancel counting;
  ASSERT_TRUE(GroundMap::sampled(scene, eye, spec, counting));
  EXPECT_EQ(counting.polls(), 5);
  for (std::int64_t k = 1; k <= counting.polls(); ++k)
    EXPECT_FALSE(GroundMap::sampled(scene, eye, spec, base::Cancel::atPoll(k))) << k;
}

TEST(TakenGround, LiesNearerThanTheRadiusToWhatBarsTheWay) {
  SceneInput input;
  input.walls.push_back(world::wall({{0, 5}, {10, 5}}));
  OpeningCut cut;
  cut.along = {4, 6};
  cut.fill = Fill::solid;
  cut.keys = {{0, 0, false}, {10, 0, false}};
  cut.shares = {0, 1};
  input.openings.push_back(cut);
  input.pieces.push_back(world::disc({2, 2}, 0.5, 0, 1));
  input.pieces.push_back(world::box({7, 1}, {9, 3}, 2.0, 2.5));  // overhead
  const Scene scene(input);
  const GroundMapSpec spec = specOf(0.1);
  const geometry::BitGrid shut = takenGround(scene.at(0), spec), open = takenGround(scene.at(11), spec);
  const auto cell = [&](double x, double y) { return spec.grid.cellAt({x, y}).value(); };
  EXPECT_TRUE(shut.at(cell(1.05, 5.35)));
  EXPECT_FALSE(shut.at(cell(1.05, 5.45)));
  EXPECT_TRUE(shut.at(cell(5.05, 5.05)));
  EXPECT_FALSE(open.at(cell(5.05, 5.05)));
  EXPECT_TRUE(open.at(cell(4.15, 5.05))) << "beside the jamb";
  EXPECT_TRUE(open.at(cell(2.05, 2.75)));
  EXPECT_FALSE(open.at(cell(2.05, 2.85)));
  EXPECT_FALSE(open.at(cell(8.05, 2.05)));
}

}  // namespace
}  // namespace wend::sight
