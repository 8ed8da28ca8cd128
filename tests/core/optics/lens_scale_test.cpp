#include "core/optics/lens_scale.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace wend::optics {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

const std::vector<ScaleMark> kChart{{kInfinity, 0}, {10, 20}, {4, 61}, {2, 118}, {1.2, 185}, {0.75, 290}};

TEST(LensScale, PassesThroughEveryMark) {
  const LensScale scale = LensScale::through(ScaleOf::distance, kChart).value();
  for (const ScaleMark& mark : kChart) {
    EXPECT_EQ(scale.degreesAt(mark.value), mark.degrees);
    EXPECT_NEAR(1 / scale.valueAt(mark.degrees), 1 / mark.value, 1e-12);
  }
}

TEST(LensScale, RunsOneWayAndBothWays) {
  const LensScale scale = LensScale::through(ScaleOf::distance, kChart).value();
  double before = scale.degreesAt(kInfinity);
  for (double dioptre = 0.001; dioptre < 1.6; dioptre += 0.001) {
    const double degrees = scale.degreesAt(1 / dioptre);
    ASSERT_GT(degrees, before) << dioptre;
    ASSERT_NEAR(1 / scale.valueAt(degrees), dioptre, 1e-9) << dioptre;
    before = degrees;
  }
}

TEST(LensScale, TakesMarksInEitherOrderAndEitherTurn) {
  std::vector<ScaleMark> back = kChart, mirrored = kChart;
  std::reverse(back.begin(), back.end());
  for (ScaleMark& mark : mirrored) mark.degrees = 300 - mark.degrees;
  const LensScale one = LensScale::through(ScaleOf::distance, kChart).value();
  const LensScale two = LensScale::through(ScaleOf::distance, back).value();
  const LensScale three = LensScale::through(ScaleOf::distance, mirrored).value();
  EXPECT_TRUE(one.rising());
  EXPECT_FALSE(three.rising());
  for (const double d : {0.8, 1.0, 3.3, 25.0}) {
    EXPECT_EQ(one.degreesAt(d), two.degreesAt(d));
    EXPECT_NEAR(three.degreesAt(d), 300 - one.degreesAt(d), 1e-10);
    EXPECT_NEAR(three.valueAt(three.degreesAt(d)), d, 1e-9 * d);
  }
}

TEST(LensScale, GoesStraightOnBeyondItsMarks) {
  const LensScale scale = LensScale::through(ScaleOf::distance, {{10, 20}, {2, 120}}).value();
  // 100 degrees over 0.4 dioptres: 5 degrees short of infinity is not on the barrel at 0.
  EXPECT_NEAR(scale.degreesAt(kInfinity), 20 - 25, 1e-12);
  EXPECT_NEAR(scale.degreesAt(1), 120 + 125, 1e-12);
  EXPECT_NEAR(scale.valueAt(245), 1, 1e-12);
  EXPECT_EQ(scale.valueAt(-200), kInfinity);
}

TEST(LensScale, RefusesTheFirstRowThatTurnsBack) {
  const auto turned = LensScale::through(ScaleOf::distance, {{kInfinity, 0}, {4, 60}, {2, 55}, {1, 200}});
  ASSERT_FALSE(turned);
  EXPECT_EQ(turned.problems()[0].code, "scale-not-monotone");
  EXPECT_EQ(turned.problems()[0].where, "/2");
  EXPECT_EQ(turned.problems()[0].found, "55 degrees");
  const auto swapped = LensScale::through(ScaleOf::distance, {{kInfinity, 0}, {2, 60}, {4, 110}, {1, 200}});
  ASSERT_FALSE(swapped);
  EXPECT_EQ(swapped.problems()[0].where, "/2");
  EXPECT_EQ(swapped.problems()[0].found, "4");
  EXPECT_FALSE(LensScale::through(ScaleOf::stop, {{2.8, 0}, {2.8, 10}}));
}

TEST(LensScale, RefusesWhatIsNoMark) {
  EXPECT_EQ(LensScale::through(ScaleOf::stop, {{2.8, 0}}).problems()[0].code, "scale-too-short");
  EXPECT_EQ(LensScale::through(ScaleOf::stop, {{2.8, 0}, {kInfinity, 90}}).problems()[0].where, "/1");
  EXPECT_EQ(LensScale::through(ScaleOf::distance, {{-1, 0}, {2, 90}}).problems()[0].where, "/0");
  EXPECT_EQ(LensScale::through(ScaleOf::distance, {{3, 0}, {2, std::nan("")}}).problems()[0].found, "not a number");
}

TEST(LensScale, IrisIsEvenInStopsAndZoomInTheLogarithm) {
  const LensScale iris = LensScale::through(ScaleOf::stop, {{2.8, 0}, {11.2, 80}}).value();
  EXPECT_NEAR(iris.degreesAt(5.6), 40, 1e-12);
  EXPECT_NEAR(iris.valueAt(20), 2.8 * std::sqrt(2.0), 1e-12);
  const LensScale zoom = LensScale::through(ScaleOf::focal, {{25, 0}, {100, 90}}).value();
  EXPECT_NEAR(zoom.degreesAt(50), 45, 1e-12);
  EXPECT_NEAR(zoom.valueAt(45), 50, 1e-12);
}

TEST(LensScale, UnchartedIsEvenInDioptres) {
  const LensScale scale = LensScale::uncharted(0.6);
  EXPECT_EQ(scale.degreesAt(kInfinity), 0);
  EXPECT_EQ(scale.degreesAt(0.6), 300);
  EXPECT_NEAR(scale.degreesAt(1.2), 150, 1e-12);
  EXPECT_NEAR(scale.valueAt(75), 2.4, 1e-12);
}

TEST(LensScale, RandomChartsNeverTurnBack) {
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    std::mt19937_64 random(seed);
    const auto uniform = [&](double a, double b) {
      return a + (b - a) * static_cast<double>(random() >> 11) * 0x1p-53;
    };
    std::vector<ScaleMark> marks;
    double dioptre = 0, degrees = 0;
    for (int i = 0; i < 8; ++i) {
      marks.push_back({dioptre > 0 ? 1 / dioptre : kInfinity, degrees});
      dioptre += uniform(0.01, 0.3);
      degrees += uniform(0.1, 60);
    }
    const LensScale scale = LensScale::through(ScaleOf::distance, marks).value();
    double before = -1;
    for (double x = 0; x < dioptre; x += 0.003) {
      const double now = scale.degreesAt(x > 0 ? 1 / x : kInfinity);
      ASSERT_GT(now, before) << "seed " << seed << " at " << x;
      ASSERT_NEAR(1 / scale.valueAt(now), x, 1e-7) << "seed " << seed;
      before = now;
    }
  }
}

}  // namespace
}  // namespace wend::optics
