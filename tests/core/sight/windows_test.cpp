#include "core/sight/windows.h"

#include <gtest/gtest.h>

#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

/// A pan at 10 degrees a second over a person due north at 5 m, half frame 30 degrees.
const EyeAt kPan = [](double t) { return world::eyeAt({0, 0, 1.5}, -60 + 10 * t); };
const BodyAt kStands = [](double) { return Body{{0, 5}, 0.28, 0, 1.8}; };

TEST(SightWindows, EdgesOfAPanLieAtTheTangentOfTheBody) {
  const Scene scene;
  const auto windows = sightWindows(scene, kPan, kStands, {{0, 12}, 24, 0, 0});
  ASSERT_TRUE(windows);
  const double reach = geometry::degrees(std::asin(0.28 / 5));
  ASSERT_EQ(windows->seen.size(), 1u);
  EXPECT_NEAR(windows->seen[0].time.from, (30 - reach) / 10, 1e-3);
  EXPECT_NEAR(windows->seen[0].time.until, (90 + reach) / 10, 1e-3);
  EXPECT_FALSE(windows->seen[0].mirror);
}

TEST(SightWindows, ClearSpansAreTheRestGrownByEarlyAndLate) {
  const Scene scene;
  const auto windows = sightWindows(scene, kPan, kStands, {{0, 12}, 24, 2, 1});
  ASSERT_TRUE(windows);
  const Span seen = windows->seen.at(0).time;
  ASSERT_EQ(windows->clear.size(), 2u);
  EXPECT_DOUBLE_EQ(windows->clear[0].time.until, seen.from - 2);
  EXPECT_DOUBLE_EQ(windows->clear[1].time.from, seen.until + 1);
  EXPECT_EQ(windows->clear[1].time.until, 12);
  // Two seconds at ten degrees before the edge the frame is about twenty degrees away.
  EXPECT_NEAR(windows->clear[0].marginDegrees, 20, 0.5);
  const auto noClear = sightWindows(scene, kPan, kStands, {{0, 12}, 24, 3, 3});
  ASSERT_TRUE(noClear);
  EXPECT_TRUE(noClear->clear.empty());
}

TEST(SightWindows, AWalkerIsSeenFromTheLineOverTheWallsEnd) {
  SceneInput input;
  input.walls.push_back(world::wall({{-9, 2}, {0, 2}}, 0.0002));
  const Scene scene(input);
  // Slender, along y = 4 at 1 m/s from x = -3: the line over the end (0, 2) from the pupil at (-1, 0) is at x = 1.
  const EyeAt eye = [](double) { return world::eyeAt({-1, 0, 1.5}, 20); };
  const BodyAt walks = [](double t) { return Body{{-3 + t, 4}, 1e-6, 0, 1.8}; };
  const auto windows = sightWindows(scene, eye, walks, {{0, 6}, 24, 0, 0});
  ASSERT_TRUE(windows);
  ASSERT_EQ(windows->seen.size(), 1u);
  EXPECT_NEAR(windows->seen[0].time.from, 4, 2e-3);
}

TEST(SightWindows, ALeafThatOpensAtACutShowsFromThatInstant) {
  SceneInput input;
  input.walls.push_back(world::wall({{-4, 2}, {4, 2}}));
  OpeningCut cut;
  cut.along = {3.5, 4.5};
  cut.fill = Fill::solid;
  cut.keys = {{0, 0, false}, {3.0123, 0, false}, {7.2, 0.5, false}};
  cut.shares = {0, 1, 0};
  input.openings.push_back(cut);
  const Scene scene(input);
  const EyeAt eye = [](double) { return world::eyeAt({0, 0, 1.5}, 0); };
  const auto windows = sightWindows(scene, eye, kStands, {{0, 10}, 24, 0, 0});
  ASSERT_TRUE(windows);
  ASSERT_EQ(windows->seen.size(), 1u);
  EXPECT_NEAR(windows->seen[0].time.from, 3.0123, 1e-9);
  EXPECT_NEAR(windows->seen[0].time.until, 7.7, 1e-9);
}

TEST(SightWindows, NobodyIsSeenWithoutALensOrABody) {
  const Scene scene;
  const EyeAt none = [](double) { return std::optional<Eye>{}; };
  const BodyAt late = [](double t) { return t < 6 ? std::optional<Body>{} : kStands(t); };
  const auto dark = sightWindows(scene, none, kStands, {{0, 12}, 24, 0, 0});
  ASSERT_TRUE(dark);
  EXPECT_TRUE(dark->seen.empty());
  EXPECT_EQ(dark->clear.size(), 1u);
  const auto half = sightWindows(scene, kPan, late, {{0, 12}, 24, 0, 0});
  ASSERT_TRUE(half);
  ASSERT_EQ(half->seen.size(), 1u);
  EXPECT_NEAR(half->seen[0].time.from, 6, 1e-3);
}

TEST(SightWindows, CancelledAtAnyPollPublishNothing) {
  const Scene scene;
  const Watch watch{{0, 1}, 4, 0, 0};
  const base::Cancel counting;
  ASSERT_TRUE(sightWindows(scene, kPan, kStands, watch, counting));
  for (std::int64_t k = 1; k <= counting.polls(); ++k)
    EXPECT_FALSE(sightWindows(scene, kPan, kStands, watch, base::Cancel::atPoll(k))) << k;
}

}  // namespace
}  // namespace wend::sight
