#include "core/plan/edits_marks.h"

#include <gtest/gtest.h>

#include <limits>

#include "core/plan/arc_leg.h"
#include "core/plan/invariants.h"
#include "tests/core/plan/small_plan.h"

namespace wend::plan {
namespace {

using test::at;
using test::ilse;
using test::on;
using test::smallPlan;

MarkRef camera(std::size_t index) {
  return {Owner::camera, "", index};
}

std::string codeOf(const base::Result<Plan>& result) {
  return result ? "" : result.problems().front().code;
}

TEST(SmallPlan, HasNoProblem) {
  const base::Problems problems = problemsOf(smallPlan());
  EXPECT_TRUE(problems.empty()) << base::toText(problems.front());
}

TEST(MovedMark, PutsTheMarkOnItsStepAndCopiesOnePersonOnly) {
  const Plan plan = smallPlan();
  const auto moved = movedMark(plan, ilse(1), {4.12344, 5.00006});
  ASSERT_TRUE(moved.ok());
  EXPECT_EQ(moved->performers[0].marks[1].pos, (Point{4.1234, 5.0001}));
  EXPECT_EQ(moved->performers.ref(1), plan.performers.ref(1));
  EXPECT_EQ(moved->set.walls.ref(0), plan.set.walls.ref(0));
  EXPECT_EQ(plan.performers[0].marks[1].pos, (Point{4, 5}));
}

TEST(MovedMark, OntoItsOwnPlaceSharesEverything) {
  const Plan plan = smallPlan();
  const auto moved = movedMark(plan, ilse(1), {4.00001, 5});
  ASSERT_TRUE(moved.ok());
  EXPECT_EQ(moved->performers.ref(0), plan.performers.ref(0));
}

TEST(MovedMark, LeavesNumbersItDidNotBringInAsFineAsTheyWere) {
  Plan plan = smallPlan();
  Performer fine = plan.performers[0];
  fine.marks[0].pos = {1.0000012345, 1};
  plan.performers.replace(0, fine);
  const auto moved = movedMark(plan, ilse(1), {4.2, 5});
  ASSERT_TRUE(moved.ok());
  EXPECT_EQ(moved->performers[0].marks[0].pos.x, 1.0000012345);
}

TEST(MovedMark, RefusesWhatIsNoPlace) {
  const double none = std::numeric_limits<double>::quiet_NaN();
  const double endless = std::numeric_limits<double>::infinity();
  for (const Point pos : {Point{none, 0}, Point{0, endless}, Point{20000, 0}}) {
    EXPECT_EQ(codeOf(movedMark(smallPlan(), ilse(1), pos)), "out-of-range");
    EXPECT_EQ(codeOf(movedMark(smallPlan(), camera(1), pos)), "out-of-range");
  }
}

TEST(MovedMark, RefusesAMarkThatIsNotThere) {
  EXPECT_EQ(codeOf(movedMark(smallPlan(), ilse(9), {1, 1})), "not-there");
  EXPECT_EQ(codeOf(movedMark(smallPlan(), {Owner::performer, "nobody", 0}, {1, 1})), "not-there");
}

TEST(MovedMark, MovesBothEndsOfAFullTurnAboutItsCentre) {
  const auto moved = movedMark(smallPlan(), camera(1), {4.5, 1.0});
  ASSERT_TRUE(moved.ok()) << base::toText(moved.problems().front());
  const auto& marks = moved->camera.marks;
  EXPECT_EQ(marks[0].pos, (Point{4.5, 1.0}));
  EXPECT_EQ(marks[1].pos, (Point{4.5, 1.0}));
  EXPECT_EQ(marks[0].leg.centre, (Point{4.5, 3.7}));
  EXPECT_EQ(marks[0].leg.sweep, -360);
}

TEST(MovedMark, RefitsTheArcThatLeavesAFullTurn) {
  const auto moved = movedMark(smallPlan(), camera(0), {4.5, 1.0});
  ASSERT_TRUE(moved.ok());
  const auto& marks = moved->camera.marks;
  EXPECT_FALSE(arcProblem(marks[1].leg, marks[1].pos, marks[2].pos, ""));
  EXPECT_NE(marks[1].leg.centre, (Point{4.5, 3.7}));
}

TEST(MovedMark, KeepsTheCentreOfAnArcWhoseEndStaysOnTheCircle) {
  const auto moved = movedMark(smallPlan(), camera(2), {4.5, 6});
  ASSERT_TRUE(moved.ok());
  EXPECT_EQ(moved->camera.marks[1].leg.centre, (Point{4.5, 3.7}));
  EXPECT_EQ(moved->camera.marks[1].leg.sweep, 180);
}

TEST(MovedMark, RefusesToCloseAPartOfACircle) {
  const auto moved = movedMark(smallPlan(), camera(2), {4.5, 1.4});
  ASSERT_FALSE(moved.ok());
  EXPECT_EQ(moved.problems().front().code, "arc-sweep");
  EXPECT_EQ(moved.problems().front().where, "/camera/marks/1/leg/sweep");
}

TEST(MovedMark, TakesACrewMarkOutOfItsShelter) {
  const auto moved = movedMark(smallPlan(), {Owner::crew, "ac1", 0}, {1, 1});
  ASSERT_TRUE(moved.ok());
  EXPECT_TRUE(moved->crew[0].marks[0].shelter.empty());
  EXPECT_EQ(moved->crew[0].marks[0].pos, (Point{1, 1}));
}

TEST(MovedMarks, CarryTheLegBetweenThemAlong) {
  const auto moved = movedMarks(smallPlan(), {camera(0), camera(1), camera(2), camera(3), ilse(0)}, {1, -0.5});
  ASSERT_TRUE(moved.ok()) << base::toText(moved.problems().front());
  const auto& marks = moved->camera.marks;
  EXPECT_EQ(marks[1].leg.centre, (Point{5.5, 3.2}));
  EXPECT_EQ(marks[1].leg.sweep, 90);
  EXPECT_EQ(marks[2].leg.via[0], (Point{2, 3.2}));
  EXPECT_EQ(marks[4].pos, (Point{8, 7.5}));
  EXPECT_EQ(moved->performers[0].marks[0].pos, (Point{2, 0.5}));
}

TEST(MovedMarks, OfNothingChangeNothing) {
  EXPECT_TRUE(*movedMarks(smallPlan(), {}, {1, 1}) == smallPlan());
}

TEST(MarkFields, BelongToTheirKindOfMark) {
  const Plan plan = smallPlan();
  EXPECT_EQ(markHeightSet(plan, camera(0), 1.23456)->camera.marks[0].height, 1.2346);
  EXPECT_EQ(codeOf(markHeightSet(plan, ilse(0), 1)), "mark-kind");
  EXPECT_EQ(markFacingSet(plan, ilse(0), 370)->performers[0].marks[0].facing, 370);
  EXPECT_EQ(markFacingSet(plan, ilse(0), std::nullopt)->performers[0].marks[0].facing, std::nullopt);
  EXPECT_EQ(codeOf(markFacingSet(plan, camera(0), 1)), "mark-kind");
  EXPECT_EQ(markPostureSet(plan, ilse(0), Posture::kneel)->performers[0].marks[0].posture, Posture::kneel);
  EXPECT_EQ(codeOf(markPostureSet(plan, ilse(0), Posture::crouch)), "posture");
  EXPECT_EQ(codeOf(markPostureSet(plan, {Owner::crew, "ac1", 1}, Posture::lie)), "posture");
  EXPECT_TRUE(markTapedSet(plan, ilse(0), true)->performers[0].marks[0].taped);
  EXPECT_EQ(codeOf(markTapedSet(plan, camera(0), true)), "mark-kind");
}

TEST(MarkSheltered, StandsInTheShelterWithoutAPlaceOfItsOwn) {
  const auto put = markSheltered(smallPlan(), {Owner::crew, "ac1", 1}, "KA");
  ASSERT_TRUE(put.ok());
  EXPECT_EQ(put->crew[0].marks[1].shelter, "KA");
  EXPECT_EQ(put->crew[0].marks[1].pos, (Point{}));
  EXPECT_EQ(codeOf(markSheltered(smallPlan(), {Owner::crew, "ac1", 1}, "KX")), "missing-reference");
  EXPECT_EQ(codeOf(markSheltered(smallPlan(), ilse(0), "KA")), "mark-kind");
}

TEST(ArrivalSet, KeepsHangingOnItsBeat) {
  const auto later = arrivalSet(smallPlan(), ilse(1), 22.5);
  ASSERT_TRUE(later.ok());
  EXPECT_EQ(later->performers[0].marks[1].at, on("b2", 2.5));
}

TEST(ArrivalSet, RefusesToReachAMarkBeforeTheOneBeforeIsLeft) {
  const auto early = arrivalSet(smallPlan(), ilse(1), 4);
  ASSERT_FALSE(early.ok());
  const base::Problem& problem = early.problems().front();
  EXPECT_EQ(problem.code, "mark-order");
  EXPECT_EQ(problem.where, "/performers/0/marks/1/at");
  EXPECT_EQ(problem.found, "ILSE's mark 2 reached at 4 s (on beat \"b2\")");
  EXPECT_EQ(problem.expected, "later than 5 s, when ILSE's mark 1 is left");
  EXPECT_FALSE(problem.remedy.empty());
}

TEST(ArrivalSet, RefusesToReachAMarkAfterItIsLeft) {
  EXPECT_EQ(codeOf(arrivalSet(smallPlan(), ilse(2), 41)), "mark-left-early");
}

TEST(ArrivalSet, MovesTheLeavingOfAMarkThatIsLeftAtOnce) {
  Plan plan = smallPlan();
  Performer who = plan.performers[0];
  who.marks[1].until = at(18);
  plan.performers.replace(0, who);
  const auto later = arrivalSet(plan, ilse(1), 19);
  ASSERT_TRUE(later.ok());
  EXPECT_EQ(later->performers[0].marks[1].until, at(19));
}

TEST(ArrivalSet, RefusesTimesBeforeTheTake) {
  EXPECT_EQ(codeOf(arrivalSet(smallPlan(), ilse(0), -1)), "time-before-start");
}

TEST(LeavingSet, HoldsAMarkOrLeavesItAtOnce) {
  const auto held = leavingSet(smallPlan(), ilse(1), 21.0004);
  ASSERT_TRUE(held.ok());
  EXPECT_EQ(held->performers[0].marks[1].until, at(21));
  const auto bound = leavingSet(smallPlan(), ilse(2), 41);
  ASSERT_TRUE(bound.ok());
  EXPECT_EQ(bound->performers[0].marks[2].until, on("b3", 1));
  EXPECT_EQ(leavingSet(smallPlan(), ilse(2), std::nullopt)->performers[0].marks[2].until, std::nullopt);
  EXPECT_EQ(codeOf(leavingSet(smallPlan(), ilse(2), 29)), "mark-left-early");
}

TEST(ShiftedMark, MovesBothTimes) {
  const auto later = shiftedMark(smallPlan(), ilse(2), 1.5);
  ASSERT_TRUE(later.ok());
  EXPECT_EQ(later->performers[0].marks[2].at, at(31.5));
  EXPECT_EQ(later->performers[0].marks[2].until, on("b3", 1.5));
  EXPECT_EQ(codeOf(shiftedMark(smallPlan(), ilse(2), 20)), "mark-order");
}

TEST(InsertedMark, DividesTheLegThatIsUnderWay) {
  const auto more = insertedMark(smallPlan(), {Owner::camera, ""}, 35, {1, 3.7});
  ASSERT_TRUE(more.ok()) << base::toText(more.problems().front());
  const auto& marks = more->camera.marks;
  ASSERT_EQ(marks.size(), 6u);
  EXPECT_EQ(marks[3].at, at(35));
  EXPECT_EQ(marks[3].id, "c35");
  EXPECT_EQ(marks[3].height, 1.5);
}

TEST(InsertedMark, TakesHeightAlongTheLeg) {
  const auto raised = markHeightSet(smallPlan(), camera(4), 2.5);
  ASSERT_TRUE(raised.ok());
  const auto more = insertedMark(*raised, {Owner::camera, ""}, 50, {4.5, 7.25});
  ASSERT_TRUE(more.ok());
  EXPECT_NEAR(*more->camera.marks[4].height, 2.0, 1e-3);
}

TEST(InsertedMark, ComesBeforeTheFirstAndAfterTheLast) {
  const auto before = insertedMark(smallPlan(), {Owner::crew, "ac1"}, 30, {0, -1});
  ASSERT_TRUE(before.ok());
  EXPECT_EQ(before->crew[0].marks.back().pos, (Point{0, -1}));
  Plan late = smallPlan();
  late.performers.add({base::Id<Performer>("cole"), "COLE", "D", 1.8, 0.25, {test::mark(at(30), {3, 3})}, {}});
  const auto first = insertedMark(late, {Owner::performer, "cole"}, 10, {2, 2});
  ASSERT_TRUE(first.ok());
  EXPECT_EQ(first->performers[2].marks[0].at, at(10));
  EXPECT_EQ(first->performers[2].marks[1].at, at(30));
}

TEST(InsertedMark, StartsAnEmptyTrack) {
  const auto first = insertedMark(smallPlan(), {Owner::crew, "op"}, 3, {2, 2});
  ASSERT_TRUE(first.ok());
  EXPECT_EQ(first->crew[1].marks.size(), 1u);
}

TEST(InsertedMark, IsRefusedWhileSomebodyStands) {
  const auto during = insertedMark(smallPlan(), {Owner::performer, "ilse"}, 3, {2, 2});
  ASSERT_FALSE(during.ok());
  EXPECT_EQ(during.problems().front().code, "mark-there");
  EXPECT_NE(during.problems().front().expected.find("mark 1 is held from 0 s to 5 s"), std::string::npos);
}

TEST(InsertedMarkAt, StandsWhereTheLegIsThen) {
  const auto quarter = insertedMarkAt(smallPlan(), {Owner::camera, ""}, 5);
  ASSERT_TRUE(quarter.ok()) << base::toText(quarter.problems().front());
  const auto& marks = quarter->camera.marks;
  EXPECT_EQ(marks[1].pos, (Point{6.8, 3.7}));
  EXPECT_EQ(marks[0].leg.sweep, -90);
  EXPECT_EQ(marks[1].leg.sweep, -270);
  const auto line = insertedMarkAt(smallPlan(), {Owner::performer, "ilse"}, 24);
  ASSERT_TRUE(line.ok());
  EXPECT_EQ(line->performers[0].marks[2].pos, (Point{5, 5}));
}

TEST(InsertedMarkAt, SendsSmoothAndEasedLegsToThePath) {
  EXPECT_EQ(codeOf(insertedMarkAt(smallPlan(), {Owner::camera, ""}, 50)), "leg-place");
  EXPECT_EQ(codeOf(insertedMarkAt(smallPlan(), {Owner::performer, "ilse"}, 58)), "leg-place");
}

TEST(InsertedMarkNear, TakesTheNearestPlaceAndItsTime) {
  const auto near = insertedMarkNear(smallPlan(), ilse(1), {5, 6.5});
  ASSERT_TRUE(near.ok());
  EXPECT_EQ(near->performers[0].marks[2].pos, (Point{5, 5}));
  EXPECT_EQ(near->performers[0].marks[2].at, at(24));
  EXPECT_EQ(codeOf(insertedMarkNear(smallPlan(), camera(3), {5, 6})), "leg-place");
  EXPECT_EQ(codeOf(insertedMarkNear(smallPlan(), ilse(3), {5, 6})), "not-there");
}

TEST(RemovedMark, UndoesAnInsertedOneUpToTheSweepsStep) {
  const auto more = insertedMarkAt(smallPlan(), {Owner::camera, ""}, 24);
  ASSERT_TRUE(more.ok());
  const auto less = removedMark(*more, camera(2));
  ASSERT_TRUE(less.ok()) << base::toText(less.problems().front());
  const auto& legs = less->camera.marks;
  ASSERT_EQ(legs.size(), 5u);
  EXPECT_NEAR(legs[1].leg.sweep, 90, 0.02);
  EXPECT_NEAR(geometry::distance(legs[1].leg.centre, {4.5, 3.7}), 0, 0.001);
}

TEST(RemovedMark, JoinsLegsAndDropsTheLastOnes) {
  const auto middle = removedMark(smallPlan(), camera(2));
  ASSERT_TRUE(middle.ok()) << base::toText(middle.problems().front());
  EXPECT_EQ(middle->camera.marks[1].leg.shape, LegShape::straight);
  const auto last = removedMark(smallPlan(), camera(4));
  ASSERT_TRUE(last.ok());
  EXPECT_EQ(last->camera.marks.back().leg, Leg{});
  EXPECT_EQ(removedMark(smallPlan(), camera(0))->camera.marks.front().id, "c1");
}

TEST(RemovedMark, LeavesTheCameraOne) {
  Plan plan = smallPlan();
  plan.camera.marks.resize(1);
  plan.camera.marks[0].leg = Leg{};
  EXPECT_EQ(codeOf(removedMark(plan, camera(0))), "camera-mark");
  EXPECT_TRUE(removedMark(plan, {Owner::performer, "tom", 0}).ok());
}

}  // namespace
}  // namespace wend::plan
