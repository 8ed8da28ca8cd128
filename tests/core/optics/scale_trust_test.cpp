#include "core/optics/scale_trust.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace wend::optics {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// A thin lens on an exact helicoid: its extension from the infinity stop grows evenly with the barrel's turn. With u
/// from the lens to the subject, 1/u + 1/v = 1/f, the extension v - f = f^2 / (u - f), and the sensor is u + v away.
/// Source: E. Hecht, Optics, section 5.2.3, the thin-lens (Gaussian) equation.
struct Helicoid {
  double focal = 0.035;   ///< metres
  double closest = 0.35;  ///< metres from the sensor
  double throwDegrees = 300;

  double extension(double distance) const {
    if (std::isinf(distance)) return 0;
    // u + u f / (u - f) = D  =>  u^2 - D u + D f = 0
    const double u = (distance + std::sqrt(distance * distance - 4 * distance * focal)) / 2;
    return focal * focal / (u - focal);
  }
  double degreesAt(double distance) const { return throwDegrees * extension(distance) / extension(closest); }
  /// Infinity, then `marks` - 1 more, even in 1/distance down to the closest.
  std::vector<ScaleMark> chart(int marks) const {
    std::vector<ScaleMark> chart;
    for (int i = 0; i < marks; ++i) {
      const double distance = i == 0 ? kInfinity : closest * (marks - 1) / i;
      chart.push_back({distance, degreesAt(distance)});
    }
    return chart;
  }
  /// The furthest the chart is off between its marks, in degrees.
  double worstBetween(const std::vector<ScaleMark>& marks) const {
    const LensScale scale = LensScale::through(ScaleOf::distance, marks).value();
    double worst = 0;
    for (int i = 1; i <= 4000; ++i) {
      const double distance = closest * 4000 / i;
      worst = std::max(worst, std::abs(scale.degreesAt(distance) - degreesAt(distance)));
    }
    return worst;
  }
};

const Helicoid kLenses[] = {{0.018, 0.3},  {0.025, 0.3}, {0.035, 0.35}, {0.05, 0.6},
                            {0.075, 0.75}, {0.1, 1.0},   {0.135, 1.5}};

TEST(HelicoidChart, AFewMarksReproduceTheLawBetweenThem) {
  for (const Helicoid& lens : kLenses) {
    // A degree of 300 is 1.2 mm on a ring of 140 mm: less than a pencil line beside the witness mark.
    EXPECT_LT(lens.worstBetween(lens.chart(5)), 1.6) << lens.focal;
    EXPECT_LT(lens.worstBetween(lens.chart(7)), 0.8) << lens.focal;
    EXPECT_LT(lens.worstBetween(lens.chart(11)), 0.3) << lens.focal;
  }
}

TEST(HelicoidChart, IsWithinATenthOfThePrintedBandOfTheLaw) {
  // In 1/distance, where a band of depth is as wide everywhere: a hundredth of a dioptre is 10 cm at 3 m.
  for (const Helicoid& lens : kLenses) {
    const LensScale scale = LensScale::through(ScaleOf::distance, lens.chart(7)).value();
    for (double dioptre = 0.02; dioptre < 1 / lens.closest; dioptre += 0.02)
      EXPECT_NEAR(1 / scale.valueAt(lens.degreesAt(1 / dioptre)), dioptre, 0.01 / lens.closest) << lens.focal;
  }
}

TEST(ScaleTrust, GuessesNoLessThanTheErrorThereIs) {
  for (const Helicoid& lens : kLenses)
    for (const int marks : {5, 6, 7, 9, 12}) {
      const auto chart = lens.chart(marks);
      const double guess = trustOf(ScaleOf::distance, chart, {lens.closest, kInfinity}).worstDegrees;
      const double truth = lens.worstBetween(chart);
      EXPECT_GE(guess, truth) << lens.focal << " with " << marks;
      EXPECT_LE(guess, 20 * truth + 1e-9) << lens.focal << " with " << marks;
    }
}

TEST(ScaleTrust, MarkingWhereItSaysBringsTheErrorDown) {
  for (const Helicoid& lens : kLenses) {
    auto chart = lens.chart(5);
    const double before = lens.worstBetween(chart);
    for (int more = 0; more < 4; ++more) {
      const double next = trustOf(ScaleOf::distance, chart, {lens.closest, kInfinity}).markNext;
      chart.push_back({next, lens.degreesAt(next)});
      std::sort(chart.begin(), chart.end(), [](const auto& a, const auto& b) { return a.value > b.value; });
    }
    EXPECT_LT(lens.worstBetween(chart), before / 2) << lens.focal;
  }
}

TEST(ScaleTrust, FindsTheMarkThatWasReadWrong) {
  const Helicoid lens;
  auto chart = lens.chart(9);
  chart[4].degrees += 6;
  const ScaleTrust trust = trustOf(ScaleOf::distance, chart, {lens.closest, kInfinity});
  std::size_t worst = 1;
  for (std::size_t i = 2; i + 1 < chart.size(); ++i)
    if (std::abs(trust.rows[i]->degrees) > std::abs(trust.rows[worst]->degrees)) worst = i;
  EXPECT_EQ(worst, 4u);
  EXPECT_NEAR(trust.rows[4]->degrees, -6, 0.7);
  EXPECT_LT(trust.rows[4]->value, 0);
}

TEST(ScaleTrust, MarksOfAnEvenLawMissByNothing) {
  const std::vector<ScaleMark> even{{kInfinity, 0}, {4, 50}, {2, 100}, {1, 200}};
  const ScaleTrust trust = trustOf(ScaleOf::distance, even, {1, kInfinity});
  EXPECT_FALSE(trust.rows.front() || trust.rows.back());
  EXPECT_NEAR(trust.worstDegrees, 0, 1e-9);
  const std::vector<ScaleMark> stops{{2, 0}, {4, 40}, {8, 80}};
  EXPECT_NEAR(trustOf(ScaleOf::stop, stops, {2, 8}).worstDegrees, 0, 1e-9);
}

TEST(ScaleTrust, MarksInReverseOrderSayTheSame) {
  const Helicoid lens;
  auto chart = lens.chart(6);
  const ScaleTrust one = trustOf(ScaleOf::distance, chart, {lens.closest, kInfinity});
  std::reverse(chart.begin(), chart.end());
  const ScaleTrust other = trustOf(ScaleOf::distance, chart, {lens.closest, kInfinity});
  EXPECT_EQ(one.worstDegrees, other.worstDegrees);
  EXPECT_EQ(one.markNext, other.markNext);
  EXPECT_EQ(one.rows[2]->degrees, other.rows[3]->degrees);
}

TEST(ScaleTrust, AsksFirstForTheEndsOfTheReach) {
  const std::vector<ScaleMark> inner{{10, 20}, {2, 100}, {1, 200}};
  EXPECT_EQ(trustOf(ScaleOf::distance, inner, {0.75, kInfinity}).markNext, kInfinity);
  EXPECT_EQ(trustOf(ScaleOf::distance, inner, {0.75, 10}).markNext, 0.75);
  EXPECT_EQ(trustOf(ScaleOf::focal, {{24, 0}, {50, 60}}, {24, 70}).markNext, 70);
}

TEST(ScaleTrust, OfTwoMarksAsksForTheMiddle) {
  const ScaleTrust trust = trustOf(ScaleOf::distance, {{kInfinity, 0}, {1, 300}}, {1, kInfinity});
  EXPECT_EQ(trust.worstDegrees, 0);
  EXPECT_DOUBLE_EQ(trust.markNext, 2);
}

}  // namespace
}  // namespace wend::optics
