// The crew's routes as the papers have them: drawn ones checked, found ones beside them.
#include "core/sheets/crew_sheet.h"

#include <gtest/gtest.h>

#include "core/answers/routes.h"
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
  EXPECT_EQ(drawn.walks.size(), found.walks.size());
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

}  // namespace
}  // namespace wend::sheets
