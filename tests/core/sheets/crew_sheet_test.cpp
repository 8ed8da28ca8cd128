// The crew's routes as the papers have them: drawn ones checked, found ones beside them.
#include "core/sheets/crew_sheet.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/answers/drawn_routes.h"
#include "core/sheets/dept_sheets.h"
#include "core/sheets/plan_view.h"
#include "core/sheets/text_tables.h"
#include "tests/core/answers/drawn_out.h"
#include "tests/core/answers/small_plan.h"
#include "tests/samples.h"

namespace wend::sheets {
namespace {

using answers::marksOf;
using answers::setMarks;

/// Answers without the evidence that routes do not ask for.
answers::AnswersPtr answersOf(const plan::Plan& plan) {
  auto answers = std::make_shared<answers::Answers>();
  answers->take = *answers::Take::of(std::make_shared<const plan::Plan>(plan));
  return *answers::withRoutes(answers);
}

RouteOf routeOf(const answers::Answers& answers, const std::string& id) {
  for (const auto& route : routesOf(answers))
    if (route.id == id) return route;
  throw std::runtime_error("nobody called " + id);
}

TEST(CrewSheet, AFoundRouteDrawnOutHoldsAsADrawnOne) {
  plan::Plan plan = samplePlan("first-batch.wend");
  setMarks(plan, "ac1", {});
  const auto answers = answersOf(plan);
  const RouteOf found = routeOf(*answers, "ac1");
  EXPECT_TRUE(found.sought && found.feasible && !found.drawn) << found.why;
  ASSERT_FALSE(found.walks.empty());
  EXPECT_FALSE(found.walks[0].beat.empty());
  setMarks(plan, "ac1", marksOf(*answers->routes->find("ac1"), plan.clock.length));
  const RouteOf drawn = routeOf(*answersOf(plan), "ac1");
  EXPECT_TRUE(drawn.drawn && !drawn.sought);
  EXPECT_TRUE(drawn.feasible);
  for (const auto& stop : drawn.breaks) ADD_FAILURE() << stop.why << " " << stop.span.from << " " << stop.span.until;
  ASSERT_EQ(drawn.walks.size(), found.walks.size());
  for (std::size_t i = 0; i < found.walks.size(); ++i) {
    EXPECT_EQ(drawn.walks[i].latestLeave.has_value(), found.walks[i].latestLeave.has_value()) << i;
    EXPECT_NEAR(drawn.walks[i].latestLeave.value_or(0), found.walks[i].latestLeave.value_or(0), 1e-6) << i;
    EXPECT_NEAR(drawn.walks[i].earliestArrive.value_or(0), found.walks[i].earliestArrive.value_or(0), 1e-6) << i;
  }
  const PlanView view = wholeSet(*answers->take, 800, 600);
  EXPECT_GE(foundWaysLayer(*answers, view, {}).drawing.shapes.size(), found.walks.size() + found.stands.size());
  EXPECT_NE(routesText({found}).find("found, not drawn"), std::string::npos);
}

TEST(CrewSheet, DrawnRoutesBreakWhereANeedIsNotMet) {
  plan::Plan plan = samplePlan("first-batch.wend");
  EXPECT_TRUE(routeOf(*answersOf(plan), "ac1").feasible);
  plan::Crew crew = *plan.crew.find("ac1");
  crew.needs[0].what = plan::NearCamera{2};
  plan.crew.replace(plan.crew.indexOf("ac1"), crew);
  const auto answers = answersOf(plan);
  const RouteOf far = routeOf(*answers, "ac1");
  EXPECT_FALSE(far.feasible);
  ASSERT_FALSE(far.breaks.empty());
  const auto& camera = answers->take->people().camera();
  for (const auto& stop : far.breaks) {
    EXPECT_EQ(stop.why, "far");
    EXPECT_GT(geometry::distance(stop.pos, camera.place(stop.span.from)), 2 - 1e-3);
  }
}

// The camera of the small plan looks north; all of this is behind it.
TEST(CrewSheet, DrawnRoutesBreakInAWall) {
  plan::Plan plan = answers::smallPlan();
  plan::Crew runner = answers::standing("runner", {-3, -5});
  runner.marks.push_back(answers::markAt("r2", {3, -5}, 9));
  plan.crew.add(runner);
  EXPECT_TRUE(routeOf(*answersOf(plan), "runner").feasible);
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("w1");
  wall.points = {{0, -6}, {0, -4}};
  plan.set.walls.add(wall);
  const RouteOf route = routeOf(*answersOf(plan), "runner");
  EXPECT_FALSE(route.feasible);
  ASSERT_EQ(route.breaks.size(), 1u);
  EXPECT_EQ(route.breaks[0].why, "taken");
  // 6 m in 9 s: the wall's face is 2.95 m on, the body's edge 0.28 m before its middle.
  EXPECT_NEAR(route.breaks[0].span.from, (2.95 - 0.28) / 6 * 9, 0.26);
}

/// Somebody who walks 6 m east behind the camera from 1 s to 7 s.
plan::Crew walksEast() {
  plan::Crew runner = answers::standing("runner", {-3, -5});
  runner.marks[0].until = plan::Moment{"", 1};
  runner.marks.push_back(answers::markAt("r2", {3, -5}, 7));
  return runner;
}

/// Metres between the edges of the runner, who set off at `leave`, and of the van at t; none where they overlap.
double gapToVan(double leave, double t) {
  const double x = -3 + std::clamp(t - leave, 0.0, 6.0), y = -5;
  const double north = 20 * std::clamp((t - 2) / 8, 0.0, 1.0);
  const double dx = std::max({0.0, 0 - x, x - 1}), dy = std::max({0.0, -20 + north - y, y - (-18 + north)});
  return std::hypot(dx, dy) - 0.28;
}
double leastGapToVan(double leave) {
  double least = 1e9;
  for (double t = 0; t <= 10; t += 0.01) least = std::min(least, gapToVan(leave, t));
  return least;
}

// The looks of the check are a quarter of a second apart; a leg of a fifth of one is between them.
TEST(CrewSheet, APeakIsThatOfTheFastestLegHoweverShort) {
  plan::Plan plan = answers::smallPlan();
  plan::Crew runner = answers::standing("runner", {-3, -5});
  runner.speed = 1.8;
  runner.marks[0].until = plan::Moment{"", 1};
  runner.marks.push_back(answers::markAt("r2", {-2.5, -5}, 1.5));
  runner.marks.push_back(answers::markAt("r3", {-2.138, -5}, 1.7));
  runner.marks.push_back(answers::markAt("r4", {-1, -5}, 3));
  plan.crew.add(runner);
  const RouteOf route = routeOf(*answersOf(plan), "runner");
  ASSERT_EQ(route.walks.size(), 1u);
  EXPECT_NEAR(route.walks[0].speed, 0.362 / 0.2, 1e-9);
  ASSERT_EQ(route.breaks.size(), 1u);
  EXPECT_EQ(route.breaks[0].why, "fast");
}

TEST(CrewSheet, APaceThatPrintsAsTheirOwnIsNoneTooFast) {
  plan::Plan plan = answers::smallPlan();
  plan::Crew runner = answers::standing("runner", {-3, -5});
  runner.speed = 1.1;
  runner.marks[0].until = plan::Moment{"", 1};
  runner.marks.push_back(answers::markAt("r2", {-1.5, -5}, 2.3636));
  plan.crew.add(runner);
  const RouteOf route = routeOf(*answersOf(plan), "runner");
  ASSERT_EQ(route.walks.size(), 1u);
  ASSERT_GT(route.walks[0].speed, 1.1);
  EXPECT_TRUE(route.feasible);
  EXPECT_TRUE(route.walks[0].latestLeave.has_value());
}

TEST(CrewSheet, ASlipLeftAtItsLatestKeepsClearOfWhatDrives) {
  plan::Plan plan = answers::smallPlan();
  plan.crew.add(walksEast());
  plan::Piece van;
  van.id = base::Id<plan::Piece>("van");
  van.shape = plan::Outline{{{0, -20}, {1, -20}, {1, -18}, {0, -18}}};
  van.top = 2.4;
  plan::PieceKey rests, drives;
  drives.time = {{"", 2}, 8, plan::Pace::even};
  drives.offset = {0, 20};
  van.moved = {rests, drives};
  plan.set.pieces.add(van);
  const RouteOf route = routeOf(*answersOf(plan), "runner");
  ASSERT_EQ(route.walks.size(), 1u);
  ASSERT_TRUE(route.walks[0].latestLeave);
  const double latest = *route.walks[0].latestLeave;
  EXPECT_GT(latest, 1.2);
  for (double leave = 1; leave <= latest; leave += 0.05) EXPECT_GE(leastGapToVan(leave), 0.15 - 0.02) << leave;
  EXPECT_LT(leastGapToVan(latest + 0.75), 0.15) << "no sooner than by two looks and what a van drives in one";
}

TEST(CrewSheet, WhatWasHeldAgainstTheTakeForSlipsIsNotHeldAgain) {
  plan::Plan plan = answers::smallPlan();
  plan.crew.add(walksEast());
  answers::Answers answers = *answersOf(plan);
  const RouteOf fresh = routeOf(answers, "runner");
  ASSERT_TRUE(fresh.walks.at(0).latestLeave);
  auto routes = std::make_shared<answers::FoundRoutes>();
  routes->drawn = answers::drawnChecked(*answers.take);
  answers.routes = routes;
  EXPECT_EQ(routeOf(answers, "runner").walks.at(0).latestLeave, fresh.walks[0].latestLeave);
  EXPECT_EQ(answers::slipsOf(routes->drawn).at(0).latestLeave, fresh.walks[0].latestLeave);
  // Another figure there is what the paper prints: nobody worked it out anew.
  routes->drawn.at(0).report.walks.at(0).latestLeave = 1.5;
  EXPECT_EQ(routeOf(answers, "runner").walks.at(0).latestLeave, 1.5);
}

TEST(CrewSheet, ASlipLeftAtItsLatestKeepsWhatThePersonNeeds) {
  plan::Plan plan = answers::smallPlan();
  plan::Shelter shelter;
  shelter.id = base::Id<plan::Shelter>("ka");
  shelter.pos = {3, -5};
  shelter.radius = 0.5;
  plan.shelters.add(shelter);
  plan::Crew runner = walksEast();
  plan::Need stays;
  stays.what = plan::Stays{"ka"};
  stays.from = plan::Moment{"", 8};
  runner.needs = {stays};
  plan.crew.add(runner);
  const RouteOf route = routeOf(*answersOf(plan), "runner");
  ASSERT_TRUE(route.feasible);
  // Half a metre before the end of the walk the shelter begins.
  EXPECT_NEAR(route.walks.at(0).latestLeave.value(), 8 - 5.5, 0.15);
}

TEST(CrewSheet, PrintsTheCornersOfWalksAndTheLettersOfThePlan) {
  plan::Plan plan = answers::smallPlan();
  plan::Crew runner = walksEast();
  runner.role = "set runner";
  runner.marks.insert(runner.marks.begin() + 1, answers::markAt("r1", {0, -6}, 4));
  plan.crew.add(runner);
  answers::Answers answers = *answersOf(plan);
  answers.evidence = std::make_shared<const snags::Evidence>();
  const std::string text = sheetText(plan, deptSheet(answers, "crew"));
  EXPECT_NE(text.find("0.00, -6.00 at 4.0"), std::string::npos) << text;
  EXPECT_NE(text.find("SR"), std::string::npos) << "the runner's letters on the plan";
}

TEST(CrewSheet, SaysThatItDoesNotKnowHowLateToLeave) {
  RouteOf route;
  route.walks = {{{1, 2}, {{0, 0}, {1, 0}}, {1, 2}, "", 1, std::nullopt, std::nullopt, 1}};
  EXPECT_NE(routesText({route}).find("no route drawn"), std::string::npos);
  route.drawn = true;
  EXPECT_NE(routesText({route}).find("leave by and there from unknown"), std::string::npos);
}

TEST(CrewSheet, SaysThatAMarginIsNoLessWhereNoMoreWasLookedFor) {
  RouteOf route;
  route.sought = true;
  route.margin = 10;
  EXPECT_EQ(routesText({route}).find("at least"), std::string::npos);
  route.marginMore = true;
  EXPECT_NE(routesText({route}).find("at least 10.0 s"), std::string::npos);
}

TEST(CrewSheet, ARouteWithoutRoomSaysHowNearItComesToWhat) {
  RouteOf route;
  route.sought = true;
  route.nearest = answers::NearestPass{12.3, "flat", 0.11};
  route.nearestName = "the flat";
  EXPECT_NE(routesText({route}).find("0.00 m clear of everything, 0.11 m from the flat at 12.3"), std::string::npos)
      << routesText({route});
  route.room = 0.15;
  EXPECT_EQ(routesText({route}).find("from the flat"), std::string::npos);
}

TEST(CrewSheet, ARouteSoughtInVainSaysWhy) {
  plan::Plan plan = samplePlan("first-batch.wend");
  setMarks(plan, "ac1", {});
  plan::Crew crew = *plan.crew.find("ac1");
  crew.needs[0].what = plan::NearCamera{1};
  plan.crew.replace(plan.crew.indexOf("ac1"), crew);
  const auto answers = answersOf(plan);
  const RouteOf none = routeOf(*answers, "ac1");
  EXPECT_TRUE(none.sought && !none.feasible);
  EXPECT_NE(none.why.find("within 1.0 m of the camera"), std::string::npos) << none.why;
  EXPECT_NE(routesText({none}).find("NO ROUTE"), std::string::npos);
}

// The rule says of low sun that the window shows the grip: papers and routes say so, too.
TEST(CrewSheet, TellsWhoShowsInTurnedGlassAsTheRuleDoes) {
  const auto answers = *answers::answersOf(sharedSample("low-sun.wend"));
  const RouteOf grip = routeOf(*answers, "grip");
  ASSERT_EQ(grip.glass.size(), 1U);
  EXPECT_EQ(grip.glass[0].pane, "window");
  EXPECT_TRUE(grip.feasible) << "a risk is no break";
  const auto rule = std::ranges::find_if(*answers->snags, [](const snags::Snag& snag) {
    return snag.rule == "glass-shows" && snag.key.find("grip") != std::string::npos;
  });
  ASSERT_NE(rule, answers->snags->end());
  EXPECT_NEAR(grip.glass[0].span.from, rule->from, 1e-9);
  EXPECT_NEAR(grip.glass[0].span.until, rule->until, 1e-9);
  EXPECT_NE(routesText({grip}).find("in shop window, by the light\n"), std::string::npos) << routesText({grip});
  bool told = false;
  const DeptSheet sheet = deptSheet(*answers, "crew");
  for (const auto& row : sheet.parts.back().table.cells()) {
    if (row[0] != "grip") continue;
    EXPECT_NE(row[1], "never");
    told = told || row[2] == "in shop window, by the light";
  }
  EXPECT_TRUE(told);
}

}  // namespace
}  // namespace wend::sheets
