#include "core/plan/edits_people.h"

#include <gtest/gtest.h>

#include "core/plan/arc_leg.h"
#include "core/plan/edits_legs.h"
#include "core/plan/edits_marks.h"
#include "core/plan/invariants.h"
#include "tests/core/plan/small_plan.h"

namespace wend::plan {
namespace {

using test::smallPlan;

std::string codeOf(const base::Result<Plan>& result) {
  return result ? "" : result.problems().front().code;
}

TEST(Performers, TakeNamesLettersAndSizes) {
  EXPECT_EQ(performerNamed(smallPlan(), "ilse", "ILSE B")->performers[0].name, "ILSE B");
  EXPECT_EQ(performerLettered(smallPlan(), "ilse", "Z")->performers[0].letter, "Z");
  EXPECT_EQ(statureSet(smallPlan(), "ilse", 1.62)->performers[0].stature, 1.62);
  EXPECT_EQ(codeOf(statureSet(smallPlan(), "ilse", 17)), "out-of-range");
  EXPECT_EQ(performerRadiusSet(smallPlan(), "ilse", 0.3)->performers[0].radius, 0.3);
  EXPECT_EQ(codeOf(performerRadiusSet(smallPlan(), "ilse", 0)), "out-of-range");
  EXPECT_EQ(codeOf(performerNamed(smallPlan(), "ilse", "\xc3")), "text");
  EXPECT_EQ(codeOf(performerNamed(smallPlan(), "rhea", "RHEA")), "not-there");
}

TEST(Performers, ThatDoNotChangeAreShared) {
  const Plan plan = smallPlan();
  EXPECT_EQ(statureSet(plan, "ilse", plan.performers[0].stature)->performers.ref(0), plan.performers.ref(0));
  EXPECT_EQ(statureSet(plan, "ilse", 1.9)->performers.ref(1), plan.performers.ref(1));
}

TEST(CrewMembers, TakeRolesSizesAndNeeds) {
  EXPECT_EQ(crewRoleSet(smallPlan(), "ac1", "focus")->crew[0].role, "focus");
  EXPECT_EQ(crewRadiusSet(smallPlan(), "ac1", 0.35)->crew[0].radius, 0.35);
  EXPECT_EQ(crewHeightsSet(smallPlan(), "ac1", 1.9, 1.2)->crew[0].crouch, 1.2);
  EXPECT_EQ(codeOf(crewHeightsSet(smallPlan(), "ac1", 1.2, 1.9)), "crouch-high");
  EXPECT_EQ(crewSpeedSet(smallPlan(), "ac1", 1.4)->crew[0].speed, 1.4);
  EXPECT_EQ(codeOf(crewSpeedSet(smallPlan(), "ac1", 0)), "out-of-range");
  EXPECT_TRUE(crewNeedsSet(smallPlan(), "ac1", {{NearCamera{6}, std::nullopt, std::nullopt, {}}}).ok());
  EXPECT_EQ(codeOf(crewNeedsSet(smallPlan(), "ac1", {{Sees{"nobody"}, std::nullopt, std::nullopt, {}}})),
            "missing-reference");
  EXPECT_EQ(codeOf(crewNeedsSet(smallPlan(), "ac1", {{NearCamera{6}, test::at(9), test::at(3), {}}})),
            "span-backwards");
}

TEST(Props, LieSomewhereOrAreCarried) {
  const auto put = movedProp(smallPlan(), "hands", 1, {3, 3});
  ASSERT_TRUE(put.ok());
  EXPECT_TRUE(put->props[0].track[1].by.empty());
  const auto carried = propCarried(*put, "hands", 0, "tom");
  ASSERT_TRUE(carried.ok());
  EXPECT_EQ(carried->props[0].track[0].by, "tom");
  EXPECT_EQ(carried->props[0].track[0].pos, (Point{}));
  EXPECT_EQ(codeOf(propCarried(smallPlan(), "hands", 0, "nobody")), "missing-reference");
  EXPECT_EQ(propHeightSet(smallPlan(), "hands", 0, 1.05)->props[0].track[0].height, 1.05);
  EXPECT_EQ(codeOf(propHeightSet(smallPlan(), "hands", 2, 1)), "not-there");
}

TEST(MovedShelter, KeepsTheArcsOfThoseInItTrue) {
  const auto arc = legSwept(smallPlan(), {Owner::crew, "ac1", 0}, 90);
  ASSERT_TRUE(arc.ok()) << base::toText(arc.problems().front());
  const auto moved = movedShelter(*arc, "KA", {-5, -3});
  ASSERT_TRUE(moved.ok()) << base::toText(moved.problems().front());
  EXPECT_EQ(moved->shelters[0].pos, (Point{-5, -3}));
  EXPECT_TRUE(problemsOf(*moved).empty());
  EXPECT_EQ(moved->crew.ref(1), arc->crew.ref(1));
  EXPECT_EQ(placeOf(*moved, moved->crew[0].marks[0]), (Point{-5, -3}));
}

TEST(MovedShelter, SharesCrewThatIsElsewhere) {
  const Plan plan = smallPlan();
  EXPECT_EQ(movedShelter(plan, "KA", {-5, -3})->crew.ref(0), plan.crew.ref(0));
  EXPECT_EQ(movedShelter(plan, "KA", {-3, -4})->shelters.ref(0), plan.shelters.ref(0));
  EXPECT_EQ(codeOf(movedShelter(plan, "KZ", {0, 0})), "not-there");
  EXPECT_EQ(codeOf(movedShelter(plan, "KA", {1e6, 0})), "out-of-range");
}

TEST(ThingsOnTheFloor, TakePlacesAndSizes) {
  EXPECT_EQ(shelterSized(smallPlan(), "KA", 1.2, 6)->shelters[0].holds, 6);
  EXPECT_EQ(codeOf(shelterSized(smallPlan(), "KA", 1.2, 0)), "out-of-range");
  EXPECT_EQ(movedGear(smallPlan(), "g1", {1, 1})->gear[0].pos, (Point{1, 1}));
  EXPECT_EQ(gearSized(smallPlan(), "g1", 0.4, 2)->gear[0].height, 2);
  EXPECT_EQ(codeOf(gearSized(smallPlan(), "g1", 0, 2)), "out-of-range");
}

TEST(Fixtures, TakePlacesAimsAndOutputs) {
  EXPECT_EQ(movedFixture(smallPlan(), "f1", {1, 1})->fixtures[0].pos, (Point{1, 1}));
  EXPECT_EQ(fixtureHeightSet(smallPlan(), "f1", 2.2)->fixtures[0].height, 2.2);
  EXPECT_EQ(fixtureAimed(smallPlan(), "f1", 450, -45)->fixtures[0].bearing, 450);
  EXPECT_EQ(codeOf(fixtureAimed(smallPlan(), "f1", 0, -91)), "out-of-range");
  EXPECT_EQ(std::get<BeamOutput>(fixtureOutputSet(smallPlan(), "f1", {900, 30, 50})->fixtures[0].output).candela, 900);
  EXPECT_EQ(codeOf(fixtureOutputSet(smallPlan(), "f1", {900, 50, 50})), "field-narrow");
}

}  // namespace
}  // namespace wend::plan
