#include "core/geometry/far_to_near.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace wend::geometry {
namespace {

double uniform(std::mt19937_64& random, double low, double high) {
  return low + (high - low) * (static_cast<double>(random() >> 11) * 0x1.0p-53);
}

TEST(FarToNear, DrawsWhatARayCrossesFromFarToNear) {
  const unsigned seed = 41;
  RecordProperty("seed", static_cast<int>(seed));
  std::mt19937_64 random(seed);
  for (int round = 0; round < 60; ++round) {
    std::vector<Segment> faces;
    for (int i = 0; i < 40; ++i) {
      const Point a{uniform(random, -10, 10), uniform(random, -10, 10)};
      faces.push_back({a, a + Vec{uniform(random, -4, 4), uniform(random, -4, 4)}});
    }
    const FarToNear tree(faces);
    const Point eye{uniform(random, -12, 12), uniform(random, -12, 12)};
    const auto order = tree.from(eye, {});
    for (int k = 0; k < 50; ++k) {
      const Vec way = direction(uniform(random, 0, 360));
      double last = 1e9;
      for (const auto& piece : order) {
        const auto at = whereRayMeets(eye, way, piece.face);
        if (!at) continue;
        ASSERT_LE(*at, last + 1e-6) << "seed " << seed << " round " << round;
        last = *at;
      }
    }
  }
}

TEST(FarToNear, PutsAThingBetweenTheFaceBehindItAndTheFaceInFront) {
  const FarToNear tree({{{-1, 2}, {1, 2}}, {{-1, 4}, {1, 4}}});
  const auto order = tree.from({0, 0}, {{0, 3}});
  ASSERT_EQ(order.size(), 3u);
  EXPECT_EQ(order[0].index, 1u);
  EXPECT_TRUE(order[1].thing);
  EXPECT_EQ(order[2].index, 0u);
}

TEST(FarToNear, KeepsEveryFaceWholeInItsPieces) {
  const std::vector<Segment> faces = {{{0, 0}, {4, 0}}, {{2, -1}, {2, 1}}, {{1, -1}, {3, 1}}};
  std::vector<double> lengths(faces.size());
  for (const auto& piece : FarToNear(faces).from({9, 7}, {}))
    lengths[piece.index] += distance(piece.face.a, piece.face.b);
  for (std::size_t i = 0; i < faces.size(); ++i) EXPECT_NEAR(lengths[i], distance(faces[i].a, faces[i].b), 1e-9);
}

}  // namespace
}  // namespace wend::geometry
