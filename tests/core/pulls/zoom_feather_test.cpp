#include "core/pulls/zoom_feather.h"

#include <gtest/gtest.h>

#include <cmath>

namespace wend::pulls {
namespace {

TEST(ZoomFeather, FeathersAreTheArea) {
  // 2 s to climb and fall at 0.1 cover 0.1 in all, 3 s between them 0.3.
  EXPECT_NEAR(featheredSeconds(std::exp(0.4), 0.1), 5, 1e-12);
  EXPECT_NEAR(featheredSeconds(std::exp(-0.4), 0.1), 5, 1e-12) << "out as in";
  EXPECT_EQ(featheredSeconds(1.01, 1), 2) << "no shorter than its feathers";
}

TEST(ZoomFeather, TurningRoundWithinFourSecondsIsFound) {
  const std::vector<Move> moves{{0, 2, 5, 6, 0.5, 1}, {5, 6, 6, 5, 1, 1}, {10, 11, 5, 6, 1, 1}, {12, 13, 6, 7, 1, 1}};
  EXPECT_EQ(reversals(moves), (std::vector<std::size_t>{1})) << "the next turns after exactly four, the last goes on";
}

}  // namespace
}  // namespace wend::pulls
