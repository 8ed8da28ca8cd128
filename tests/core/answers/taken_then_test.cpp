// What stands at a place for a time, and what closes it, where the answer is plain by hand.
#include "core/answers/taken_then.h"

#include <gtest/gtest.h>

#include "core/answers/answers.h"
#include "tests/core/answers/van_street.h"

namespace wend::answers {
namespace {

// The van covers x from 14 to 18 until it leaves at 4 s, and from 2 to 6 once it is there at 10 s.
TEST(TakenThen, TellsWhenAParkedVanStandsThere) {
  const TakePtr take = takeOf(vanStreet(1.75));
  const auto before = takenOver(*take, {17.5, 1.5}, 1.8);
  ASSERT_EQ(before.size(), 1u);
  EXPECT_EQ(before[0].by, "van");
  EXPECT_EQ(before[0].span.from, 0);
  EXPECT_GT(before[0].span.until, 4);
  EXPECT_LT(before[0].span.until, 5.5);
  const auto after = takenOver(*take, {3, 1.5}, 1.8);
  ASSERT_EQ(after.size(), 1u);
  EXPECT_GT(after[0].span.from, 8);
  EXPECT_LT(after[0].span.from, 10);
  EXPECT_NEAR(after[0].span.until, 20, 1e-9);
  EXPECT_TRUE(takenOver(*take, {17.5, 3.5}, 1.8).empty()) << "a metre beside it";
}

TEST(TakenThen, TellsGearAllAlong) {
  plan::Plan plan = vanStreet(1.75);
  plan::Gear monitor;
  monitor.id = base::Id<plan::Gear>("monitor");
  monitor.pos = {8, 1};
  monitor.radius = 0.4;
  plan.gear.add(monitor);
  const auto taken = takenOver(*takeOf(plan), {8.3, 1}, 1.8);
  ASSERT_FALSE(taken.empty());
  EXPECT_EQ(taken[0].by, "monitor");
  EXPECT_EQ(taken[0].span.until, 20);
}

TEST(TakenThen, TellsWhatClosesGroundThatIsTouched) {
  plan::Plan plan = vanStreet(1.75);
  const auto add = [&](const char* id, plan::AreaUse use, geometry::Point at) {
    plan::Area area;
    area.id = base::Id<plan::Area>(id);
    area.shape = plan::Disc{at, 1};
    area.use = {use};
    plan.set.areas.add(area);
  };
  add("well", plan::AreaUse::hazard, {8, 1});
  add("lane", plan::AreaUse::exitLane, {8, 4});
  add("loud", plan::AreaUse::noisy, {8, 1});
  const auto closed = closedAt(plan, {9.2, 1}, 0.28);
  ASSERT_EQ(closed.size(), 1u) << "0.2 m from its edge, with a body of 0.28 m";
  EXPECT_STREQ(closedWord(*closed[0]), "hazard");
  ASSERT_EQ(closedAt(plan, {8, 4}, 0.28).size(), 1u);
  EXPECT_STREQ(closedWord(*closedAt(plan, {8, 4}, 0.28)[0]), "exitLane");
  EXPECT_TRUE(closedAt(plan, {9.3, 1}, 0.28).empty());
}

}  // namespace
}  // namespace wend::answers
