/// Body sight against brute force: dense upright lines and heights, each a plain segment of space, on random sets.
#include <gtest/gtest.h>

#include <cstdio>

#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

SceneInput randomSet(std::mt19937_64& random) {
  const auto at = [&random](double low, double high) { return world::uniform(random, low, high); };
  SceneInput input;
  for (int i = 0, n = static_cast<int>(random() % 4); i < n; ++i) {
    const Point a{at(-4, 4), at(-4, 4)};
    const Vec d = geometry::turned({at(1, 4), 0}, at(-3, 3));
    input.walls.push_back(
        world::wall({a, a + d, a + d + geometry::turned(d, at(-2, 2)) * 0.5}, at(0.05, 0.3), at(1, 3)));
    if (random() % 2) continue;
    OpeningCut cut;
    cut.wall = input.walls.size() - 1;
    cut.along = {0.3, at(0.5, 0.9)};
    cut.sill = at(0, 1);
    cut.head = cut.sill + at(0.3, 1.5);
    cut.fill = random() % 2 ? Fill::solid : Fill::glass;
    cut.moves = LeafMotion{LeafKind::swing, End::start, Side::left, at(10, 170)};
    cut.keys = {{0, 0, false}};
    cut.shares = {at(0, 1)};
    input.openings.push_back(cut);
  }
  for (int i = 0, n = static_cast<int>(random() % 5); i < n; ++i) {
    const Point low{at(-4, 4), at(-4, 4)};
    const double bottom = at(-0.2, 1.2);
    input.pieces.push_back(random() % 2
                               ? world::box(low, low + Vec{at(0.1, 2), at(0.1, 2)}, bottom, bottom + at(0.1, 2))
                               : world::disc(low, at(0.1, 0.6), bottom, bottom + at(0.1, 2)));
  }
  return input;
}

TEST(BodySightProperty, AgreesWithDenseLinesAndHeights) {
  const std::uint64_t seed = 20268;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  int seen = 0, unseen = 0, onlyExact = 0;
  for (int trial = 0; trial < 3000; ++trial) {
    const Scene scene(randomSet(random));
    const SceneAt now = scene.at(1);
    const double angle = world::uniform(random, 0, 6.28);
    const Point from = Point{0, 0} + geometry::turned({world::uniform(random, 3, 7), 0}, angle);
    const Point to =
        Point{0, 0} - geometry::turned({world::uniform(random, 0, 5), 0}, angle + world::uniform(random, -1, 1));
    Eye eye = world::eyeAt(geometry::at(from, world::uniform(random, 0.3, 2.4)),
                           geometry::bearingOf(to - from) + world::uniform(random, -40, 40),
                           world::uniform(random, -15, 15), world::uniform(random, 10, 35), 14);
    eye.marginDegrees = 3;
    const Body body{to, world::uniform(random, 0.05, 0.4), world::uniform(random, -0.2, 0.2), 1.8};
    const bool exact = bodySight(now, eye, body).seen;
    const bool dense = world::seenByBruteForce(now, eye, body, 8, 48, 40);
    // What plain segments see is seen: no false clear.
    if (dense) {
      EXPECT_TRUE(exact) << "seed " << seed << " trial " << trial;
    }
    onlyExact += exact && !dense;
    (exact ? seen : unseen) += 1;
  }
  std::printf("seen %d unseen %d, of them seen by corners only %d\n", seen, unseen, onlyExact);
  EXPECT_GT(seen, 600);
  EXPECT_GT(unseen, 600);
  // Dense places are a lower bound: chinks between them make the difference, and they are rare.
  EXPECT_LE(onlyExact, seen / 20);
}

}  // namespace
}  // namespace wend::sight
