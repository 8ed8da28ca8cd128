#include "core/geometry/curve.h"

#include <gtest/gtest.h>

#include <random>

namespace wend::geometry {
namespace {

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (static_cast<double>(random() >> 11) / 9007199254740992.0);
}

std::vector<Point> randomPoints(std::mt19937_64& random) {
  std::vector<Point> points;
  while (points.size() < 6) points.push_back({uniform(random, -5, 5), uniform(random, -5, 5)});
  return points;
}

/// One of each kind in turn.
Curve randomCurve(std::mt19937_64& random, int kind) {
  if (kind % 3 == 0) return Curve::through(randomPoints(random));
  if (kind % 3 == 1) return Curve::along(catmullRom(randomPoints(random)));
  const double radius = uniform(random, 0.3, 5), sweep = uniform(random, -900, 900);
  return Curve::along(Arc{{1, 2}, radius, radius, uniform(random, 0, 360), sweep});
}

TEST(Curve, SplineMetresAgreeWithAFinePolyline) {
  std::mt19937_64 random(41);
  for (int run = 0; run < 20; ++run) {
    const std::vector<Cubic> pieces = catmullRom(randomPoints(random));
    const Curve curve = Curve::along(pieces);
    double metres = 0;
    for (const Cubic& piece : pieces) {
      const int parts = 20000;
      for (int k = 0; k < parts; ++k) {
        if (k % 1000 == 0) {
          EXPECT_LT(distance(curve.place(metres), piece.place(1.0 * k / parts)), 1e-5) << run;
        }
        metres += distance(piece.place(1.0 * k / parts), piece.place(1.0 * (k + 1) / parts));
      }
    }
    EXPECT_NEAR(curve.length(), metres, 1e-5) << run;
  }
}

TEST(Curve, PlaceMovesNoFurtherThanItsMetresAndHeadingIsItsDirection) {
  std::mt19937_64 random(42);
  for (int run = 0; run < 60; ++run) {
    const Curve curve = randomCurve(random, run);
    const double h = curve.length() / 20000;
    for (int k = 0; k < 300; ++k) {
      const double s = uniform(random, 0, curve.length() - h);
      EXPECT_LE(distance(curve.place(s), curve.place(s + h)), h + 1e-7) << run;
      EXPECT_NEAR(length(curve.heading(s)), 1, 1e-12) << run;
      EXPECT_LT(length((curve.place(s + h) - curve.place(s)) - curve.heading(s + h / 2) * h),
                run % 3 == 0 ? 2 * h : 0.1 * h);
    }
  }
}

TEST(Curve, EndsAreExactAndHoldBeyond) {
  std::mt19937_64 random(43);
  const std::vector<Point> points = randomPoints(random);
  for (const Curve& curve : {Curve::through(points), Curve::along(catmullRom(points))}) {
    EXPECT_EQ(curve.place(0), points.front());
    EXPECT_EQ(curve.place(curve.length()), points.back());
    EXPECT_EQ(curve.place(-3), points.front());
    EXPECT_EQ(curve.place(curve.length() + 3), points.back());
  }
}

TEST(Curve, PolylineStaysWithinItsTolerance) {
  std::mt19937_64 random(44);
  for (int run = 0; run < 60; ++run) {
    const Curve curve = randomCurve(random, run);
    for (const double tolerance : {0.1, 0.01, 0.001}) {
      const std::vector<CurvePoint> line = curve.polyline(tolerance);
      EXPECT_EQ(line.front().s, 0);
      EXPECT_EQ(line.back().s, curve.length());
      for (std::size_t i = 1; i < line.size(); ++i) {
        const Vec chord = line[i].place - line[i - 1].place;
        EXPECT_GT(line[i].s, line[i - 1].s) << run;
        for (const double share : {0.25, 0.5, 0.75}) {
          const Vec off = curve.place(lerp(line[i - 1].s, line[i].s, share)) - line[i - 1].place;
          EXPECT_LE(std::abs(cross(chord, off)), length(chord) * tolerance * 1.001) << run << " " << tolerance;
        }
      }
    }
  }
}

TEST(Curve, ASinglePlaceHasNoLength) {
  const Curve curve(Point{2, 3});
  EXPECT_EQ(curve.length(), 0);
  EXPECT_EQ(curve.place(1), (Point{2, 3}));
  EXPECT_EQ(curve.polyline(0.01).size(), 1u);
  EXPECT_EQ(Curve::through({{2, 3}, {2, 3}}).length(), 0);
}

TEST(Arc, LengthIsThatOfTheCircleAndNearlyThatOfTheMeanRadius) {
  EXPECT_DOUBLE_EQ((Arc{{0, 0}, 2, 2, 0, 360}.length()), 4 * std::numbers::pi);
  EXPECT_NEAR((Arc{{0, 0}, 2, 2.005, 0, -180}.length()), std::numbers::pi * 2.0025, 1e-5);
}

TEST(Arc, GoesClockwiseForAPositiveSweep) {
  const Arc arc{{0, 0}, 1, 1, 0, 90};
  EXPECT_LT(distance(arc.place(0), {0, 1}), 1e-15);
  EXPECT_LT(distance(arc.place(1), {1, 0}), 1e-15);
  EXPECT_LT(length(arc.heading(0) - Vec{1, 0}), 1e-15);
}

}  // namespace
}  // namespace wend::geometry
