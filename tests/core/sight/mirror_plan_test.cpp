#include "core/sight/mirror_plan.h"

#include <gtest/gtest.h>

#include <cstdio>

#include "tests/core/sight/swept_reference.h"

namespace wend::sight {
namespace {

using geometry::Segment;
using reference::uniform;

constexpr geometry::Extent kBox{{0, 0}, {10, 10}};
constexpr Segment kMirror{{3, 2}, {6, 3}};

TEST(MirrorPlan, KeepsWhatStandsInFrontAndItsImage) {
  const std::vector<Segment> walls{{{3, 5}, {5, 6}}, {{4, 1}, {8, 1}}, {{4, 0}, {4, 9}}, {{3, 2.0005}, {6, 3.0005}}};
  const auto both = wallsByMirror(walls, kMirror, kBox);
  ASSERT_EQ(both.size(), 2u + 2u + 2u)
      << "one whole, one cut at the line, none behind or flush, and the line's two parts";
  EXPECT_EQ(both[0], walls[0]);
  EXPECT_NEAR(both[2].a.y, 2 + 1 / 3.0, 1e-12);
  EXPECT_EQ(both[4].b, kMirror.a);
  EXPECT_EQ(both[5].a, kMirror.b);
}

TEST(MirrorPlan, SeesInTheMirrorExactlyWhatGoesByTheMirror) {
  const std::uint64_t seed = 20285;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  const auto inFront = [](Point p) { return cross(kMirror.b - kMirror.a, p - kMirror.a) > 0.05; };
  long seen = 0, unseen = 0, missed = 0, wrong = 0;
  for (int trial = 0; trial < 1500; ++trial) {
    std::vector<Segment> walls;
    for (std::size_t i = 0, n = random() % 6; i < n; ++i) {
      const Point a{uniform(random, 0, 10), uniform(random, 0, 10)};
      walls.push_back({a, a + Vec{uniform(random, -2, 2), uniform(random, -2, 2)}});
    }
    Point at;
    do at = {uniform(random, 0, 10), uniform(random, 0, 10)};
    while (!inFront(at));
    const SweptPose pose{at, uniform(random, 0, 360), uniform(random, 10, 60)};
    const SweptStep step = imageOf({pose, pose}, kMirror);
    const Triangulation triangles(wallsByMirror(walls, kMirror, kBox), boxByMirror(kBox, kMirror));
    SweptView view(triangles);
    SweptRegion region;
    view.of(step, region);
    keepFront(region, kMirror);
    for (int k = 0; k < 60; ++k) {
      const Point q{uniform(random, 0, 10), uniform(random, 0, 10)};
      if (!inFront(q)) continue;
      const Point image = geometry::reflected(at, kMirror);
      const auto share = geometry::whereMeet({image, q}, kMirror);
      bool byMirror = share.has_value();
      if (share) {
        // Both halves of the way among the true walls, a hair short of the glass.
        const Point glass = lerp(image, q, *share);
        byMirror = reference::inFrame(pose, glass) && reference::open(walls, at, lerp(at, glass, 1 - 1e-9), 1e-9) &&
                   reference::open(walls, q, lerp(q, glass, 1 - 1e-9), 1e-9);
      }
      const double away = distance(region, {q, q});
      byMirror ? ++seen : ++unseen;
      // Walls are drawn to 61 micrometres, so sights that pass this near to an end may go either way.
      missed += byMirror && away > 2e-3;
      wrong += !byMirror && away == 0;
    }
  }
  std::printf("%ld seen, %ld unseen, %ld missed, %ld seen that should not be\n", seen, unseen, missed, wrong);
  EXPECT_EQ(missed, 0);
  EXPECT_LE(wrong * 500, seen);
  EXPECT_GT(seen, 2000);
}

TEST(MirrorPlan, TurnsTheImageTheOtherWayRound) {
  const SweptStep step{{{4, 6}, 10, 20}, {{4.5, 6}, 40, 25}, 0.01, 0.5};
  const SweptStep image = imageOf(step, {{0, 5}, {10, 5}});
  EXPECT_NEAR(geometry::distance(image.from.pupil, Point{4, 4}), 0, 1e-12);
  EXPECT_NEAR(geometry::turn(image.from.bearing, 170), 0, 1e-9);
  EXPECT_NEAR(image.until.bearing - image.from.bearing, -30, 1e-9);
  EXPECT_EQ(image.until.halfAngle, 25);
  EXPECT_EQ(image.sway, 0.01);
  EXPECT_EQ(image.turn, 0.5);
}

}  // namespace
}  // namespace wend::sight
