#include "core/plan/edits_beats.h"

#include <gtest/gtest.h>

#include "core/plan/invariants.h"
#include "tests/core/plan/small_plan.h"

namespace wend::plan {
namespace {

using test::at;
using test::ilse;
using test::on;
using test::smallPlan;

std::string codeOf(const base::Result<Plan>& result) {
  return result ? "" : result.problems().front().code;
}

TEST(MovedBeat, TakesAllThatHangsOnItAlongAndNothingElse) {
  const auto moved = movedBeat(smallPlan(), {"b2"}, 21);
  ASSERT_TRUE(moved.ok()) << base::toText(moved.problems().front());
  const auto second = [&](const MomentRef& ref) { return *secondsAt(*moved, ref) - *secondsAt(smallPlan(), ref); };
  EXPECT_NEAR(second(Arrival{ilse(1)}), 1, 1e-12);
  EXPECT_NEAR(second(KeyStart{{Axis::door, 1, "d1"}}), 1, 1e-12);
  EXPECT_NEAR(second(KeyStart{{Axis::light, 1, "pool"}}), 1, 1e-12);
  EXPECT_NEAR(second(KeyStart{{Axis::level, 1, "f1"}}), 1, 1e-12);
  EXPECT_NEAR(second(KeyStart{{Axis::aim, 1}}), 1, 1e-12);
  EXPECT_NEAR(second(KeyStart{{Axis::iris, 1}}), 1, 1e-12);
  EXPECT_NEAR(second(PropEntryStart{"hands", 1}), 1, 1e-12);
  EXPECT_NEAR(second(SpeechFrom{0}), 1, 1e-12);
  EXPECT_NEAR(second(SpeechUntil{0}), 1, 1e-12);
  EXPECT_EQ(second(Arrival{ilse(2)}), 0);
  EXPECT_EQ(second(HandoverStart{0}), 0);
}

TEST(MovedBeat, SharesEverythingButTheBeat) {
  const Plan plan = smallPlan();
  const auto moved = movedBeat(plan, {"b2"}, 21);
  ASSERT_TRUE(moved.ok());
  EXPECT_EQ(moved->performers.ref(0), plan.performers.ref(0));
  EXPECT_EQ(moved->set.openings.ref(0), plan.set.openings.ref(0));
  EXPECT_EQ(moved->beats.ref(0), plan.beats.ref(0));
  EXPECT_NE(moved->beats.ref(1), plan.beats.ref(1));
}

TEST(MovedBeat, NamesEverythingThatWouldComeOutOfOrder) {
  const auto moved = movedBeat(smallPlan(), {"b2"}, 33);
  ASSERT_FALSE(moved.ok());
  std::vector<std::string> places;
  for (const base::Problem& problem : moved.problems()) places.push_back(problem.where);
  EXPECT_EQ(places, (std::vector<std::string>{"/performers/0/marks/2/at"}));
  const auto far = movedBeat(smallPlan(), {"b2"}, 46);
  ASSERT_FALSE(far.ok());
  EXPECT_GE(far.problems().size(), 2u);
}

TEST(MovedBeat, StaysInTheTakeAndInOrderOfTime) {
  EXPECT_EQ(codeOf(movedBeat(smallPlan(), {"b3"}, 61)), "beat-outside");
  EXPECT_EQ(codeOf(movedBeat(smallPlan(), {"b3"}, -1)), "out-of-range");
  EXPECT_EQ(codeOf(movedBeat(smallPlan(), {"b9"}, 1)), "not-there");
  auto plan = insertedBeat(smallPlan(), 50, "end of speech");
  ASSERT_TRUE(plan.ok());
  plan = movedBeat(*plan, {"b4"}, 10);
  ASSERT_TRUE(plan.ok());
  EXPECT_EQ(plan->beats[1].id.text(), "b4");
  EXPECT_EQ(plan->beats[2].id.text(), "b2");
}

TEST(MovedBeat, RefusesToLeaveAnAxisWithoutAStart) {
  const auto bound = boundMoment(smallPlan(), KeyStart{{Axis::focus, 0}}, "b1");
  ASSERT_TRUE(bound.ok());
  const auto moved = movedBeat(*bound, {"b1"}, 0.5);
  ASSERT_FALSE(moved.ok());
  EXPECT_EQ(moved.problems().front().code, "first-key");
  EXPECT_EQ(moved.problems().front().where, "/focus/keys/0/at");
}

TEST(RenamedBeat, ChangesTheNameAndRefusesBrokenText) {
  EXPECT_EQ(renamedBeat(smallPlan(), {"b2"}, "door opens")->beats[1].name, "door opens");
  EXPECT_EQ(beatCueSet(smallPlan(), {"b2"}, "GO DOOR")->beats[1].cue, "GO DOOR");
  EXPECT_EQ(codeOf(renamedBeat(smallPlan(), {"b2"}, "\xff")), "text");
  EXPECT_EQ(codeOf(renamedBeat(smallPlan(), {"b2"}, std::string("a\x01"))), "text");
  EXPECT_EQ(codeOf(beatCueSet(smallPlan(), {"b2"}, std::string(5000, 'a'))), "text");
}

TEST(InsertedBeat, StandsInOrderWithAFreshId) {
  const auto more = insertedBeat(smallPlan(), 30.00004, "knock");
  ASSERT_TRUE(more.ok());
  EXPECT_EQ(more->beats[2].id.text(), "b4");
  EXPECT_EQ(more->beats[2].time, 30);
  EXPECT_EQ(codeOf(insertedBeat(smallPlan(), 99, "late")), "beat-outside");
}

TEST(RemovedBeat, LeavesEverythingAtItsSecond) {
  const Plan plan = smallPlan();
  const auto gone = removedBeat(plan, {"b2"});
  ASSERT_TRUE(gone.ok()) << base::toText(gone.problems().front());
  EXPECT_FALSE(hasBeat(*gone, "b2"));
  for (const MomentRef& ref : {MomentRef{Arrival{ilse(1)}}, MomentRef{KeyStart{{Axis::door, 1, "d1"}}},
                               MomentRef{KeyStart{{Axis::light, 1, "pool"}}}, MomentRef{PropEntryStart{"hands", 1}},
                               MomentRef{KeyStart{{Axis::focus, 1}}}, MomentRef{SpeechUntil{0}}})
    EXPECT_EQ(secondsAt(*gone, ref), secondsAt(plan, ref));
  EXPECT_EQ(gone->performers[0].marks[1].at, at(18));
  EXPECT_EQ(gone->performers.ref(1), plan.performers.ref(1));
  EXPECT_TRUE(problemsOf(*gone).empty());
}

TEST(RemovedBeat, FreesPiecesDensitiesAndCables) {
  const Plan plan = test::equippedPlan();
  const auto door = removedBeat(plan, {"b2"});
  ASSERT_TRUE(door.ok());
  EXPECT_EQ(door->set.pieces[0].moved[1].time.at, at(21));
  EXPECT_EQ(door->camera.nd[1].time.at, at(20));
  const auto window = removedBeat(plan, {"b3"});
  ASSERT_TRUE(window.ok());
  EXPECT_EQ(window->cables[0].from, on("b1"));
  EXPECT_EQ(window->cables[0].until, at(40));
}

TEST(RemovedBeat, KeepsALoggedTapAsANote) {
  const auto gone = removedBeat(smallPlan(), {"b2"});
  ASSERT_TRUE(gone.ok());
  EXPECT_EQ(gone->takes[0].beats.size(), 1u);
  ASSERT_EQ(gone->takes[0].notes.size(), 1u);
  EXPECT_EQ(gone->takes[0].notes[0].at, 21);
  EXPECT_EQ(gone->takes[0].notes[0].text, "door");
}

TEST(RemovedBeat, RefusesOneThatIsNotThere) {
  EXPECT_EQ(codeOf(removedBeat(smallPlan(), {"end"})), "not-there");
}

TEST(BoundMoment, KeepsItsSecondAndFollowsTheBeatAfterwards) {
  const MomentRef ref = Arrival{ilse(2)};
  const auto bound = boundMoment(smallPlan(), ref, "b2");
  ASSERT_TRUE(bound.ok());
  EXPECT_EQ(bound->performers[0].marks[2].at, on("b2", 10));
  EXPECT_EQ(secondsAt(*bound, ref), 30);
  const auto freed = freedMoment(*bound, ref);
  ASSERT_TRUE(freed.ok());
  EXPECT_TRUE(*freed == smallPlan());
}

TEST(BoundMoment, HangsOnTheEndOfTheTakeToo) {
  const auto bound = boundMoment(smallPlan(), Arrival{ilse(3)}, "end");
  ASSERT_TRUE(bound.ok());
  EXPECT_EQ(bound->performers[0].marks[3].at, on("end", -10));
  EXPECT_EQ(codeOf(boundMoment(smallPlan(), Arrival{ilse(3)}, "b9")), "not-there");
}

TEST(BoundMoment, ReachesTimesOfEveryKind) {
  for (const MomentRef& ref :
       {MomentRef{Arrival{{Owner::camera, "", 2}}}, MomentRef{Leaving{ilse(0)}}, MomentRef{KeyStart{{Axis::zoom, 1}}},
        MomentRef{PropEntryStart{"hands", 1}}, MomentRef{SpeechFrom{0}}, MomentRef{SpeechUntil{0}},
        MomentRef{HandoverStart{0}}, MomentRef{Arrival{{Owner::crew, "ac1", 1}}}}) {
    const auto bound = boundMoment(smallPlan(), ref, "b3");
    ASSERT_TRUE(bound.ok()) << ref.index();
    EXPECT_NEAR(*secondsAt(*bound, ref), *secondsAt(smallPlan(), ref), 5e-4);
  }
}

TEST(BoundMoment, OfAMarkLeftAtOnceGivesItALeavingTime) {
  const auto bound = boundMoment(smallPlan(), Leaving{ilse(1)}, "b2");
  ASSERT_TRUE(bound.ok());
  EXPECT_EQ(bound->performers[0].marks[1].until, on("b2", -2));
}

TEST(RetimedMoment, RefusesReferencesThatLeadNowhere) {
  for (const MomentRef& ref : {MomentRef{PullStart{0}}, MomentRef{SpeechFrom{3}}, MomentRef{HandoverStart{1}},
                               MomentRef{PropEntryStart{"x", 0}}, MomentRef{PropEntryStart{"hands", 5}},
                               MomentRef{KeyStart{{Axis::focus, 9}}}}) {
    EXPECT_EQ(codeOf(retimedMoment(smallPlan(), ref, 1)), "not-there");
    EXPECT_FALSE(secondsAt(smallPlan(), ref));
  }
}

TEST(RetimedMoment, RefusesALineThatEndsBeforeItStarts) {
  EXPECT_EQ(codeOf(retimedMoment(smallPlan(), SpeechUntil{0}, 19)), "span-backwards");
  EXPECT_EQ(retimedMoment(smallPlan(), SpeechUntil{0}, 26)->speech[0].until, on("b2", 6));
}

}  // namespace
}  // namespace wend::plan
