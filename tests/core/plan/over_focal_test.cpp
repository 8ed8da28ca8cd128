#include "core/plan/over_focal.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace wend::plan {
namespace {

const OverFocal kRows{std::vector<FocalValue>{{25, 0.9}, {50, 0.8}, {100, 0.4}}};

TEST(OverFocal, IsTheSameEverywhereForANumber) {
  const OverFocal number = 0.7;
  for (const double focal : {1.0, 35.0, 5000.0}) EXPECT_EQ(number.at(focal), 0.7);
  EXPECT_TRUE(number.constant());
  EXPECT_FALSE(kRows.constant());
}

TEST(OverFocal, MeetsItsRowsAndStaysBeyondThem) {
  for (const FocalValue& row : kRows.rows) EXPECT_EQ(kRows.at(row.focal), row.value);
  EXPECT_EQ(kRows.at(10), 0.9);
  EXPECT_EQ(kRows.at(1000), 0.4);
  EXPECT_EQ(OverFocal(std::vector<FocalValue>{{50, 0.8}}).at(20), 0.8);
}

// Half way in the logarithm is the geometric mean: 25 mm to 100 mm passes 50 mm in the middle.
TEST(OverFocal, IsHalfWayAtTheGeometricMean) {
  EXPECT_NEAR(kRows.at(25 * std::sqrt(2.0)), 0.85, 1e-12);
  EXPECT_NEAR(kRows.at(50 * std::sqrt(2.0)), 0.6, 1e-12);
  EXPECT_NEAR(kRows.at(50 * std::pow(2.0, 0.25)), 0.7, 1e-12);
}

TEST(OverFocal, StaysBetweenTheValuesOfItsTwoRows) {
  const unsigned seed = 7;
  std::mt19937_64 random(seed);
  const auto uniform = [&] { return static_cast<double>(random() >> 11) * 0x1.0p-53; };
  for (int i = 0; i < 2000; ++i) {
    OverFocal over;
    double focal = 10;
    for (int k = 0; k < 4; ++k) over.rows.push_back({focal += 0.001 + 40 * uniform(), uniform() - 0.5});
    ASSERT_EQ(firstNotRising(over.rows), over.rows.size());
    for (std::size_t k = 1; k < over.rows.size(); ++k) {
      const FocalValue &below = over.rows[k - 1], &above = over.rows[k];
      const double value = over.at(std::lerp(below.focal, above.focal, uniform()));
      ASSERT_GE(value, std::min(below.value, above.value)) << "seed " << seed;
      ASSERT_LE(value, std::max(below.value, above.value)) << "seed " << seed;
    }
  }
}

TEST(FirstNotRising, NamesTheRow) {
  EXPECT_EQ(firstNotRising({}), 0u);
  EXPECT_EQ(firstNotRising({{24, 1}}), 1u);
  EXPECT_EQ(firstNotRising({{24, 1}, {50, 1}, {50, 1}, {20, 1}}), 2u);
  EXPECT_EQ(firstNotRising({{24, 1}, {20, 1}}), 1u);
}

}  // namespace
}  // namespace wend::plan
