#include "core/answers/dimmers.h"

#include <cmath>

#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

snags::Move irisMove(double from, double to) {
  snags::Move move;
  move.axis = snags::Move::Axis::iris;
  move.from = 4;
  move.until = 5;
  move.valueBefore = from;
  move.valueAfter = to;
  return move;
}

plan::Plan litPlan() {
  plan::Plan plan = litBySideLamp();
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  return plan;
}

/// Every lamp of the plan at such a level throughout.
void setLevel(plan::Plan& plan, std::size_t lamp, double share) {
  plan::Fixture fixture = plan.fixtures[lamp];
  fixture.level = {{{}, share, {}, {}, {}}};
  plan.fixtures.replace(lamp, fixture);
}

double neededBy(const plan::Plan& plan) {
  return *takeOf(plan)->lens().neededAt(5);
}

TEST(LampsInstead, SparesTheIrisItsMove) {
  plan::Plan plan = litPlan();
  setLevel(plan, 0, 0.8);
  const double needed = neededBy(plan);
  const LampsInstead lamps = lampsInstead(*takeOf(plan), irisMove(needed / std::sqrt(2), needed));
  ASSERT_TRUE(lamps.known);
  ASSERT_EQ(lamps.alone.size(), 1u);
  EXPECT_EQ(lamps.alone[0].lamp, "f1");
  EXPECT_NEAR(lamps.alone[0].from, 0.8, 1e-12);
  EXPECT_NEAR(lamps.alone[0].to, 0.4, 1e-9) << "a stop less of the only light";
  setLevel(plan, 0, lamps.alone[0].to);
  EXPECT_NEAR(neededBy(plan), needed / std::sqrt(2), 1e-9) << "the iris stays where it was before";
}

TEST(LampsInstead, NeverAskForMoreThanFullLight) {
  plan::Plan plan = litPlan();
  setLevel(plan, 0, 0.8);
  const LampsInstead stop = lampsInstead(*takeOf(plan), irisMove(4, 2.8));
  EXPECT_TRUE(stop.anyLight);
  EXPECT_TRUE(stop.alone.empty()) << "twice 80 % is over full";
  EXPECT_FALSE(stop.together);
  setLevel(plan, 0, 0.4);
  const LampsInstead room = lampsInstead(*takeOf(plan), irisMove(4, 4 / std::sqrt(2)));
  ASSERT_EQ(room.alone.size(), 1u);
  EXPECT_NEAR(room.alone[0].to, 0.8, 1e-9);
}

TEST(LampsInstead, DoItTogetherWhereNoneDoesAlone) {
  plan::Plan plan = litPlan();
  plan::Fixture second = plan.fixtures[0];
  second.id = base::Id<plan::Fixture>("f2");
  second.pos = {-3, 0};
  second.bearing = 45;
  plan.fixtures.add(second);
  const double needed = neededBy(plan);
  const LampsInstead lamps = lampsInstead(*takeOf(plan), irisMove(needed / 2, needed));
  EXPECT_TRUE(lamps.alone.empty()) << "three quarters of the light have to go, each gives half";
  ASSERT_TRUE(lamps.together);
  EXPECT_NEAR(*lamps.together, 0.25, 1e-9);
}

TEST(LampsInstead, SayWhenTheLightIsOfNoLampInThePlan) {
  plan::Plan plan = smallPlan();
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  EXPECT_FALSE(lampsInstead(*takeOf(plan), irisMove(2.8, 4)).known) << "nobody knows the light";
  plan::Area area;
  area.id = base::Id<plan::Area>("light");
  area.shape = plan::Outline{{{-20, -20}, {20, -20}, {20, 20}, {-20, 20}}};
  area.states = {{{}, "", "", {{{0, 3}, 4, {}}}}};
  plan.set.areas.add(area);
  const LampsInstead lamps = lampsInstead(*takeOf(plan), irisMove(2.8, 4));
  EXPECT_TRUE(lamps.known);
  EXPECT_FALSE(lamps.anyLight);
}

}  // namespace
}  // namespace wend::answers
