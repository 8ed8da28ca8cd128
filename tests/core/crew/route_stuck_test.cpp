#include "core/crew/route_stuck.h"

#include <gtest/gtest.h>

#include "tests/core/crew/ground_text.h"

namespace wend::crew {
namespace {

using text::written;

TEST(WhyStuck, SaysWhenAndWhere) {
  const auto ground = written({{4, {"A.#Z"}}, {3, {"oo#."}}});
  const Stuck stuck = *whyStuck(ground.task());
  EXPECT_DOUBLE_EQ(stuck.until, 4);
  EXPECT_EQ(stuck.where, (std::vector<Point>{{0.5, 0.5}, {1.5, 0.5}}));
  EXPECT_FALSE(stuck.least) << "the end is walled off";
  EXPECT_FALSE(stuck.speed);
  EXPECT_FALSE(stuck.anyEnd) << "the start is seen";
}

TEST(WhyStuck, TheLeastExposureSaysWhatWouldHaveToGiveWay) {
  // The only way is seen from the third to the sixth step; before that there is no time to pass.
  const auto ground = written({{2, {"A.....Z"}}, {4, {"ooooooo"}}, {4, {"......."}}});
  const Stuck stuck = *whyStuck(ground.task(), {.speed = 2, .early = 1, .late = 1});
  ASSERT_TRUE(stuck.least);
  EXPECT_DOUBLE_EQ(stuck.least->seconds, 4);
  ASSERT_EQ(stuck.exposures.size(), 1u);
  EXPECT_EQ(stuck.exposures[0].span, (Span{2, 6}));
  EXPECT_DOUBLE_EQ(stuck.exposures[0].laterBy.value(), 4);
  EXPECT_DOUBLE_EQ(stuck.exposures[0].earlierBy.value(), 4);
  EXPECT_FALSE(stuck.early);
  EXPECT_FALSE(stuck.late);
}

TEST(WhyStuck, AnAllowanceGivenUpFrees) {
  // Two steps to get two metres away, where it stays clear: one is missing.
  const auto ground = written({{1, {"A.."}}, {3, {"oo."}}, {2, {"..."}}});
  const Stuck stuck = *whyStuck(ground.task(), {.speed = 1.5, .early = 3, .late = 1});
  EXPECT_DOUBLE_EQ(stuck.early.value(), 1);
  EXPECT_FALSE(stuck.late);
  EXPECT_FALSE(stuck.speed) << "half as fast again is not two cells a step";
  EXPECT_NEAR(whyStuck(ground.task(), {.speed = 3, .early = 0, .late = 0})->speed.value(), 2, 0.02);
}

TEST(WhyStuck, TellsTheNeedThatBinds) {
  auto ground = written({{8, {"A.....Z"}}});
  const auto& grid = ground.ground.grid();
  const auto& clock = ground.ground.clock();
  const auto stays = onlyAt({0}, {0, 5}, grid, clock), harmless = onlyAt({0, 1, 2}, {0, 2}, grid, clock);
  RouteTask task = ground.task();
  task.needs = {&harmless, &stays};
  const Stuck stuck = *whyStuck(task);
  EXPECT_EQ(stuck.needs, std::vector<std::size_t>{1});
  EXPECT_TRUE(stuck.anyEnd);
  EXPECT_FALSE(stuck.least);
  EXPECT_NEAR(stuck.speed.value(), 2, 0.02);
}

TEST(WhyStuck, TellsWhenItIsStandingOutsideThatFrees) {
  const auto ground = written({{2, {"A...."}}, {4, {"oo..."}}});
  RouteTask task = ground.task();
  const auto& grid = ground.ground.grid();
  const auto rooms = onlyAt({0, 1}, {0, 6}, grid, ground.ground.clock());
  EXPECT_TRUE(cheapestRoute(task)->route);
  task.standWithin = &rooms;
  const Stuck stuck = *whyStuck(task);
  EXPECT_TRUE(stuck.anyStand);
  EXPECT_TRUE(stuck.needs.empty());
  // With a room beyond, what lies between is walked over.
  auto wider = written({{5, {"A...."}}, {4, {"oo..."}}});
  const auto longer = onlyAt({0, 1, 4}, {0, 9}, wider.ground.grid(), wider.ground.clock());
  RouteTask walks = wider.task();
  walks.standWithin = &longer;
  const auto answer = cheapestRoute(walks);
  ASSERT_TRUE(answer->route);
  EXPECT_EQ(answer->route->cells.back(), 4u);
  EXPECT_DOUBLE_EQ(answer->route->metres, 4);
}

TEST(WhyStuck, StartsNowhereWhereNobodyMayStand) {
  const auto ground = written({{3, {"A.."}}});
  RouteTask task = ground.task();
  const auto rooms = onlyAt({2}, {0, 3}, ground.ground.grid(), ground.ground.clock());
  task.standWithin = &rooms;
  const Stuck stuck = *whyStuck(task);
  EXPECT_DOUBLE_EQ(stuck.until, 0);
  EXPECT_FALSE(stuck.least);
  EXPECT_TRUE(stuck.anyStand);
}

TEST(WhyStuck, CancelledAtAnyPollSaysNothing) {
  const auto ground = written({{4, {"A.....Z"}}, {4, {"ooooooo"}}, {2, {"......."}}});
  const base::Cancel never;
  ASSERT_TRUE(whyStuck(ground.task(), {}, never));
  for (std::int64_t k = 1; k <= never.polls(); ++k)
    ASSERT_FALSE(whyStuck(ground.task(), {}, base::Cancel::atPoll(k))) << k;
}

}  // namespace
}  // namespace wend::crew
