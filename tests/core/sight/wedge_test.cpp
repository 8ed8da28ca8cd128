#include "core/sight/wedge.h"

#include <gtest/gtest.h>

#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

TEST(SeenWedge, OnEmptyGroundIsASectorOfTheFramesWidth) {
  const Scene scene;
  const SeenWedge wedge = seenWedge(scene.at(0), world::eyeAt({1, 2, 1.5}, 40), {0, 1.8, 10});
  EXPECT_NEAR(area(wedge.direct), 100 * geometry::radians(60) / 2, 0.01);
  EXPECT_TRUE(wedge.mirrors.empty());
  EXPECT_GT(geometry::signedArea(wedge.direct), 0);
}

TEST(SeenWedge, EndsAtWhatHidesAPersonAndRunsOverABench) {
  SceneInput input;
  input.walls.push_back(world::wall({{-20, 4.1}, {20, 4.1}}));
  const Eye eye = world::eyeAt({0, 0, 1.5}, 0, 0, 45);
  const Scene wall(input);
  EXPECT_NEAR(area(seenWedge(wall.at(0), eye, {}).direct), 16, 1e-4) << "a triangle of half width 4 at 4 m";
  input.pieces.push_back(world::box({-20, 2}, {20, 2.5}, 0, 0.9));
  const Scene bench(input);
  EXPECT_NEAR(area(seenWedge(bench.at(0), eye, {}).direct), 16, 1e-4);
  input.pieces.back().top = 2;
  const Scene rack(input);
  EXPECT_NEAR(area(seenWedge(rack.at(0), eye, {}).direct), 4, 1e-4);
}

TEST(SeenWedge, AMirrorAddsTheGroundItShows) {
  SceneInput input;
  input.pieces.push_back(world::mirrorLine({-1, 0}, {1, 0}, 0, 3, Side::left, 6));
  input.walls.push_back(world::wall({{-50, 6.1}, {50, 6.1}}));
  const Scene scene(input);
  const SeenWedge wedge = seenWedge(scene.at(0), world::eyeAt({0, 2, 1.5}, 180, 0, 80), {0, 1.8, 100});
  ASSERT_EQ(wedge.mirrors.size(), 1u);
  EXPECT_EQ(wedge.mirrors[0].mirror, 6);
  // Widths 2 at the glass and 2 * (2 + 6) / 2 = 8 at the wall, 6 m deep.
  EXPECT_NEAR(area(wedge.mirrors[0].ring), (2 + 8) / 2.0 * 6, 1e-3);
}

}  // namespace
}  // namespace wend::sight
