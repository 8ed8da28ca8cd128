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

TEST(GroundMap, CallsNoCellClearInWhichSomebodyIsSeenAtAnyInstant) {
  const std::uint64_t seed = 20266;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  std::size_t seen = 0, unseen = 0, falseClear = 0, falseSeen = 0;
  for (int trial = 0; trial < 12; ++trial) {
    const Scene scene(randomScene(random, trial % 2 == 0));
    const GroundMapSpec spec = specOf(0.1);
    const Point at{world::uniform(random, 1, 9), world::uniform(random, 1, 9)};
    const double bearing = world::uniform(random, 0, 360), pan = world::uniform(random, -60, 60);
    const EyeAt eye = [&](double t) {
      return world::eyeAt(geometry::at(at + geometry::Vec{0.5 * t, 0.3 * t}, 1.5), bearing + pan * t);
    };
    const auto map = GroundMap::over(scene, eye, spec);
    ASSERT_TRUE(map);
    const geometry::BitGrid taken = takenGround(scene.at(0), spec);
    for (int n = 0; n < 1500; ++n) {
      const auto cell = static_cast<std::size_t>(world::uniform(random, 0, 1) * double(spec.grid.cells()));
      if (taken.at(cell)) continue;
      const double t = world::uniform(random, 0, 1);
      const auto inCell = [&] { return world::uniform(random, -0.5, 0.5) * spec.grid.cell; };
      const Point centre = spec.grid.centre(cell);
      const bool least = bodySight(scene.at(t), *eye(t), {centre + Vec{inCell(), inCell()}, spec.radius, 0, 1.8}).seen;
      falseClear += least && !map->seenAt(cell, t);
      // Against the largest body at both ends and the middle of the step: a lower bound on what is seen during it.
      bool most = least;
      const double from = std::floor(t / spec.step) * spec.step;
      for (const double there : {from, from + spec.step / 2, from + spec.step})
        most = most || bodySight(scene.at(there), *eye(there), {centre, spec.radius + spec.grid.reach(), 0, 1.8}).seen;
      seen += most, unseen += !most;
      falseSeen += !most && map->seenAt(cell, t);
    }
  }
  std::printf("seen %zu unseen %zu false clear %zu false seen %zu\n", seen, unseen, falseClear, falseSeen);
  EXPECT_EQ(falseClear, 0u);
  EXPECT_GT(seen, 1000u);
  EXPECT_LE(falseSeen, seen / 20);
}

