#include "core/light/shadow.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace wend::light {
namespace {

using geometry::Ring;

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (double(random() >> 11) / 9007199254740992.0);
}

const UprightBody kPerson{{0, 0}, 0.25, 0, 1.75};

TEST(ShadowLength, IsTheHeightOverTheTangent) {
  EXPECT_NEAR(shadowLength(1.75, 45), 1.75, 1e-12);
  EXPECT_NEAR(shadowLength(1.75, 90), 0, 1e-12);
  EXPECT_TRUE(std::isinf(shadowLength(1.75, 0)));
  EXPECT_TRUE(std::isinf(shadowLength(1.75, -3)));
}

TEST(Cuts, AnUprightBodyIsACylinder) {
  EXPECT_TRUE(cuts(kPerson, {-2, 0, 1}, {2, 0, 1}));
  EXPECT_TRUE(cuts(kPerson, {-2, 0.24, 1}, {2, 0.24, 1}));
  EXPECT_FALSE(cuts(kPerson, {-2, 0.26, 1}, {2, 0.26, 1}));
  EXPECT_FALSE(cuts(kPerson, {-2, 0, 1.8}, {2, 0, 1.8}));
  EXPECT_FALSE(cuts(kPerson, {-2, 0, 1}, {-0.3, 0, 1})) << "it ends before the body";
  EXPECT_TRUE(cuts(kPerson, {0.1, 0, 3}, {0.1, 0, 0.5})) << "straight down into it";
  EXPECT_FALSE(cuts(kPerson, {0.3, 0, 3}, {0.3, 0, 0}));
  EXPECT_TRUE(cuts(kPerson, {-1, 0, 2.2}, {1, 0, 1.0}));
  EXPECT_FALSE(cuts(kPerson, {-1, 0, 2.8}, {1, 0, 1.6})) << "over its head";
}

TEST(Cuts, ARodIsAsThickAsItIs) {
  const Rod boom{{-1, 0, 2.2}, {1, 0, 2.2}, 0.03};
  EXPECT_TRUE(cuts(boom, {0, -1, 2.2}, {0, 1, 2.2}));
  EXPECT_TRUE(cuts(boom, {0, 0.02, 3}, {0, 0.02, 1}));
  EXPECT_FALSE(cuts(boom, {0, 0.04, 3}, {0, 0.04, 1}));
  EXPECT_FALSE(cuts(boom, {1.04, 0, 3}, {1.04, 0, 1}));
  EXPECT_TRUE(cuts(boom, {-3, 0.01, 2.2}, {3, 0.01, 2.2})) << "along it";
  EXPECT_FALSE(cuts(boom, {0, 0, 3}, {0, 0, 2.5}));
  EXPECT_TRUE(cuts(Rod{{0, 0, 1}, {0, 0, 1}, 0.1}, {-1, 0.05, 1}, {1, 0.05, 1})) << "no longer than its radius";
}

// The distance of two lines by looking along both in small steps.
TEST(Cuts, ARodAgreesWithLookingAlongIt) {
  std::mt19937_64 random(77);
  const auto any = [&] { return Point3{uniform(random, -1, 1), uniform(random, -1, 1), uniform(random, 0, 2)}; };
  int cut = 0;
  for (int round = 0; round < 300; ++round) {
    const Rod rod{any(), any(), 0.3};
    const Point3 a = any(), b = any();
    double nearest = 9;
    for (int i = 0; i <= 200; ++i)
      for (int k = 0; k <= 200; ++k)
        nearest = std::min(
            nearest, geometry::distance(a + (b - a) * (i / 200.0), rod.from + (rod.until - rod.from) * (k / 200.0)));
    if (std::abs(nearest - 0.3) < 0.01) continue;
    EXPECT_EQ(cuts(rod, a, b), nearest < 0.3) << "seed 77, round " << round;
    cut += nearest < 0.3;
  }
  EXPECT_GT(cut, 50);
}

TEST(ShadowOnFloor, OfAPersonInTheSunIsAsLongAsTheElevationSays) {
  // The sun in the bearing 205 at 38 degrees: the shadow of 1.75 m goes 2.24 m towards the bearing 25.
  const Ring shadow = shadowOnFloor(towardsLight(205, 38), kPerson, 0);
  ASSERT_FALSE(shadow.empty());
  const geometry::Vec away = geometry::direction(25);
  double reach = 0, back = 0, aside = 0;
  for (const auto& p : shadow) {
    const geometry::Vec v = p - geometry::Point{};
    reach = std::max(reach, dot(v, away));
    back = std::min(back, dot(v, away));
    aside = std::max(aside, std::abs(cross(v, away)));
  }
  EXPECT_NEAR(reach, 2.24 + 0.25, 0.005);
  EXPECT_NEAR(back, -0.25, 0.002);
  EXPECT_NEAR(aside, 0.25, 0.002);
  EXPECT_GT(geometry::signedArea(shadow), 0);
}

