#include "core/plan/edits_legs.h"

#include <gtest/gtest.h>

#include <limits>

#include "core/plan/arc_leg.h"
#include "tests/core/plan/small_plan.h"

namespace wend::plan {
namespace {

using test::ilse;
using test::smallPlan;

MarkRef camera(std::size_t index) {
  return {Owner::camera, "", index};
}

std::string codeOf(const base::Result<Plan>& result) {
  return result ? "" : result.problems().front().code;
}

const Leg& ilseLeg(const base::Result<Plan>& plan, std::size_t index) {
  return plan->performers[0].marks[index].leg;
}

TEST(LegShaped, MakesAQuarterTurnClockwise) {
  const auto arc = legShaped(smallPlan(), ilse(1), LegShape::arc);
  ASSERT_TRUE(arc.ok()) << base::toText(arc.problems().front());
  EXPECT_EQ(ilseLeg(arc, 1).sweep, 90);
  EXPECT_EQ(ilseLeg(arc, 1).centre, (Point{5, 4}));
}

TEST(LegShaped, DropsWhatTheNewShapeDoesNotHave) {
  const auto arc = legShaped(smallPlan(), camera(2), LegShape::arc);
  ASSERT_TRUE(arc.ok());
  EXPECT_TRUE(arc->camera.marks[2].leg.via.empty());
  const auto straight = legShaped(*arc, camera(2), LegShape::straight);
  ASSERT_TRUE(straight.ok());
  EXPECT_EQ(straight->camera.marks[2].leg, Leg{});
  EXPECT_EQ(legShaped(smallPlan(), camera(2), LegShape::smooth)->camera.marks[2].leg.via.size(), 1u);
}

TEST(LegShaped, AsksForACentreBetweenMarksInOnePlace) {
  const auto straight = legShaped(smallPlan(), camera(0), LegShape::straight);
  ASSERT_TRUE(straight.ok());
  EXPECT_EQ(codeOf(legShaped(*straight, camera(0), LegShape::arc)), "arc-centre");
  const auto turn = legCentred(*straight, camera(0), {4.5, 3});
  ASSERT_TRUE(turn.ok()) << base::toText(turn.problems().front());
  EXPECT_EQ(turn->camera.marks[0].leg.sweep, 360);
}

TEST(LegShaped, RefusesTheLastMark) {
  EXPECT_EQ(codeOf(legShaped(smallPlan(), ilse(3), LegShape::smooth)), "no-leg");
}

TEST(LegPaced, SetsThePaceAndNothingElse) {
  const auto eased = legPaced(smallPlan(), camera(1), Pace::eased);
  ASSERT_TRUE(eased.ok());
  Plan back = *eased;
  back.camera.marks[1].leg.pace = Pace::even;
  EXPECT_TRUE(back == smallPlan());
}

TEST(LegSwept, KeepsTheTypedSweepAndPlacesTheCentre) {
  for (const double sweep : {-270.0, -90.0, 33.33, 180.0, 359.0, 450.0}) {
    const auto swept = legSwept(smallPlan(), ilse(1), sweep);
    ASSERT_TRUE(swept.ok()) << sweep << base::toText(swept.problems().front());
    EXPECT_EQ(ilseLeg(swept, 1).sweep, sweep);
    EXPECT_FALSE(arcProblem(ilseLeg(swept, 1), {4, 5}, {6, 5}, ""));
  }
}

TEST(LegSwept, TellsWholeTurnsFromOthers) {
  EXPECT_EQ(codeOf(legSwept(smallPlan(), ilse(1), 360)), "arc-sweep");
  EXPECT_EQ(codeOf(legSwept(smallPlan(), ilse(1), 0)), "arc-sweep");
  EXPECT_EQ(codeOf(legSwept(smallPlan(), camera(0), 350)), "arc-sweep");
  EXPECT_EQ(legSwept(smallPlan(), camera(0), 720)->camera.marks[0].leg.sweep, 720);
  EXPECT_EQ(codeOf(legSwept(smallPlan(), ilse(1), std::numeric_limits<double>::quiet_NaN())), "arc-sweep");
}

TEST(LegCentred, TakesATypedCentreOrNamesTheNearestOne) {
  const auto centred = legCentred(smallPlan(), ilse(1), {5, 3});
  ASSERT_TRUE(centred.ok());
  EXPECT_EQ(ilseLeg(centred, 1).centre, (Point{5, 3}));
  EXPECT_NEAR(ilseLeg(centred, 1).sweep, 53.13, 1e-9);
  const auto off = legCentred(smallPlan(), ilse(1), {5.5, 3});
  ASSERT_FALSE(off.ok());
  EXPECT_NE(off.problems().front().remedy.find("5, 3."), std::string::npos) << off.problems().front().remedy;
}

TEST(LegCentred, KeepsTheTurnsAnArcHad) {
  const auto other = legCentred(smallPlan(), camera(0), {4.5, 4});
  ASSERT_TRUE(other.ok());
  EXPECT_EQ(other->camera.marks[0].leg.sweep, -360);
  EXPECT_EQ(codeOf(legCentred(smallPlan(), camera(0), {4.5, 1.4})), "arc-radius");
}

TEST(LegVia, BelongsToStraightAndSmoothLegs) {
  const auto via = legVia(smallPlan(), ilse(1), {{5, 6.00004}});
  ASSERT_TRUE(via.ok());
  EXPECT_EQ(ilseLeg(via, 1).via, (std::vector<Point>{{5, 6}}));
  EXPECT_EQ(codeOf(legVia(smallPlan(), camera(0), {{1, 1}})), "arc-via");
  EXPECT_TRUE(legVia(smallPlan(), camera(0), {}).ok());
}

}  // namespace
}  // namespace wend::plan
