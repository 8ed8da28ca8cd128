#include "core/sight/windows.h"

#include <gtest/gtest.h>

#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

/// A pan at 10 degrees a second over a person due north at 5 m, half frame 30 degrees.
const EyeAt kPan = [](double t) { return world::eyeAt({0, 0, 1.5}, -60 + 10 * t); };
const BodyAt kStands = [](double) { return Body{{0, 5}, 0.28, 0, 1.8}; };

std::optional<SightWindows> windowsOf(const Scene& scene, const EyeAt& eye, const BodyAt& body, Span take,
                                      Watch watch = {}, const base::Cancel& cancel = {}) {
  const auto look = TakeLook::over(scene, eye, {take, 24, {0, 1.8}, {{-10, -10}, {10, 10}}}, {}, cancel);
  return look ? sightWindows(*look, body, watch, kNobody, cancel) : std::nullopt;
}

TEST(SightWindows, EdgesOfAPanLieAtTheTangentOfTheBody) {
  const Scene scene;
  const auto windows = windowsOf(scene, kPan, kStands, {0, 12});
  ASSERT_TRUE(windows);
  const double reach = geometry::degrees(std::asin(0.28 / 5));
  ASSERT_EQ(windows->seen.size(), 1u);
  EXPECT_NEAR(windows->seen[0].time.from, (30 - reach) / 10, 1e-3);
  EXPECT_NEAR(windows->seen[0].time.until, (90 + reach) / 10, 1e-3);
  EXPECT_FALSE(windows->seen[0].mirror);
}

TEST(SightWindows, AGapNoLongerThanEdgesAreFoundToIsNone) {
  const Scene scene;
  const EyeAt still = [](double) { return world::eyeAt({0, 0, 1.5}, 0); };
  const double frame = 1 + 1.0 / 24;
  const auto seenSpans = [&](double before, double after) {
    const BodyAt blinks = [&](double t) {
      return t > frame - before && t < frame + after ? std::nullopt : std::optional(Body{{0, 5}, 0.28, 0, 1.8});
    };
    const auto windows = windowsOf(scene, still, blinks, {0, 2});
    return windows ? windows->seen.size() : 0;
  };
  EXPECT_EQ(seenSpans(0.0007, 0.0003), 1u);
  EXPECT_EQ(seenSpans(0.007, 0.003), 2u);
}

TEST(SightWindows, ClearSpansAreTheRestGrownByEarlyAndLate) {
  const Scene scene;
  const auto windows = windowsOf(scene, kPan, kStands, {0, 12}, {2, 1});
  ASSERT_TRUE(windows);
  const Span seen = windows->seen.at(0).time;
  ASSERT_EQ(windows->clear.size(), 2u);
  EXPECT_DOUBLE_EQ(windows->clear[0].time.until, seen.from - 2);
  EXPECT_DOUBLE_EQ(windows->clear[1].time.from, seen.until + 1);
  EXPECT_EQ(windows->clear[1].time.until, 12);
  // Two seconds at ten degrees before the edge the frame is about twenty degrees away.
  EXPECT_NEAR(windows->clear[0].marginDegrees, 20, 0.5);
  const auto noClear = windowsOf(scene, kPan, kStands, {0, 12}, {3, 3});
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
  const auto windows = windowsOf(scene, eye, walks, {0, 6});
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
  const auto windows = windowsOf(scene, eye, kStands, {0, 10});
  ASSERT_TRUE(windows);
  ASSERT_EQ(windows->seen.size(), 1u);
  EXPECT_NEAR(windows->seen[0].time.from, 3.0123, kEdgeSeconds);
  EXPECT_NEAR(windows->seen[0].time.until, 7.7, kEdgeSeconds);
  EXPECT_LE(windows->seen[0].time.from, 3.0123) << "never after what is seen";
  EXPECT_GE(windows->seen[0].time.until, 7.7);
}