TEST(ShadowOnFloor, OfALampIsWhereTheBodyCutsItsLight) {
  std::mt19937_64 random(5);
  int dark = 0;
  for (int round = 0; round < 40; ++round) {
    const Point3 lamp{uniform(random, -4, 4), uniform(random, -4, 4), uniform(random, 1, 5)};
    const UprightBody body{
        {uniform(random, -1, 1), uniform(random, -1, 1)}, 0.3, uniform(random, 0, 0.8), uniform(random, 1, 2)};
    // Under a lamp within its own plan there is no outside to look at.
    if (geometry::distance(flat(lamp), body.centre) < 0.35) continue;
    const UprightBody wider{body.centre, body.radius * 1.006, body.bottom, body.top};
    const Ring shadow = shadowOnFloor(lamp, body, 0);
    for (int k = 0; k < 200; ++k) {
      const geometry::Point p{uniform(random, -6, 6), uniform(random, -6, 6)};
      const bool in = geometry::contains(shadow, p);
      if (cuts(body, lamp, geometry::at(p, 0))) {
        EXPECT_TRUE(in) << "seed 5, round " << round;
        ++dark;
      }
      if (in) {
        EXPECT_TRUE(cuts(wider, lamp, geometry::at(p, 0))) << "seed 5, round " << round;
      }
    }
  }
  EXPECT_GT(dark, 100);
}

TEST(ShadowOnFloor, IsNoneOfALightFromBelowAndCutFarAway) {
  EXPECT_TRUE(shadowOnFloor(Point3{2, 0, -1}, kPerson, 0).empty());
  EXPECT_TRUE(shadowOnFloor(towardsLight(0, -5), kPerson, 0).empty());
  EXPECT_TRUE(shadowOnFloor(towardsLight(0, 30), UprightBody{{0, 0}, 0.2, -2, -1}, 0).empty());
  const Ring endless = shadowOnFloor(Point3{-2, 0, 1.5}, kPerson, 0, 10);
  ASSERT_FALSE(endless.empty());
  const geometry::Extent extent = geometry::extentOf(endless);
  EXPECT_NEAR(extent.high.x, 10, 1e-9);
  EXPECT_GE(extent.low.y, -10 - 1e-9);
}

TEST(ShadowOnFloor, OfARodIsItsStretchWidened) {
  const Ring shadow = shadowOnFloor(Point3{0, 0, 4}, Rod{{0.5, -1, 2}, {0.5, 1, 2}, 0.02}, 0);
  const geometry::Extent extent = geometry::extentOf(shadow);
  // Halfway up, twice as large.
  EXPECT_NEAR(extent.low.x, 1 - 0.04, 0.02);
  EXPECT_NEAR(extent.high.x, 1 + 0.04, 0.02);
  EXPECT_NEAR(extent.low.y, -2.04, 0.03);
  EXPECT_NEAR(extent.high.y, 2.04, 0.03);
}

TEST(CutsLight, FromAfarComesFromOneDirection) {
  const Vec3 sun = towardsLight(180, 45);
  EXPECT_TRUE(cutsLight(kPerson, sun, {0, 1.5, 0}));
  EXPECT_FALSE(cutsLight(kPerson, sun, {0, 2.2, 0}));
  EXPECT_FALSE(cutsLight(kPerson, sun, {0, -1, 0}));
  EXPECT_TRUE(cutsLight(kPerson, Point3{0, -3, 3}, {0, 1, 0}));
}

TEST(LampCuts, NameTheLampsThatMatter) {
  const Distribution even = [](double, double) { return 900.0; }, weak = [](double, double) { return 60.0; };
  Lighting lighting{
      Areas({}, {}, [](Point, Point) { return false; }),
      {{{{0, -4, 2}, 0, 0}, even, {}, {}}, {{{0, -4, 2}, 0, 0}, weak, {}, {}}, {{{4, 0, 2}, 0, 0}, even, {}, {}}},
      Exposure{},
      Receptor::dome,
      [](Point3, Point3) { return false; }};
  const Face face{{0, 0, 1.6}, {0, -1, 0}};
  const std::vector<Blocker> bodies{UprightBody{{2, 3}, 0.3, 0, 1.9}, UprightBody{{0, -1}, 0.3, 0, 1.9}};
  const FaceLight light = lightOnFace(lighting, face, 0);
  const auto found = lampCuts(lighting, face, light, bodies);
  ASSERT_EQ(found.size(), 1u) << "the weak lamp gives less than a tenth, the other one is not cut";
  EXPECT_EQ(found[0].fixture, 0u);
  EXPECT_EQ(found[0].body, 1u);
  EXPECT_NEAR(found[0].share, light.fixtureLux[0] / light.lux, 1e-12);
  EXPECT_EQ(lampCuts(lighting, face, light, bodies, 0.01).size(), 2u);
  // With the body in the light there is that much less of it.
  lighting.blocked = [&](Point3 lamp, Point3 at) {
    return std::any_of(bodies.begin(), bodies.end(), [&](const Blocker& body) { return cutsLight(body, lamp, at); });
  };
  EXPECT_NEAR(lightOnFace(lighting, face, 0).lux, light.fixtureLux[2], 1e-9);
  EXPECT_TRUE(lampCuts(lighting, face, FaceLight{}, bodies).empty()) << "unknown light";
}

}  // namespace
}  // namespace wend::light
