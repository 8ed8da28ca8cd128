// Poles and shadows of those whose way was found, in rooms small enough to know the answer.
#include "core/answers/on_found_routes.h"

#include "core/answers/whole_take.h"
#include "tests/core/answers/dark_window.h"

namespace wend::answers {
namespace {

/// A route that stands in one place all along.
FoundRoutes stands(const std::string& who, geometry::Point pos, double length, bool crouch = false) {
  FoundRoute route;
  route.id = who;
  route.found = true;
  route.stands = {{{0, length}, pos, "", crouch}};
  return {{route}};
}

/// Somebody whose way nobody drew.
plan::Crew loose(const std::string& id) {
  plan::Crew crew = standing(id, {0, 0});
  crew.marks.clear();
  return crew;
}

Evidence on(const plan::Plan& plan, const FoundRoutes& routes) {
  const auto take = takeOf(plan);
  Evidence evidence;
  evidence.plan = std::make_shared<const plan::Plan>(plan);
  evidence.samples = samplesOf(*take);
  EXPECT_TRUE(putOnFoundRoutes(*take, routes, {}, evidence));
  return evidence;
}

TEST(OnFoundRoutes, HoldsThePoleWhereItsHolderStands) {
  plan::Plan plan = smallPlan();
  plan.crew.add(loose("boom"));
  plan::Pole pole;
  pole.id = base::Id<plan::Pole>("p1");
  pole.crew = "boom";
  plan.poles.add(pole);
  plan.speech.push_back({"nora", {"", 2}, {"", 4}, "Snow.", "", {}});
  const auto nowhere = takeOf(plan);
  const auto unknown = boomLines(*nowhere, samplesOf(*nowhere));
  for (const auto& at : unknown.at(0).at) EXPECT_FALSE(at.reach);
  const Evidence evidence = on(plan, stands("boom", {2, 3}, nowhere->length()));
  ASSERT_EQ(evidence.boom.size(), 1u);
  for (const auto& at : evidence.boom[0].at) {
    ASSERT_TRUE(at.reach);
    EXPECT_NEAR(*at.reach, 2, 1e-9) << "NORA stands 2 m beside the holder";
  }
  EXPECT_EQ(evidence.routed, std::vector<std::string>{"boom"});
}

TEST(OnFoundRoutes, ThrowsTheShadowOfWhoStandsBeforeALamp) {
  plan::Plan plan = litBySideLamp();
  plan.crew.add(loose("ac"));
  const double length = takeOf(plan)->length();
  const Evidence before = on(plan, stands("ac", {2.5, 2.5}, length));
  EXPECT_TRUE(before.shadows.empty()) << "beside the light";
  const Evidence between = on(plan, stands("ac", {1.5, 1.5}, length));
  ASSERT_EQ(between.shadows.size(), 1u);
  EXPECT_EQ(between.shadows[0].by, "ac");
  EXPECT_EQ(between.shadows[0].who, "nora");
  EXPECT_NEAR(between.shadows[0].share, 1, 1e-9);
}

TEST(OnFoundRoutes, ShowWhoGoesThemInTurnedGlass) {
  plan::Plan plan = darkWindow(2);
  plan.crew.add(loose("grip"));
  const double length = takeOf(plan)->length();
  const auto shown = [&](geometry::Point pos) {
    const Evidence evidence = on(plan, stands("grip", pos, length));
    return std::ranges::count(evidence.panes, std::string("grip"), &snags::PaneMirror::who);
  };
  EXPECT_EQ(shown({0.6, -0.5}), 1);
  EXPECT_EQ(shown({4.5, 0}), 0) << "the law of reflection leads past the window";
}

TEST(OnFoundRoutes, CrouchesWhereTheRouteDoes) {
  plan::Plan plan = litBySideLamp();
  plan.crew.add(loose("ac"));
  const double length = takeOf(plan)->length();
  EXPECT_TRUE(on(plan, stands("ac", {1.5, 1.5}, length, true)).shadows.empty())
      << "1.1 m stays under a line from 1.7 m to 1.6 m";
}

TEST(OnFoundRoutes, HoldsLanesAgainstWhoStandsInThem) {
  plan::Plan plan = smallPlan();
  plan.crew.add(loose("ac"));
  plan::Area lane;
  lane.id = base::Id<plan::Area>("lane");
  lane.shape = plan::Outline{{{3, -5}, {5, -5}, {5, 5}, {3, 5}}};
  lane.use = {plan::AreaUse::exitLane};
  plan.set.areas.add(lane);
  const double length = takeOf(plan)->length();
  EXPECT_TRUE(on(plan, stands("ac", {2, 0}, length)).lanes.empty());
  const Evidence inIt = on(plan, stands("ac", {4, 0}, length));
  ASSERT_EQ(inIt.lanes.size(), 1u);
  EXPECT_EQ(inIt.lanes[0].by, "ac");
  EXPECT_EQ(inIt.lanes[0].area, "lane");
}

TEST(OnFoundRoutes, IsNothingWithoutAnyRoute) {
  plan::Plan plan = litBySideLamp();
  plan.crew.add(loose("ac"));
  const auto take = takeOf(plan);
  FoundRoute none;
  none.id = "ac";
  Evidence evidence;
  evidence.samples = samplesOf(*take);
  EXPECT_FALSE(putOnFoundRoutes(*take, {{none}}, {}, evidence));
  EXPECT_TRUE(evidence.routed.empty());
}

}  // namespace
}  // namespace wend::answers
