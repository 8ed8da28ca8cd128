#include "core/pulls/slope_edge.h"

#include <gtest/gtest.h>

namespace wend::pulls {
namespace {

TEST(SlopeEdge, LinesOutOfOnePointFanOut) {
  const SlopeEdge edge(-2, 3, 10, 5);
  EXPECT_EQ(edge.lowestAt(11), 3);
  EXPECT_EQ(edge.highestAt(11), 8);
}

TEST(SlopeEdge, LowerHoldsSteepLinesDownAndLeavesTheRest) {
  SlopeEdge edge(-2, 2, 0, 0);
  edge.lower(1, 1);
  EXPECT_EQ(edge.highestAt(1), 1);
  EXPECT_EQ(edge.lowestAt(1), -2);
  EXPECT_NEAR(edge.highestAt(2), 3, 1e-12) << "slope 2 goes on from 1";
}

TEST(SlopeEdge, RaiseStartsFlatLinesAnew) {
  SlopeEdge edge(-2, 2, 0, 0);
  edge.raise(1, -1);
  EXPECT_EQ(edge.lowestAt(1), -1);
  EXPECT_EQ(edge.lowestAt(2), -3);
  EXPECT_EQ(edge.highestAt(1), 2);
  edge.raise(1, 7);
  EXPECT_EQ(edge.lowestAt(1), 7) << "all of them";
  EXPECT_EQ(edge.highestAt(1), 7);
}

TEST(SlopeEdge, DroppingCutsTheRangeOfSlopesWhereLinesMeetTheValue) {
  SlopeEdge edge(-2, 2, 0, 0);
  edge.dropAbove(2, 3);
  EXPECT_NEAR(edge.mostSlope(), 1.5, 1e-12);
  edge.dropBelow(2, -1);
  EXPECT_NEAR(edge.leastSlope(), -0.5, 1e-12);
  edge.keepSlopes(0, 1);
  EXPECT_EQ(edge.leastSlope(), 0);
  EXPECT_EQ(edge.mostSlope(), 1);
  EXPECT_NEAR(edge.highestAt(4), 4, 1e-12);
}

TEST(SlopeEdge, OneLineIsAlwaysLeft) {
  SlopeEdge edge(-1, 1, 0, 0);
  edge.dropAbove(1, -5);
  EXPECT_EQ(edge.leastSlope(), -1);
  EXPECT_EQ(edge.mostSlope(), -1);
}

TEST(SlopeEdge, LongTimesKeepTheirDigits) {
  SlopeEdge edge(-120, 120, 0, 100);
  for (int i = 1; i <= 40000; ++i) {
    edge.lower(i * 0.1, 100);
    edge.raise(i * 0.1, 90);
  }
  EXPECT_NEAR(edge.highestAt(4000), 100, 1e-10);
  EXPECT_NEAR(edge.lowestAt(4000), 90, 1e-10);
}

}  // namespace
}  // namespace wend::pulls