TEST(GroundMap, RunsFollowAPan) {
  const Scene scene;
  GroundMapSpec spec = specOf(0.25);
  spec.take = {0, 12};
  const EyeAt pan = [](double t) { return world::eyeAt({5, 0, 1.5}, -60 + 10 * t); };
  const auto map = GroundMap::over(scene, pan, spec);
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
  EXPECT_LE(map->timeOf(runs[0]).from, from);
  EXPECT_NEAR(map->timeOf(runs[0]).from, from, 2 * spec.step);
  EXPECT_GE(map->timeOf(runs[0]).until, until);
  EXPECT_NEAR(map->timeOf(runs[0]).until, until, 2 * spec.step);
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

TEST(ClearGround, IsWhatTheMapCallsClear) {
  const std::uint64_t seed = 20271;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  std::size_t clearCells = 0, barred = 0;
  for (int trial = 0; trial < 24; ++trial) {
    const Scene scene(randomScene(random, trial % 2 == 0));
    GroundMapSpec spec = specOf(0.2);
    spec.take = {0, 14};
    // Walks, halts, turns on, and is not there for a while.
    const Point at{world::uniform(random, 1, 9), world::uniform(random, 1, 9)};
    const double bearing = world::uniform(random, 0, 360), pan = world::uniform(random, -40, 40);
    const EyeAt eye = [&](double t) -> std::optional<Eye> {
      if (trial % 3 == 0 && t > 4 && t < 5) return std::nullopt;
      const double walked = std::min(t, 6.0) / 6;
      return world::eyeAt(geometry::at(at + Vec{0.5 * walked, 0.3 * walked}, 1.5 + 0.02 * t), bearing + pan * t);
    };
    const auto map = GroundMap::over(scene, eye, spec);
    ASSERT_TRUE(map);
    for (const Span span : {Span{0, 14}, Span{3, 4}, Span{7, 7}, Span{13.9, 14}, Span{20, 22}})
      for (const auto& [early, late] : {std::pair{0.0, 0.0}, std::pair{2.0, 0.5}}) {
        const auto clear = clearGround(scene, eye, spec, span, early, late, trial % 2 + 1);
        ASSERT_TRUE(clear);
        const auto cells = map->clearOver(span, early, late);
        for (std::size_t cell = 0; cell < cells.size(); ++cell)
          ASSERT_EQ(clear->at(cell), cells[cell] != 0)
              << "trial " << trial << " cell " << cell << " span " << span.from;
        clearCells += clear->count(), barred += cells.size() - clear->count();
      }
  }
  EXPECT_GT(clearCells, 10000u);
  EXPECT_GT(barred, 10000u);
}

TEST(ClearGround, PublishesNothingWhenCancelled) {
  const Scene scene;
  GroundMapSpec spec = specOf(0.25);
  spec.take = {0, 5};
  const EyeAt pan = [](double t) { return world::eyeAt({5, 0, 1.5}, -60 + 10 * t); };
  const base::Cancel never;
  ASSERT_TRUE(clearGround(scene, pan, spec, spec.take, 0, 0, 1, never));
  ASSERT_GT(never.polls(), 60);
  for (std::int64_t poll = 1; poll <= never.polls(); ++poll)
    EXPECT_FALSE(clearGround(scene, pan, spec, spec.take, 0, 0, 1, base::Cancel::atPoll(poll))) << poll;
}

TEST(GroundMap, IsTheSameOnOneThreadAndTwo) {
  std::mt19937_64 random(20267);
  const Scene scene(randomScene(random, true));
  GroundMapSpec spec = specOf(0.25);
  spec.take = {0, 12};
  const EyeAt eye = [](double t) { return world::eyeAt({2 + t / 4, 8, 1.5}, 150 + 40 * t); };
  const auto one = GroundMap::over(scene, eye, spec, 1), two = GroundMap::over(scene, eye, spec, 2);
  ASSERT_TRUE(one && two);
  EXPECT_TRUE(one->steps() == two->steps());
  EXPECT_GT(one->steps().runs(), 100u);
}

TEST(GroundMap, LooksAgainOnlyAtTheStepsThatAnEarlierMapHasOtherwise) {
  std::mt19937_64 random(20268);
  const SceneInput input = randomScene(random, true);
  const Scene scene(input);
  GroundMapSpec spec = specOf(0.25);
  spec.take = {0, 40};
  // One who walks on and turns, and another who between two times goes beside them.
  const auto eyeOff = [](Span beside, double by) {
    return [=](double t) {
      const double off = beside.contains(t) ? by : 0;
      return world::eyeAt({2 + t / 8 + off, 8, 1.5}, 150 + 20 * t);
    };
  };
  const auto first = GroundMap::over(scene, eyeOff({0, 0}, 0), spec);
  ASSERT_TRUE(first);
  EXPECT_EQ(first->stepsFound(), 960u);
  for (const Span beside : {Span{0, 5}, Span{12, 14}, Span{39, 40}, Span{-2, -1}}) {
    const EyeAt eye = eyeOff(beside, 0.4);
    const auto without = GroundMap::over(scene, eye, spec), with = GroundMap::over(scene, eye, spec, 1, {}, &*first);
    ASSERT_TRUE(without && with);
    EXPECT_TRUE(with->steps() == without->steps());
    EXPECT_EQ(with->steps() == first->steps(), beside.until < 0);
    EXPECT_LE(with->stepsFound(), beside.until < 0 ? 0 : 24 * beside.length() + 3);
  }
  SceneInput moved = input;
  moved.walls[0].points[0].x += 0.5;
  GroundMapSpec taller = spec;
  taller.top = 2.1;
  for (const auto& [set, asked] : {std::pair{Scene(moved), spec}, std::pair{scene, taller}}) {
    const auto without = GroundMap::over(set, eyeOff({0, 0}, 0), asked);
    const auto with = GroundMap::over(set, eyeOff({0, 0}, 0), asked, 1, {}, &*first);
    EXPECT_TRUE(with->steps() == without->steps());
    EXPECT_EQ(with->stepsFound(), 960u);
  }
}

TEST(GroundMap, IsOfEveryStepWhereTheLensRestsAndALeafOpens) {
  SceneInput input;
  input.walls.push_back(world::wall({{0, 5}, {10, 5}}));
  OpeningCut cut;
  cut.along = {4, 6};
  cut.fill = Fill::solid;
  cut.keys = {{0, 0, false}, {5.3, 0, false}, {7, 0, false}};
  cut.shares = {0, 1, 0};
  input.openings.push_back(cut);
  const Scene scene(input);
  GroundMapSpec spec = specOf(0.25);
  spec.take = {0, 10};
  const EyeAt rests = [](double) { return world::eyeAt({5, 1, 1.5}, 0); };
  const auto map = GroundMap::over(scene, rests, spec);
  const auto runs = map->seenRuns(*spec.grid.cellAt({5.1, 8.1}));
  ASSERT_EQ(runs.size(), 1u);
  EXPECT_LE(map->timeOf(runs[0]).from, 5.3);
  EXPECT_NEAR(map->timeOf(runs[0]).from, 5.3, 2 * spec.step);
  EXPECT_GE(map->timeOf(runs[0]).until, 7);
  EXPECT_NEAR(map->timeOf(runs[0]).until, 7, 2 * spec.step);
}

TEST(GroundMap, SeesOverACounterAndNotBehindItsWall) {
  SceneInput input;
  input.pieces.push_back(world::box({4, 4}, {6, 4.2}, 0, 1.0));
  const Scene scene(input);
  const EyeAt eye = [](double) { return world::eyeAt({5, 0, 1.5}, 0); };
  GroundMapSpec spec = specOf(0.1);
  const auto cell = spec.grid.cellAt({5.05, 4.75}).value();
  const auto standing = GroundMap::over(scene, eye, spec);
  EXPECT_FALSE(standing->seenRuns(cell).empty());
  spec.top = 0.8;
  const auto sitting = GroundMap::over(scene, eye, spec);
  EXPECT_TRUE(sitting->seenRuns(cell).empty());
  EXPECT_FALSE(sitting->seenRuns(spec.grid.cellAt({5.05, 9.05}).value()).empty()) << "far behind it is looked over";
}

TEST(GroundMap, CancelledAtAnyPollPublishesNothing) {
  const Scene scene;
  const EyeAt eye = [](double) { return world::eyeAt({5, 0, 1.5}, 0); };
  GroundMapSpec spec = specOf(0.5);
  spec.step = 0.25;
  const base::Cancel counting;
  ASSERT_TRUE(GroundMap::over(scene, eye, spec, 1, counting));
  EXPECT_GE(counting.polls(), 8);
  for (std::int64_t k = 1; k <= counting.polls(); ++k)
    EXPECT_FALSE(GroundMap::over(scene, eye, spec, 1, base::Cancel::atPoll(k))) << k;
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
