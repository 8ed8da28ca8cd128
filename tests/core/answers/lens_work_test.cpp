// Whose hands, and how many: moves written by hand.
#include "core/answers/lens_work.h"

#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

using snags::Move;

plan::Plan crewed() {
  plan::Plan plan = smallPlan();
  plan::Crew puller = standing("ac1", {5, -3}), second = standing("ac2", {6, -3});
  puller.role = "First assistant camera";
  second.role = "second assistant camera";
  plan.crew.add(puller);
  plan.crew.add(second);
  return plan;
}

Move moveOf(Move::Axis axis, double from, double until) {
  Move move;
  move.axis = axis;
  move.from = from;
  move.until = until;
  return move;
}

TEST(LensWork, TwoFastAxesAtOnceTakeTwoHands) {
  std::vector<Move> moves{moveOf(Move::Axis::focus, 1, 4), moveOf(Move::Axis::zoom, 3, 5)};
  moves[1].peakPercentPerSecond = 20;
  const auto work = lensWork(crewed(), moves);
  ASSERT_EQ(work.size(), 1u);
  EXPECT_EQ(work[0].who, "ac1");
  EXPECT_EQ(work[0].axes, (std::vector<Move::Axis>{Move::Axis::focus, Move::Axis::zoom}));
  EXPECT_EQ(work[0].load.mostHands, 2);
  EXPECT_EQ(moves[0].hands, 2);
  moves[1].peakPercentPerSecond = 4;
  EXPECT_EQ(lensWork(crewed(), moves)[0].load.mostHands, 1) << "a slow zoom rides along";
  EXPECT_EQ(moves[0].hands, 1);
}

TEST(LensWork, WhatIsHandedOverCountsForTheOneWhoGetsIt) {
  plan::Plan plan = crewed();
  plan.handovers.push_back({"focus", "ac1", "ac2", {"", 5}, 1, {}});
  EXPECT_EQ(holderOf(plan, Move::Axis::focus, 5.9), "ac1");
  EXPECT_EQ(holderOf(plan, Move::Axis::focus, 6), "ac2");
  EXPECT_EQ(holderOf(plan, Move::Axis::iris, 6), "ac2") << "iris and zoom go with the focus";
  plan.handovers.push_back({"iris", "ac2", "ac1", {"", 0}, 0, {}});
  EXPECT_EQ(holderOf(plan, Move::Axis::iris, 6), "ac1") << "unless they are handed over themselves";
  std::vector<Move> moves{moveOf(Move::Axis::focus, 2, 3), moveOf(Move::Axis::iris, 6, 9),
                          moveOf(Move::Axis::focus, 7, 8)};
  moves[1].peakStopsPerSecond = 1;
  const auto work = lensWork(plan, moves);
  ASSERT_EQ(work.size(), 2u);
  EXPECT_EQ(work[0].who, "ac1");
  EXPECT_EQ(work[1].who, "ac2");
  EXPECT_EQ(work[0].load.mostHands, 1);
  EXPECT_EQ(work[1].load.mostHands, 1) << "two people, a hand each";
}

TEST(LensWork, NobodyIsNamedWhereNoRoleSaysSo) {
  std::vector<Move> moves{moveOf(Move::Axis::focus, 1, 2)};
  const auto work = lensWork(smallPlan(), moves);
  ASSERT_EQ(work.size(), 1u);
  EXPECT_TRUE(work[0].who.empty());
}

}  // namespace
}  // namespace wend::answers
