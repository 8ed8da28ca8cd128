// Ground on which somebody would show in glass: where the law of reflection leads, and cell by cell what is told of a
// person who stands there.
#include "core/answers/glass_ground.h"

#include <cmath>
#include <random>

#include "core/answers/whole_take.h"
#include "tests/core/answers/dark_window.h"
#include "tests/core/answers/glass_by_rule.h"
#include "tests/samples.h"

namespace wend::answers {
namespace {

GlassGround over(const Take& take, geometry::Span span = {0, 1e9}) {
  return *glassGroundOf(take, {1.8, span, {}});
}

bool shownAt(const GlassGround& ground, Point place, geometry::Span span = {0, 1e9}) {
  return ground.cellsDuring(span)[*ground.grid.cellAt(place)] != 0;
}

std::vector<geometry::Span> spansAt(const GlassGround& ground, std::size_t cell) {
  std::vector<geometry::Span> spans;
  for (const auto& showing : ground.showings)
    if (showing.cell == cell) spans.push_back(showing.span);
  return spans;
}

// The pane from (-1, 4) to (1, 4) shows the image of the lens, at (0, 8), a fan that is 2.5 m to either side where it
// is 6 m in front of the pane; the jambs, 0.1 m deeper, narrow it to 2.44. Somebody counts from 0.28 m outside on.
TEST(GlassGround, IsTheFanOfTheLensImageThroughThePane) {
  const TakePtr take = takeOf(darkWindow(2));
  const GlassGround ground = over(*take);
  for (const double side : {-1.0, 1.0}) {
    EXPECT_TRUE(shownAt(ground, {2.35 * side, -2}));
    EXPECT_FALSE(shownAt(ground, {2.9 * side, -2}));
  }
  ASSERT_EQ(ground.byPane().size(), 1U);
  EXPECT_EQ(ground.byPane()[0].pane, "w1");
  ASSERT_EQ(ground.byPane()[0].spans.size(), 1U);
  EXPECT_NEAR(ground.byPane()[0].spans[0].from, 0, 1e-9);
  EXPECT_NEAR(ground.byPane()[0].spans[0].until, 10, 1e-9);
}

TEST(GlassGround, IsNoneWhileThePaneShowsWhatIsBehindIt) {
  const GlassGround ground = over(*takeOf(darkWindow(3.4)));
  EXPECT_TRUE(ground.empty());
  EXPECT_TRUE(ground.byPane().empty());
}

TEST(GlassGround, IsNotBehindAScreen) {
  plan::Plan plan = darkWindow(2);
  plan::Piece screen;
  screen.id = base::Id<plan::Piece>("screen");
  screen.shape = plan::Line{{{-2, -1}, {2, -1}}};
  screen.top = 3;
  plan.set.pieces.add(screen);
  const GlassGround ground = over(*takeOf(plan));
  EXPECT_FALSE(shownAt(ground, {0, -2}));
  EXPECT_TRUE(shownAt(ground, {0.8, 0}));
}

/// The garden goes from T8 to T2 at 5 s.
plan::Plan duskAtFive() {
  plan::Plan plan = darkWindow(8);
  plan::Area garden = plan.set.areas[1];
  garden.states.push_back(garden.states[0]);
  garden.states.back().time.at = {"", 5};
  garden.states.back().readings[0].stop = 2;
  plan.set.areas.replace(1, garden);
  return plan;
}

TEST(GlassGround, IsOfTheLooksInTheSpanWithLateBeforeAndEarlyAfterIt) {
  const TakePtr take = takeOf(duskAtFive());
  ASSERT_EQ(take->plan().sightRules.early, 2);
  ASSERT_EQ(take->plan().sightRules.late, 1);
  EXPECT_TRUE(over(*take, {0, 2.95}).empty());
  const GlassGround reaches = over(*take, {0, 3.05});
  EXPECT_TRUE(shownAt(reaches, {0, -2}));
  const auto whole = over(*take);
  const auto spans = spansAt(whole, *whole.grid.cellAt({0, -2}));
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_NEAR(spans[0].from, 5, 0.11);
  EXPECT_NEAR(spans[0].until, 10, 1e-9);
  EXPECT_FALSE(shownAt(whole, {0, -2}, {0, 4.8}));
  EXPECT_TRUE(shownAt(whole, {0, -2}, {0, 5.2}));
}

TEST(GlassGround, IsAskedOnlyWhereItIsWanted) {
  const TakePtr take = takeOf(darkWindow(2));
  const GlassGround all = over(*take);
  std::vector<std::uint8_t> wanted(all.grid.cells());
  const std::size_t one = *all.grid.cellAt({0, -2});
  wanted[one] = 1;
  const GlassGround there = *glassGroundOf(*take, {1.8, {0, 10}, wanted});
  ASSERT_EQ(there.showings.size(), 1U);
  EXPECT_EQ(there.showings[0].cell, one);
}

TEST(GlassGround, IsTheSameFromGlassThatWasFoundBefore) {
  const AnswersPtr answers = *answersOf(sharedSample("low-sun.wend"));
  const auto fresh = glassGroundOf(*answers->take, {1.8, {11, 13}});
  const auto known = glassGroundOf(*answers->take, {1.8, {11, 13}}, {}, answers->evidence->known->glass);
  EXPECT_FALSE(fresh->empty());
  EXPECT_EQ(fresh->showings, known->showings);
}

TEST(GlassGround, IsNothingOnceCancelled) {
  const TakePtr take = takeOf(darkWindow(2));
  EXPECT_FALSE(glassGroundOf(*take, {1.8, {0, 10}}, base::Cancel::atPoll(3)));
}

TEST(GlassGround, OfLowSunIsWhatTheRuleTellsOfWhoStandsThere) {
  plan::Plan plan = samplePlan("low-sun.wend");
  plan.sightRules.cell = 0.9;
  EXPECT_GT(heldAgainstTheRule(std::move(plan)), 100U);
}

TEST(GlassGround, OfFirstBatchIsWhatTheRuleTellsOfWhoStandsThere) {
  plan::Plan plan = samplePlan("first-batch.wend");
  plan.sightRules.cell = 0.45;
  EXPECT_EQ(heldAgainstTheRule(std::move(plan)), 0U) << "what little turns at grazing looks shows nobody";
}

TEST(GlassGround, OfFirstBatchBeforeADarkStreetIsWhatTheRuleTells) {
  plan::Plan plan = firstBatchWithStreetAt(2);
  plan.sightRules.cell = 1.5;
  EXPECT_GT(heldAgainstTheRule(std::move(plan)), 50U);
}

// The crew of the plan aside, `panesShowing` is what a clicked spot gets.
TEST(GlassGround, IsWhatASpotIsTold) {
  const TakePtr take = takeOf(samplePlan("low-sun.wend"));
  const GlassGround ground = over(*take);
  std::mt19937_64 bits(7);
  const auto cells = ground.cellsDuring({0, 20});
  int shown = 0;
  for (int trial = 0; trial < 40; ++trial) {
    const std::size_t cell = bits() % ground.grid.cells();
    std::vector<geometry::Span> told;
    for (const auto& pane : panesShowing(*take, ground.grid.centre(cell), 1.8, take->plan().sightRules.radius))
      told.push_back(pane.span);
    EXPECT_EQ(spansAt(ground, cell), told) << "cell " << cell;
    shown += cells[cell];
  }
  EXPECT_GT(shown, 5);
  EXPECT_LT(shown, 35);
}

}  // namespace
}  // namespace wend::answers
