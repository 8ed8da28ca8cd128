#include "core/plan/rig_balance.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace wend::plan {
namespace {

OverFocal rows(std::vector<FocalValue> values) {
  return OverFocal(std::move(values));
}

/// How far off the balance gets anywhere from one focal length to another, when the rig is balanced at `focal`.
double mostOff(const OverFocal& balance, double shortest, double longest, double focal) {
  double most = 0;
  for (int i = 0; i <= 2000; ++i)
    most =
        std::max(most, std::abs(balance.at(shortest * std::pow(longest / shortest, i / 2000.0)) - balance.at(focal)));
  return most;
}

// One kilogram-force metre is 9.80665 N m by the definition of the standard acceleration of gravity (value from
// memory).
TEST(RigBalance, TurnsWithWeightTimesLever) {
  EXPECT_DOUBLE_EQ(balanceMoment(1, 1), 9.80665);
  EXPECT_DOUBLE_EQ(balanceMoment(8, 0.005), 0.392266);
}

TEST(RigBalance, WeighsWhatIsListed) {
  Rig rig;
  EXPECT_FALSE(rigMass(rig)) << "nobody weighed it";
  rig.items = {{"body", 3.5, {}}, {"lens", 1.9, {}}};
  EXPECT_DOUBLE_EQ(*rigMass(rig), 5.4);
}

TEST(BestBalance, IsWhereTheZoomIsHalfWayInBalance) {
  const auto best = bestBalance(rows({{25, 0}, {100, 0.008}}), 25, 100);
  EXPECT_NEAR(best.focal, 50, 1e-9) << "half way in the logarithm";
  EXPECT_NEAR(best.most, 0.004, 1e-12);
}

TEST(BestBalance, CountsOnlyWhatTheZoomRunsThrough) {
  const auto best = bestBalance(rows({{25, 0}, {50, 0.002}, {100, 0.02}}), 25, 50);
  EXPECT_NEAR(best.most, 0.001, 1e-12);
  EXPECT_EQ(bestBalance(rows({{25, 0}, {50, 0.002}}), 35, 35).focal, 35);
  EXPECT_EQ(bestBalance(rows({{25, 0}, {50, 0.002}}), 60, 90).most, 0) << "held beyond the last row";
}

TEST(BestBalance, IsTheLeastOfAllFocalLengths) {
  const unsigned seed = 11;
  std::mt19937_64 random(seed);
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random() >> 11) * 0x1.0p-53;
  };
  for (int run = 0; run < 200; ++run) {
    std::vector<FocalValue> values;
    for (double focal = uniform(15, 30); focal < 200; focal *= uniform(1.1, 2))
      values.push_back({focal, uniform(-0.01, 0.01)});
    const OverFocal balance = rows(values);
    const double shortest = uniform(15, 60), longest = shortest * uniform(1, 4);
    const auto best = bestBalance(balance, shortest, longest);
    ASSERT_GE(best.focal, shortest) << "seed " << seed << " run " << run;
    ASSERT_LE(best.focal, longest * (1 + 1e-12)) << "seed " << seed << " run " << run;
    ASSERT_LE(mostOff(balance, shortest, longest, best.focal), best.most + 1e-12) << "seed " << seed << " run " << run;
    for (int i = 0; i <= 50; ++i)
      ASSERT_GE(mostOff(balance, shortest, longest, shortest * std::pow(longest / shortest, i / 50.0)),
                best.most - 2e-4 * 0.02)
          << "seed " << seed << " run " << run;
  }
}

}  // namespace
}  // namespace wend::plan
