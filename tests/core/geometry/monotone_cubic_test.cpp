#include "core/geometry/monotone_cubic.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace wend::geometry {
namespace {

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (static_cast<double>(random() >> 11) / 9007199254740992.0);
}

struct Knots {
  std::vector<double> x, y;
};

/// `direction` 1: rising, -1: falling, 0: anywhere.
Knots randomKnots(std::mt19937_64& random, int direction) {
  Knots knots{{0}, {0}};
  for (int k = 0; k < 8; ++k) {
    knots.x.push_back(knots.x.back() + uniform(random, 0.01, 3));
    const double step = uniform(random, 0, 1) < 0.2 && direction == 0 ? 0 : uniform(random, 0.001, 5);
    knots.y.push_back(knots.y.back() + (direction == 0 && random() % 2 ? -step : direction < 0 ? -step : step));
  }
  return knots;
}

TEST(MonotoneCubic, PassesThroughItsKnotsAndStaysBetweenThem) {
  std::mt19937_64 random(7);
  for (int run = 0; run < 300; ++run) {
    const Knots knots = randomKnots(random, 0);
    const MonotoneCubic curve(knots.x, knots.y);
    for (std::size_t i = 0; i + 1 < knots.x.size(); ++i) {
      EXPECT_EQ(curve(knots.x[i]), knots.y[i]) << run;
      const double low = std::min(knots.y[i], knots.y[i + 1]), high = std::max(knots.y[i], knots.y[i + 1]);
      for (int k = 1; k < 20; ++k) {
        const double value = curve(knots.x[i] + (knots.x[i + 1] - knots.x[i]) * k / 20);
        EXPECT_GE(value, low - 1e-12) << run;
        EXPECT_LE(value, high + 1e-12) << run;
      }
    }
  }
}

TEST(MonotoneCubic, SlopeIsTheDerivativeAndContinuousAtKnots) {
  std::mt19937_64 random(8);
  for (int run = 0; run < 100; ++run) {
    const Knots knots = randomKnots(random, 0);
    const MonotoneCubic curve(knots.x, knots.y);
    for (int k = 0; k < 50; ++k) {
      const double x = uniform(random, knots.x.front() + 1e-3, knots.x.back() - 1e-3), h = 1e-6;
      EXPECT_NEAR(curve.slope(x), (curve(x + h) - curve(x - h)) / (2 * h), 1e-2) << run;
    }
    for (std::size_t i = 1; i + 1 < knots.x.size(); ++i)
      EXPECT_NEAR(curve.slope(knots.x[i] - 1e-12), curve.slope(knots.x[i]), 1e-6) << run;
  }
}

TEST(MonotoneCubic, InverseUndoesItRisingAndFalling) {
  std::mt19937_64 random(9);
  for (int run = 0; run < 200; ++run) {
    const Knots knots = randomKnots(random, run % 2 ? 1 : -1);
    const MonotoneCubic curve(knots.x, knots.y, 0.0, 0.0);
    for (int k = 0; k < 20; ++k) {
      const double y = uniform(random, knots.y.front(), knots.y.back());
      EXPECT_NEAR(curve(curve.inverse(y)), y, 1e-12 * std::abs(knots.y.back())) << run;
    }
    EXPECT_EQ(curve.inverse(knots.y[3]), knots.x[3]) << run;
    EXPECT_EQ(curve.inverse(knots.y.back() + (run % 2 ? 1 : -1)), knots.x.back()) << run;
    EXPECT_EQ(curve.inverse(knots.y.front() - (run % 2 ? 1 : -1)), knots.x.front()) << run;
  }
}

TEST(MonotoneCubic, ALineStaysALineAndTheEndsHold) {
  const MonotoneCubic line({0, 1, 4, 6}, {1, 3, 9, 13});
  for (double x = 0; x <= 6; x += 0.37) EXPECT_NEAR(line(x), 1 + 2 * x, 1e-14);
  EXPECT_EQ(line(-5), 1);
  EXPECT_EQ(line(99), 13);
  EXPECT_EQ(line.slope(99), 0);
  const MonotoneCubic single({2}, {5});
  EXPECT_EQ(single(0), 5);
  EXPECT_EQ(single.slope(2), 0);
}

TEST(HarmonicSlope, IsTheChordForEqualChordsAndZeroAtATurn) {
  EXPECT_DOUBLE_EQ(harmonicSlope(1, 2, 5, 2), 2);
  EXPECT_EQ(harmonicSlope(1, 2, 1, -2), 0);
  EXPECT_EQ(harmonicSlope(1, 0, 1, 3), 0);
  // 3 (h0 + h1) / ((2 h1 + h0) / d0 + (h1 + 2 h0) / d1) with h 2 and 4, d 0.5 and 1: 18 / (20 + 8).
  EXPECT_DOUBLE_EQ(harmonicSlope(2, 0.5, 4, 1), 18.0 / 28);
}

TEST(Hermite, SteepestIsNeverPassedAndReached) {
  const Hermite ease{0, 4, 0, 2, 0, 0};
  EXPECT_DOUBLE_EQ(ease.steepest(0, 4), 0.75) << "an ease from stop to stop peaks at 1.5 times its mean";
  EXPECT_DOUBLE_EQ(ease.steepest(0, 1), ease.slope(1));
  const Hermite odd{1, 3, 2, 5, 4, 0.5};
  double sampled = 0;
  for (int k = 0; k <= 2000; ++k) sampled = std::max(sampled, std::abs(odd.slope(1 + k * 0.001)));
  EXPECT_NEAR(odd.steepest(1, 3), sampled, 1e-6);
  EXPECT_GE(odd.steepest(1, 3), sampled);
}

}  // namespace
}  // namespace wend::geometry
