#include "core/optics/split.h"

#include <gtest/gtest.h>

#include <limits>
#include <random>

namespace wend::optics {
namespace {

const Optics kLens{35, 2.8, 0.025};
constexpr double kShare = 0.7, kClosest = 0.6;

bool holds(const std::vector<double>& distances, Optics optics, double focal, double fNumber) {
  optics.focal = focal;
  optics.fNumber = fNumber;
  return splitFocus(distances, optics, kShare, kClosest).slack.has_value();
}

TEST(SplitNeeds, AreTheLimitsBetweenHoldingAndNot) {
  std::mt19937_64 random(71);
  const auto uniform = [&](double a, double b) { return a + (b - a) * static_cast<double>(random() >> 11) * 0x1p-53; };
  for (int i = 0; i < 300; ++i) {
    const std::vector<double> distances{uniform(0.7, 6), uniform(0.7, 30), uniform(0.7, 6)};
    const Optics lens{uniform(18, 90), uniform(1.4, 16), 0.025};
    const auto needs = splitNeeds(distances, lens, kShare, kClosest);
    ASSERT_TRUE(needs);
    EXPECT_TRUE(holds(distances, lens, lens.focal, needs->fNumber * 1.0001)) << i;
    EXPECT_FALSE(holds(distances, lens, lens.focal, needs->fNumber * 0.9999)) << i;
    EXPECT_TRUE(holds(distances, lens, needs->focal * 0.9999, lens.fNumber)) << i;
    EXPECT_FALSE(holds(distances, lens, needs->focal * 1.0001, lens.fNumber)) << i;
  }
}

TEST(SplitNeeds, ReachInfinityAtTheHyperfocalDistance) {
  // Near half the hyperfocal distance and far away: what the hyperfocal setting holds, by its definition.
  const Optics full{35, 2.8, 0.025 * kShare};
  const double near = hyperfocal(full) / 2;
  const auto needs = splitNeeds({near, std::numeric_limits<double>::infinity()}, kLens, kShare, kClosest);
  ASSERT_TRUE(needs);
  EXPECT_NEAR(needs->fNumber, 2.8, 1e-9);
  EXPECT_NEAR(needs->focal, 35, 1e-9);
}

TEST(SplitNeeds, AreNothingForThoseTooCloseAndForOneDistance) {
  EXPECT_FALSE(splitNeeds({0.5, 2}, kLens, kShare, kClosest));
  EXPECT_FALSE(splitNeeds({2, 2}, kLens, kShare, kClosest));
}

}  // namespace
}  // namespace wend::optics
