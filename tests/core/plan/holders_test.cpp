#include "core/plan/holders.h"

#include <gtest/gtest.h>

namespace wend::plan {
namespace {

Plan handing(std::vector<Handover> handovers) {
  Plan plan;
  plan.clock.length = 100;
  plan.handovers = std::move(handovers);
  return plan;
}

TEST(Holders, TakeOverWhenAHandoverIsDone) {
  const Plan plan = handing({{"focus", "ac1", "ac2", {"", 10}, 2, {}}});
  const auto holders = holdersOf(plan, "focus");
  EXPECT_EQ(holders, (std::vector<Holder>{{0, "ac1"}, {12, "ac2"}}));
  EXPECT_EQ(holderAt(holders, 0), "ac1");
  EXPECT_EQ(holderAt(holders, 11.9), "ac1") << "both have their hands on it, and it is still the first one's";
  EXPECT_EQ(holderAt(holders, 12), "ac2");
}

TEST(Holders, DoNotDependOnTheOrderOfTheList) {
  const Handover there{"boom", "b1", "b2", {"", 3}, 0, {}}, back{"boom", "b2", "b1", {"", 6}, 0, {}};
  EXPECT_EQ(holdersOf(handing({there, back}), "boom", "b1"), holdersOf(handing({back, there}), "boom", "b1"));
  EXPECT_EQ(holderAt(holdersOf(handing({back, there}), "boom", "b1"), 5), "b2");
}

TEST(Holders, HandOverOnlyWhatTheyHave) {
  const Plan plan = handing({{"boom", "b1", "b3", {"", 3}, 0, {}}, {"boom", "b2", "b4", {"", 6}, 0, {}}});
  EXPECT_EQ(holderAt(holdersOf(plan, "boom", "b1"), 50), "b3");
  EXPECT_EQ(holderAt(holdersOf(plan, "boom", "b2"), 50), "b4") << "the second pole";
  EXPECT_EQ(holderAt(holdersOf(plan, "boom", "b2"), 5), "b2");
}

TEST(Holders, AreNobodyWhereNothingIsHandedOver) {
  EXPECT_TRUE(holdersOf(handing({}), "focus").empty());
  EXPECT_EQ(holderAt({}, 5), "");
  EXPECT_EQ(holderAt(holdersOf(handing({}), "boom", "b1"), 5), "b1");
}

}  // namespace
}  // namespace wend::plan