TEST(SightWindows, NobodyIsSeenWithoutALensOrABody) {
  const Scene scene;
  const EyeAt none = [](double) { return std::optional<Eye>{}; };
  const BodyAt late = [](double t) { return t < 6 ? std::optional<Body>{} : kStands(t); };
  const auto dark = windowsOf(scene, none, kStands, {0, 12});
  ASSERT_TRUE(dark);
  EXPECT_TRUE(dark->seen.empty());
  EXPECT_EQ(dark->clear.size(), 1u);
  const auto half = windowsOf(scene, kPan, late, {0, 12});
  ASSERT_TRUE(half);
  ASSERT_EQ(half->seen.size(), 1u);
  EXPECT_NEAR(half->seen[0].time.from, 6, 1e-3);
}

/// Four metres up and level, half frame 20 degrees: at 3 m nobody reaches into it, at 8 m the head does.
TEST(SightWindows, WhoStandsUnderTheFrameIsClear) {
  const Scene scene;
  const EyeAt crane = [](double t) { return world::eyeAt({0, 0, 4}, 2 * t); };
  const auto at = [&](double north, double top) {
    const BodyAt body = [=](double) { return Body{{0, north}, 0.28, 0, top}; };
    return windowsOf(scene, crane, body, {0, 5});
  };
  EXPECT_TRUE(at(3, 1.8)->seen.empty());
  EXPECT_EQ(at(8, 1.8)->seen.size(), 1u);
  // The lower side passes 1.1 m at 7.97 m; who crouches at 7.5 m is under it, the body's own width included.
  EXPECT_TRUE(at(7.5, 1.1)->seen.empty());
}

// A sill hides them up to 1.02 m, and a lens held low ends below that: neither does it alone.
TEST(SightWindows, WhoIsHiddenByTwoThingsTogetherIsClearWhileAllIsAtRest) {
  SceneInput input;
  input.pieces.push_back(world::box({-9, 1.9}, {9, 2}, 0, 0.9));
  const Scene scene(input);
  const BodyAt behind = [](double) { return Body{{0, 2.6}, 0.28, 0, 1.8}; };
  const auto seenFrom = [&](double rest) {
    const EyeAt eye = [=](double t) { return world::eyeAt({0, 0, 0.1}, 0, std::max(0.0, 60 * (rest - t)), 30, 16); };
    return windowsOf(scene, eye, behind, {0, 4})->seen;
  };
  EXPECT_TRUE(seenFrom(0).empty());
  const auto tilting = seenFrom(1);
  ASSERT_EQ(tilting.size(), 1u) << "a lens that comes down from 60 degrees";
  EXPECT_LT(tilting[0].time.until, 1 + 1.0 / 24);
}

/// Somebody 3 m off behind a lamp that hangs 1 m off, its rim at 1.6 m, while the lens, half frame 20 degrees to the
/// side and 15 up and down, pans slowly.
std::optional<SightWindows> behindALamp(double tilt) {
  SceneInput input;
  input.pieces = {world::disc({0, 1}, 0.4, 1.6, 2.4)};
  static Scene scene;
  scene = Scene(input);
  const EyeAt eye = [tilt](double t) { return world::eyeAt({0, 0, 1.8}, -2 + 2 * t, tilt, 20, 15); };
  return windowsOf(scene, eye, [](double) { return Body{{0, 3}, 0.2, 0, 1.7}; }, {0, 2});
}

TEST(SightWindows, ALampWhoseRimIsBelowTheFrameHidesLikeAColumn) {
  // The near rim, 0.2 m under the lens and 0.6 m off, is 18 degrees down: out of frame. What is seen under it is, too.
  const auto level = behindALamp(0);
  ASSERT_TRUE(level);
  EXPECT_TRUE(level->seen.empty());
  // Looking down, the frame holds what is under the lamp, feet too.
  const auto down = behindALamp(-20);
  ASSERT_TRUE(down);
  ASSERT_EQ(down->seen.size(), 1u);
  EXPECT_TRUE(down->seen[0].found);
}

TEST(SightWindows, TheEdgesOfASightInAMirrorAreOfThatMirror) {
  SceneInput input;
  input.pieces = {world::mirrorLine({-1, 4}, {1, 4}, 0, 2.5, Side::right, 7)};
  const Scene scene(input);
  // The lens looks north into the mirror; who walks behind it comes and goes in the glass alone.
  const EyeAt eye = [](double) { return world::eyeAt({0, 0, 1.5}, 0, 0, 30, 20); };
  const auto windows = windowsOf(scene, eye, [](double t) { return Body{{-6 + t, -2}, 0.28, 0, 1.8}; }, {0, 12});
  ASSERT_TRUE(windows);
  ASSERT_EQ(windows->seen.size(), 1u);
  EXPECT_EQ(windows->seen[0].mirror, 7);
  EXPECT_TRUE(windows->seen[0].found);
}

