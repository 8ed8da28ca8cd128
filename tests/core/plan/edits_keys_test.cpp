#include "core/plan/edits_keys.h"

#include <gtest/gtest.h>

#include "core/plan/invariants.h"
#include "tests/core/plan/small_plan.h"

namespace wend::plan {
namespace {

using test::at;
using test::on;
using test::smallPlan;

std::string codeOf(const base::Result<Plan>& result) {
  return result ? "" : result.problems().front().code;
}

TEST(KeyTimeSet, KeepsTheBeatAndChangesTheOffset) {
  EXPECT_EQ(keyTimeSet(smallPlan(), {Axis::focus, 1}, 22.5)->focus.keys[1].time.at, on("b2", 2.5));
  EXPECT_EQ(keyTimeSet(smallPlan(), {Axis::zoom, 1}, 26)->zoom.keys[1].time.at, at(26));
}

TEST(KeyTimeSet, RefusesToStartBeforeTheKeyBeforeIsDone) {
  const auto early = keyTimeSet(smallPlan(), {Axis::focus, 2}, 22);
  ASSERT_FALSE(early.ok());
  const base::Problem& problem = early.problems().front();
  EXPECT_EQ(problem.code, "key-order");
  EXPECT_EQ(problem.where, "/focus/keys/2/at");
  EXPECT_EQ(problem.found, "focus key 3 starting at 22 s");
  EXPECT_EQ(problem.expected, "23 s or later, when focus key 2 is done");
  EXPECT_NE(problem.remedy.find("take less time"), std::string::npos);
}

TEST(KeyTimeSet, LeavesTheFirstKeyAtTheStart) {
  for (const KeyRef& key : {KeyRef{Axis::aim, 0}, KeyRef{Axis::focus, 0}, KeyRef{Axis::zoom, 0}, KeyRef{Axis::iris, 0},
                            KeyRef{Axis::door, 0, "d1"}, KeyRef{Axis::light, 0, "pool"}, KeyRef{Axis::level, 0, "f1"}})
    EXPECT_EQ(codeOf(keyTimeSet(smallPlan(), key, 1)), "first-key");
}

TEST(KeyTimeSet, ReachesPiecesAndDensities) {
  const Plan plan = test::equippedPlan();
  EXPECT_EQ(keyTimeSet(plan, {Axis::piece, 1, "bench"}, 22)->set.pieces[0].moved[1].time.at, on("b2", 2));
  EXPECT_EQ(keyTimeSet(plan, {Axis::nd, 1}, 21)->camera.nd[1].time.at, on("b2", 1));
  EXPECT_EQ(codeOf(keyTimeSet(plan, {Axis::piece, 0, "bench"}, 1)), "first-key");
  EXPECT_EQ(codeOf(keyTimeSet(plan, {Axis::piece, 1, "x"}, 1)), "not-there");
}

TEST(PieceMoveSet, PutsThePieceOnItsSteps) {
  const auto moved = pieceMoveSet(test::equippedPlan(), "bench", 1, {1.00004, -2}, 45.678);
  ASSERT_TRUE(moved.ok());
  EXPECT_EQ(moved->set.pieces[0].moved[1].offset, (geometry::Vec{1, -2}));
  EXPECT_EQ(moved->set.pieces[0].moved[1].turn, 45.68);
  EXPECT_EQ(codeOf(pieceMoveSet(test::equippedPlan(), "bench", 2, {}, 0)), "not-there");
  EXPECT_EQ(codeOf(pieceMoveSet(test::equippedPlan(), "bench", 1, {20000, 0}, 0)), "out-of-range");
}

TEST(DensityStopsSet, ChangesOneKey) {
  EXPECT_EQ(densityStopsSet(test::equippedPlan(), 1, 2.5)->camera.nd[1].stops, 2.5);
  EXPECT_EQ(codeOf(densityStopsSet(test::equippedPlan(), 1, -1)), "out-of-range");
  EXPECT_EQ(codeOf(densityStopsSet(test::equippedPlan(), 2, 1)), "not-there");
}

TEST(KeyNamed, NamesMovesOfPieces) {
  const auto named = keyNamed(test::equippedPlan(), {Axis::piece, 1, "bench"}, "GO", "ad1");
  EXPECT_EQ(named->set.pieces[0].moved[1].name, "GO");
  EXPECT_EQ(named->set.pieces[0].moved[1].by, "ad1");
  EXPECT_EQ(codeOf(keyNamed(test::equippedPlan(), {Axis::nd, 1}, "GO", "")), "wrong-target");
}

TEST(KeyTimeSet, LetsKeysMeetToTheMillisecond) {
  EXPECT_TRUE(keyTimeSet(smallPlan(), {Axis::focus, 2}, 23).ok());
  EXPECT_EQ(codeOf(keyTimeSet(smallPlan(), {Axis::focus, 2}, 22.999)), "key-order");
}

TEST(KeyOverSet, RefusesToRunIntoTheNextKey) {
  EXPECT_EQ(keyOverSet(smallPlan(), {Axis::focus, 1}, 4.00049)->focus.keys[1].time.over, 4);
  EXPECT_EQ(codeOf(keyOverSet(smallPlan(), {Axis::focus, 1}, 26)), "key-order");
  EXPECT_EQ(codeOf(keyOverSet(smallPlan(), {Axis::focus, 1}, -1)), "out-of-range");
}

TEST(KeyPaceSet, ReachesEveryAxis) {
  EXPECT_EQ(keyPaceSet(smallPlan(), {Axis::iris, 1}, Pace::eased)->iris.keys[1].time.pace, Pace::eased);
  EXPECT_EQ(keyPaceSet(smallPlan(), {Axis::door, 1, "d1"}, Pace::eased)->set.openings[0].open[1].time.pace,
            Pace::eased);
}

TEST(InsertedKey, ShowsWhatWasShownBefore) {
  const auto more = insertedKey(smallPlan(), Axis::focus, 30, 1);
  ASSERT_TRUE(more.ok()) << base::toText(more.problems().front());
  ASSERT_EQ(more->focus.keys.size(), 4u);
  EXPECT_EQ(more->focus.keys[2].on, smallPlan().focus.keys[1].on);
  EXPECT_EQ(more->focus.keys[2].time.at, at(30));
  EXPECT_EQ(more->focus.keys[2].time.over, 1);
}

TEST(InsertedKey, IsRefusedWhileAnotherRuns) {
  EXPECT_EQ(codeOf(insertedKey(smallPlan(), Axis::focus, 21, 0.5)), "key-order");
  EXPECT_EQ(codeOf(insertedKey(smallPlan(), Axis::focus, 44, 2)), "key-order");
}

TEST(InsertedKey, StartsAnEmptyAxisAtTheStartOfTheTake) {
  Plan plan = smallPlan();
  plan.focus.keys.clear();
  plan.zoom.keys.clear();
  plan.iris.keys.clear();
  plan.camera.aims.clear();
  for (const Axis axis : {Axis::focus, Axis::zoom, Axis::iris, Axis::aim}) {
    const auto first = insertedKey(plan, axis, 12, 2);
    ASSERT_TRUE(first.ok()) << base::toText(first.problems().front());
    EXPECT_TRUE(problemsOf(*first).empty());
  }
  EXPECT_EQ(insertedKey(plan, Axis::zoom, 12, 2)->zoom.keys[0].focal, 24);
}

TEST(InsertedKey, LeavesTheCueOfTheOneItCopiesBehind) {
  const auto more = insertedKey(smallPlan(), Axis::door, 30, 1, "d1");
  ASSERT_TRUE(more.ok());
  EXPECT_EQ(more->set.openings[0].open[2].share, 1);
  EXPECT_TRUE(more->set.openings[0].open[2].name.empty());
  EXPECT_EQ(codeOf(insertedKey(smallPlan(), Axis::door, 30, 1, "d9")), "not-there");
}

TEST(RemovedKey, HandsTheStartToTheSecondWhenTheFirstGoes) {
  const auto less = removedKey(smallPlan(), {Axis::focus, 0});
  ASSERT_TRUE(less.ok());
  EXPECT_EQ(less->focus.keys[0].time, KeyTime{});
  EXPECT_EQ(less->focus.keys[0].on, smallPlan().focus.keys[1].on);
  EXPECT_EQ(removedKey(smallPlan(), {Axis::focus, 2})->focus.keys.size(), 2u);
  EXPECT_EQ(codeOf(removedKey(smallPlan(), {Axis::focus, 3})), "not-there");
}

TEST(AimTargetSet, TakesWhatACameraCanPointAt) {
  for (const Target& on : {Target{OnPerformer{"tom"}}, Target{OnProp{"hands"}}, Target{OnPoint{{1, 2}, 1}},
                           Target{OnBearing{400, 5}}, Target{OnTravel{180, 0}}}) {
    const auto set = aimTargetSet(smallPlan(), 1, on);
    ASSERT_TRUE(set.ok());
    EXPECT_EQ(set->camera.aims[1].on, on);
  }
  EXPECT_EQ(codeOf(aimTargetSet(smallPlan(), 1, OnSplit{{"ilse", "tom"}})), "wrong-target");
  EXPECT_EQ(codeOf(aimTargetSet(smallPlan(), 1, OnDistance{3})), "wrong-target");
  EXPECT_EQ(codeOf(aimTargetSet(smallPlan(), 1, OnPerformer{"nobody"})), "missing-reference");
  EXPECT_EQ(codeOf(aimTargetSet(smallPlan(), 1, OnBearing{0, 91})), "out-of-range");
}

TEST(AimPlaceSet, PutsTheTargetInTheFrame) {
  EXPECT_EQ(aimPlaceSet(smallPlan(), 1, {0.2, -0.1})->camera.aims[1].place, (std::array<double, 2>{0.2, -0.1}));
  EXPECT_EQ(codeOf(aimPlaceSet(smallPlan(), 1, {9, 0})), "out-of-range");
  EXPECT_EQ(aimTurnsSet(smallPlan(), 1, -1)->camera.aims[1].turns, -1);
  EXPECT_EQ(codeOf(aimTurnsSet(smallPlan(), 1, 101)), "out-of-range");
}

TEST(FocusTargetSet, TakesWhatALensCanBeSharpOn) {
  for (const Target& on : {Target{OnPerformer{"tom"}}, Target{OnProp{"hands"}}, Target{OnPoint{{1, 2}, 1}},
                           Target{OnSplit{{"tom", "hands"}}}, Target{OnDistance{2.5}}}) {
    const auto set = focusTargetSet(smallPlan(), 1, on);
    ASSERT_TRUE(set.ok());
    EXPECT_EQ(set->focus.keys[1].on, on);
  }
  EXPECT_EQ(codeOf(focusTargetSet(smallPlan(), 1, OnBearing{})), "wrong-target");
  EXPECT_EQ(codeOf(focusTargetSet(smallPlan(), 1, OnSplit{{"tom"}})), "wrong-target");
  EXPECT_EQ(codeOf(focusTargetSet(smallPlan(), 1, OnDistance{0})), "out-of-range");
}

TEST(ZoomKeys, AreEitherAFocalLengthOrASize) {
  const auto focal = zoomFocalSet(smallPlan(), 1, 50.004);
  ASSERT_TRUE(focal.ok());
  EXPECT_EQ(focal->zoom.keys[1].focal, 50);
  EXPECT_TRUE(focal->zoom.keys[1].size.empty());
  const auto size = zoomSizeSet(*focal, 1, "close", OnPerformer{"tom"});
  ASSERT_TRUE(size.ok());
  EXPECT_EQ(size->zoom.keys[1].focal, 0);
  EXPECT_EQ(codeOf(zoomSizeSet(*focal, 1, "", OnPerformer{"tom"})), "size");
  EXPECT_EQ(codeOf(zoomSizeSet(*focal, 1, "close", OnProp{"hands"})), "wrong-target");
  EXPECT_EQ(codeOf(zoomFocalSet(smallPlan(), 1, 0)), "out-of-range");
}

TEST(IrisStopSet, TakesTNumbers) {
  EXPECT_EQ(irisStopSet(smallPlan(), 1, 5.65685)->iris.keys[1].stop, 5.657);
  EXPECT_EQ(codeOf(irisStopSet(smallPlan(), 1, 0)), "out-of-range");
  EXPECT_EQ(codeOf(irisStopSet(smallPlan(), 7, 4)), "not-there");
  EXPECT_TRUE(irisKeysSet(smallPlan(), {})->iris.keys.empty());
  EXPECT_EQ(irisKeysSet(smallPlan(), {{{}, 5.65685, {}}})->iris.keys[0].stop, 5.657);
  EXPECT_EQ(codeOf(irisKeysSet(smallPlan(), {{{{"", 1}, 0, Pace::even}, 4, {}}})), "first-key");
}

TEST(KeyShareSet, OpensDoorsAndRaisesLevels) {
  EXPECT_EQ(keyShareSet(smallPlan(), {Axis::door, 1, "d1"}, 0.5)->set.openings[0].open[1].share, 0.5);
  EXPECT_EQ(keyShareSet(smallPlan(), {Axis::level, 1, "f1"}, 0.25)->fixtures[0].level[1].share, 0.25);
  EXPECT_EQ(codeOf(keyShareSet(smallPlan(), {Axis::iris, 1}, 0.5)), "wrong-target");
  EXPECT_EQ(codeOf(keyShareSet(smallPlan(), {Axis::door, 1, "d1"}, 1.5)), "out-of-range");
}

TEST(ReadingsSet, ReplacesWhatALightStateReads) {
  const auto read = readingsSet(smallPlan(), "pool", 1, {{{1, 2}, 5.6, {}}});
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(read->set.areas[0].states[1].readings[0].stop, 5.6);
  EXPECT_EQ(codeOf(readingsSet(smallPlan(), "pool", 5, {})), "not-there");
}

TEST(KeyNamed, NamesTheCueAndWhoGivesIt) {
  const auto named = keyNamed(smallPlan(), {Axis::light, 1, "pool"}, "LIGHT 2", "ad1");
  ASSERT_TRUE(named.ok());
  EXPECT_EQ(named->set.areas[0].states[1].name, "LIGHT 2");
  EXPECT_EQ(named->set.areas[0].states[1].by, "ad1");
  EXPECT_EQ(codeOf(keyNamed(smallPlan(), {Axis::focus, 1}, "x", "y")), "wrong-target");
}

}  // namespace
}  // namespace wend::plan
