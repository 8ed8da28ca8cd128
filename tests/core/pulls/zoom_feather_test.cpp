#include "core/pulls/zoom_feather.h"

#include <gtest/gtest.h>

#include <cmath>

namespace wend::pulls {
namespace {

TEST(ZoomFeather, TurningRoundWithinFourSecondsIsFound) {
  const std::vector<Move> moves{{0, 2, 5, 6, 0.5, 1}, {5, 6, 6, 5, 1, 1}, {10, 11, 5, 6, 1, 1}, {12, 13, 6, 7, 1, 1}};
  EXPECT_EQ(reversals(moves), (std::vector<std::size_t>{1})) << "the next turns after exactly four, the last goes on";
}

}  // namespace
}  // namespace wend::pulls
