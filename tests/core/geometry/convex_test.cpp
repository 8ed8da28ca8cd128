#include "core/geometry/convex.h"

#include <gtest/gtest.h>

#include <random>

#include "core/geometry/polygon.h"

namespace wend::geometry {
namespace {

const Convex kSquare{{0, 0}, {4, 0}, {4, 4}, {0, 4}};

TEST(Convex, KeepsWhatLiesLeftOfTheCut) {
  Convex area = kSquare;
  cutRightOf(area, {1, 0}, {1, 1});
  EXPECT_DOUBLE_EQ(signedArea(area), 4);
  cutRightOf(area, {0.5, 3}, {0.5, -3});
  EXPECT_DOUBLE_EQ(signedArea(area), 2);
}

TEST(Convex, IsGoneWhenItLiesRightAltogether) {
  Convex area = kSquare;
  cutRightOf(area, {-1, 0}, {-1, 5});
  EXPECT_TRUE(area.empty());
  cutRightOf(area, {0, 0}, {1, 0});
  EXPECT_TRUE(area.empty());
}

TEST(Convex, IsWholeWhenItLiesLeftAltogether) {
  Convex area = kSquare;
  cutRightOf(area, {5, 0}, {5, 1});
  EXPECT_EQ(area, kSquare);
}

TEST(Convex, HoldsABodyOnlyWithAllOfItsDisc) {
  EXPECT_TRUE(holds(kSquare, {{1, 1}, {3, 3}}, 1));
  EXPECT_FALSE(holds(kSquare, {{1, 1}, {3, 3}}, 1.01));
  EXPECT_FALSE(holds(kSquare, {{1, 1}, {6, 1}}, 0));
  EXPECT_FALSE(holds({}, {{1, 1}, {1, 1}}, 0));
}

TEST(Convex, CommonHoldsExactlyWhatBothHold) {
  const unsigned seed = 20;
  RecordProperty("seed", seed);
  std::mt19937_64 random(seed);
  const auto unit = [&] { return static_cast<double>(random() >> 11) * 0x1p-53; };
  int inside = 0;
  for (int trial = 0; trial < 500; ++trial) {
    const auto triangle = [&] {
      Convex t{{unit() * 4, unit() * 4}, {unit() * 4, unit() * 4}, {unit() * 4, unit() * 4}};
      if (signedArea(t) < 0) std::swap(t[1], t[2]);
      return t;
    };
    const Convex a = triangle(), b = triangle(), both = common(a, b);
    for (int i = 0; i < 50; ++i) {
      const Point p{unit() * 4, unit() * 4};
      if (distanceToEdge(a, p) < 1e-9 || distanceToEdge(b, p) < 1e-9) continue;
      const bool expected = contains(a, p) && contains(b, p);
      inside += expected;
      EXPECT_EQ(!both.empty() && contains(both, p), expected) << "trial " << trial;
    }
  }
  EXPECT_GT(inside, 100);
}

TEST(ConvexPart, OfASegmentIsWhatLiesInside) {
  const Convex square{{0, 0}, {2, 0}, {2, 2}, {0, 2}};
  const auto through = partInside(square, {{-1, 1}, {3, 1}});
  ASSERT_TRUE(through);
  EXPECT_NEAR(distance(through->a, Point{0, 1}), 0, 1e-12);
  EXPECT_NEAR(distance(through->b, Point{2, 1}), 0, 1e-12);
  EXPECT_EQ(partInside(square, {{0.5, 0.5}, {1, 1}}), (Segment{{0.5, 0.5}, {1, 1}}));
  EXPECT_FALSE(partInside(square, {{3, 0}, {3, 2}}));
  EXPECT_FALSE(partInside(square, {{-1, 1}, {1, 3}})) << "a corner alone";
  EXPECT_FALSE(partInside({}, {{0, 0}, {1, 1}}));
}

}  // namespace
}  // namespace wend::geometry