TEST(SightWindows, AMirrorOnItsWayShowsWhoItPasses) {
  SceneInput input;
  PieceIn wheeled = world::mirrorLine({-0.5, 4}, {0.5, 4}, 0, 2, Side::right, 2);
  wheeled.keys = {{0, 0, false}, {1, 8, false}};
  wheeled.shifts = {{}, {{0.2, 0}, 0}};
  input.pieces.push_back(wheeled);
  const Scene scene(input);
  const EyeAt looks = [](double) { return world::eyeAt({0, 0, 1.5}, 0); };
  const BodyAt behind = [](double) { return Body{{0, -2}, 0.28, 0, 1.8}; };
  const auto windows = windowsOf(scene, looks, behind, {0, 10});
  ASSERT_EQ(windows->seen.size(), 1u);
  EXPECT_NEAR(windows->seen[0].time.from, 0, 1e-9);
  EXPECT_NEAR(windows->seen[0].time.until, 10, 1e-9);
  EXPECT_EQ(windows->seen[0].mirror, 2);
  const BodyAt aside = [](double) { return Body{{6, -2}, 0.28, 0, 1.8}; };
  EXPECT_TRUE(windowsOf(scene, looks, aside, {0, 10})->seen.empty());
}

TEST(SightWindows, FindASightThatLastsLessThanAFrameBetweenTwo) {
  // The lens runs past a slit of 2 cm at 2 m/s: it looks through for a hundredth of a second, between two frames.
  SceneInput input;
  input.walls.push_back(world::wall({{-9, 0}, {-0.01, 0}}, 0.0002));
  input.walls.push_back(world::wall({{0.01, 0}, {9, 0}}, 0.0002));
  const Scene scene(input);
  const EyeAt runs = [](double t) { return world::eyeAt({-2.04 + 2 * t, -0.5, 1.5}, 0); };
  const BodyAt slender = [](double) { return Body{{0, 0.5}, 0.001, 0, 1.8}; };
  const auto windows = windowsOf(scene, runs, slender, {0, 2});
  ASSERT_TRUE(windows);
  ASSERT_EQ(windows->seen.size(), 1u);
  EXPECT_LE(windows->seen[0].time.from, 1.012);
  EXPECT_GE(windows->seen[0].time.until, 1.028);
  EXPECT_LE(windows->seen[0].time.length(), 0.03);
}

TEST(SightWindows, WhoHidesOthersDoesNotHideThemselves) {
  const Scene scene;
  const EyeAt eye = [](double) { return world::eyeAt({0, 0, 1.5}, 0); };
  const auto hiders = [](double) {
    return std::vector<Hider>{{{{0, 3}, 0.5, 0, 1.8}, 1}, {{{0, 5}, 0.28, 0, 1.8}, 2}};
  };
  const auto look = TakeLook::over(scene, eye, {{0, 1}, 24, {0, 1.8}, {{-10, -10}, {10, 10}}}, hiders);
  const BodyAt first = [](double) { return Body{{0, 3}, 0.5, 0, 1.8}; };
  EXPECT_TRUE(sightWindows(*look, kStands, {}, 2)->seen.empty());
  EXPECT_EQ(sightWindows(*look, first, {}, 1)->seen.size(), 1u);
}

TEST(SightWindows, CancelledAtAnyPollPublishNothing) {
  const Scene scene;
  const base::Cancel counting;
  ASSERT_TRUE(windowsOf(scene, kPan, kStands, {0, 1}, {}, counting));
  for (std::int64_t k = 1; k <= counting.polls(); ++k)
    EXPECT_FALSE(windowsOf(scene, kPan, kStands, {0, 1}, {}, base::Cancel::atPoll(k))) << k;
}

}  // namespace
}  // namespace wend::sight
