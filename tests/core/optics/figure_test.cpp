#include "core/optics/figure.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace wend::optics {
namespace {

using geometry::Point;
using geometry::Point3;
using geometry::Pose;

const Figure kPerson = figureOf({0, 4, 0}, 0.25, 1.6, 1.71);
const HalfTangents kWide{0.6, 0.4};
const auto kOpen = [](Point3) { return false; };

Pose level(Point3 at, double bearing) {
  return {at, bearing, 0};
}

TEST(Figure, CrownIsAShareOfTheStatureAboveTheEyes) {
  EXPECT_DOUBLE_EQ(kPerson.top, 1.6 + 0.065 * 1.71);
}

TEST(FigurePoints, EyesFirstThenEightHeightsOfThree) {
  const FigurePoints points = figurePoints(kPerson, {0, 0});
  EXPECT_EQ(points[0], (Point3{0, 4, 1.6}));
  for (std::size_t k = 0; k < 8; ++k) {
    for (std::size_t side = 0; side < 3; ++side) {
      const Point3 p = points[1 + 3 * k + side];
      EXPECT_DOUBLE_EQ(p.z, kPerson.top * (2 * static_cast<double>(k) + 1) / 16);
      EXPECT_NEAR(p.x, (static_cast<double>(side) - 1) * 0.9 * 0.25, 1e-15);  // left to right as seen
      EXPECT_NEAR(p.y, 4, 1e-15);
    }
  }
}

TEST(FigurePoints, StandSquareToTheLineFromThePupil) {
  const Point pupil{3, -2};
  const FigurePoints points = figurePoints(kPerson, pupil);
  const geometry::Vec line = Point{0, 4} - pupil;
  for (std::size_t k = 0; k < 8; ++k)
    EXPECT_NEAR(geometry::dot(geometry::flat(points[3 + 3 * k]) - geometry::flat(points[1 + 3 * k]), line), 0, 1e-12);
  EXPECT_TRUE(std::isfinite(figurePoints(kPerson, {0, 4})[1].x));
}

TEST(PlaceInFrame, IsInHalfFramesRightAndUp) {
  const Pose pupil = level({0, 0, 1.5}, 0);
  const auto centre = placeInFrame({0, 3, 1.5}, pupil, kWide);
  EXPECT_NEAR(centre->x, 0, 1e-15);
  EXPECT_NEAR(centre->y, 0, 1e-15);
  const auto corner = placeInFrame({0.6 * 3, 3, 1.5 + 0.4 * 3}, pupil, kWide);
  EXPECT_NEAR(corner->x, 1, 1e-12);
  EXPECT_NEAR(corner->y, 1, 1e-12);
  EXPECT_FALSE(placeInFrame({0, -1, 1.5}, pupil, kWide));
  EXPECT_FALSE(placeInFrame({5, 0, 1.5}, pupil, kWide));
}

TEST(PlaceInFrame, AgreesWithInFrame) {
  std::mt19937_64 random(21);
  const auto uniform = [&](double a, double b) { return a + (b - a) * static_cast<double>(random() >> 11) * 0x1p-53; };
  int in = 0;
  for (int i = 0; i < 5000; ++i) {
    const Pose pupil{{uniform(-2, 2), uniform(-2, 2), 1.5}, uniform(-180, 180), uniform(-40, 40)};
    const Point3 p{uniform(-4, 4), uniform(-4, 4), uniform(0, 3)};
    const auto place = placeInFrame(p, pupil, kWide);
    const bool expected = place && std::max(std::abs(place->x), std::abs(place->y)) <= 1;
    ASSERT_EQ(inFrame(p, pupil, kWide), expected) << "seed 21, round " << i;
    in += expected;
  }
  EXPECT_GT(in, 200);
}

TEST(Showing, WholeWhenEyesAndAllThatIsInFrameAreSeen) {
  EXPECT_EQ(showing(kPerson, level({0, 0, 1.5}, 0), kWide, kOpen), Showing::whole);
  // Feet below the frame do not count against her.
  EXPECT_EQ(showing(kPerson, level({0, 2.5, 1.5}, 0), {0.2, 0.15}, kOpen), Showing::whole);
}

TEST(Showing, PartWhenTheEyesAreOutOfFrame) {
  EXPECT_EQ(showing(kPerson, level({0, 2.5, 0.6}, 0), {0.6, 0.3}, kOpen), Showing::part);
}

TEST(Showing, PartWhenAPointInFrameIsHidden) {
  const auto legs = [](Point3 p) { return p.z < 0.3; };
  EXPECT_EQ(showing(kPerson, level({0, 0, 1.5}, 0), kWide, legs), Showing::part);
  const auto eyes = [](Point3 p) { return p.z == 1.6; };
  EXPECT_EQ(showing(kPerson, level({0, 0, 1.5}, 0), kWide, eyes), Showing::part);
}

TEST(Showing, HiddenWhenNothingInFrameIsSeenAndOutWhenNothingIsInFrame) {
  const auto all = [](Point3) { return true; };
  EXPECT_EQ(showing(kPerson, level({0, 0, 1.5}, 0), kWide, all), Showing::hidden);
  EXPECT_EQ(showing(kPerson, level({0, 0, 1.5}, 180), kWide, all), Showing::out);
  EXPECT_EQ(showing(kPerson, level({0, 0, 1.5}, 90), kWide, kOpen), Showing::out);
}

TEST(Showing, AsksAboutPointsInFrameOnly) {
  const Pose pupil = level({0, 2.5, 1.5}, 0);
  int asked = 0;
  showing(kPerson, pupil, {0.2, 0.15}, [&](Point3 p) {
    ++asked;
    EXPECT_TRUE(inFrame(p, pupil, {0.2, 0.15}));
    return false;
  });
  EXPECT_GT(asked, 0);
  EXPECT_LT(asked, 25);
}

TEST(StandsBetween, MeetsTheCylinderInPlanAndHeight) {
  EXPECT_TRUE(standsBetween(kPerson, {0, 0, 1.5}, {0, 8, 1.5}));
  EXPECT_TRUE(standsBetween(kPerson, {0.249, 0, 1}, {0.249, 8, 1}));
  EXPECT_FALSE(standsBetween(kPerson, {0.251, 0, 1}, {0.251, 8, 1}));
  EXPECT_FALSE(standsBetween(kPerson, {0, 0, 1.5}, {0, 3.7, 1.5})) << "ends before";
  EXPECT_FALSE(standsBetween(kPerson, {0, 8, 1.5}, {0, 4.3, 1.5}));
  EXPECT_FALSE(standsBetween(kPerson, {0, 0, 1.75}, {0, 8, 1.75})) << "over the head";
  EXPECT_TRUE(standsBetween(kPerson, {0, 0, 3.0}, {0, 8, 0.3})) << "1.65 m at the axis";
  EXPECT_FALSE(standsBetween(kPerson, {0, 0, 3.2}, {0, 8, 0.4})) << "1.8 m at the axis, 1.71 m on leaving";
  EXPECT_TRUE(standsBetween(kPerson, {0.1, 4, 2.5}, {0.1, 4, 1.0})) << "straight down";
  EXPECT_FALSE(standsBetween(kPerson, {0.3, 4, 2.5}, {0.3, 4, 1.0}));
}

TEST(StandsBetween, AgreesWithWalkingAlongTheLine) {
  std::mt19937_64 random(31);
  const auto uniform = [&](double a, double b) { return a + (b - a) * static_cast<double>(random() >> 11) * 0x1p-53; };
  int hits = 0;
  for (int i = 0; i < 3000; ++i) {
    const Point3 a{uniform(-1, 1), uniform(3, 5), uniform(0, 2.5)}, b{uniform(-1, 1), uniform(3, 5), uniform(0, 2.5)};
    const auto insideBy = [&](double grow) {
      for (int k = 0; k <= 400; ++k) {
        const double s = k / 400.0;
        const Point3 p{geometry::lerp(a.x, b.x, s), geometry::lerp(a.y, b.y, s), geometry::lerp(a.z, b.z, s)};
        if (std::hypot(p.x, p.y - 4) <= 0.25 + grow && p.z <= kPerson.top + grow && p.z >= -grow) return true;
      }
      return false;
    };
    const bool stands = standsBetween(kPerson, a, b);
    if (stands)
      ASSERT_TRUE(insideBy(0.01)) << "seed 31, round " << i;
    else
      ASSERT_FALSE(insideBy(0)) << "seed 31, round " << i;
    hits += stands;
  }
  EXPECT_GT(hits, 500);
}

TEST(BoxInFrame, HoldsEveryPointOfTheFigure) {
  std::mt19937_64 random(41);
  const auto uniform = [&](double a, double b) { return a + (b - a) * static_cast<double>(random() >> 11) * 0x1p-53; };
  for (int i = 0; i < 2000; ++i) {
    const Pose pupil{{uniform(-3, 3), uniform(-3, 3), uniform(0.3, 2.5)}, uniform(-30, 30), uniform(-25, 25)};
    const auto box = boxInFrame(kPerson, pupil, kWide);
    for (const Point3 p : figurePoints(kPerson, geometry::flat(pupil.at))) {
      const auto place = placeInFrame(p, pupil, kWide);
      if (!place || pupil.view(p).ahead < kNearest) continue;
      ASSERT_TRUE(box) << "seed 41, round " << i;
      ASSERT_GE(place->x, box->left - 1e-9);
      ASSERT_LE(place->x, box->right + 1e-9);
      ASSERT_GE(place->y, box->bottom - 1e-9);
      ASSERT_LE(place->y, box->top + 1e-9);
    }
  }
}

TEST(BoxInFrame, IsTheRectangleOfALevelView) {
  const auto box = boxInFrame(kPerson, level({0, 0, 1}, 0), kWide);
  EXPECT_NEAR(box->left, -0.25 / 4 / 0.6, 1e-12);
  EXPECT_NEAR(box->right, 0.25 / 4 / 0.6, 1e-12);
  EXPECT_NEAR(box->bottom, -1.0 / 4 / 0.4, 1e-12);
  EXPECT_NEAR(box->top, (kPerson.top - 1) / 4 / 0.4, 1e-12);
  EXPECT_FALSE(boxInFrame(kPerson, level({0, 0, 1}, 180), kWide));
}

TEST(BoxInFrame, CutsToTheFrame) {
  EXPECT_FALSE(cutToFrame({1.1, 1.4, 0, 0.5}));
  const auto cut = cutToFrame({-0.2, 1.4, -3, 0.5});
  EXPECT_EQ(cut->right, 1);
  EXPECT_EQ(cut->bottom, -1);
  EXPECT_EQ(cut->left, -0.2);
  EXPECT_EQ(cut->top, 0.5);
}

}  // namespace
}  // namespace wend::optics
