#include "core/plan/edits_plan.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/plan/diff.h"
#include "core/plan/edits_beats.h"
#include "core/plan/edits_entities.h"
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

TEST(Headings, AreSet) {
  EXPECT_EQ(titled(smallPlan(), "First")->title, "First");
  EXPECT_EQ(revisionSet(smallPlan(), "D")->revision, "D");
  EXPECT_EQ(notesSet(smallPlan(), "two\nlines")->notes, "two\nlines");
  EXPECT_EQ(displayUnitSet(smallPlan(), LengthUnit::feet)->display, LengthUnit::feet);
  EXPECT_EQ(codeOf(titled(smallPlan(), "\xff")), "text");
}

TEST(ClockLength, KeepsTheBeatsInAndTakesTheEndAlong) {
  const auto bound = boundMoment(smallPlan(), Arrival{test::ilse(3)}, "end");
  ASSERT_TRUE(bound.ok());
  const auto longer = clockLengthSet(*bound, 70);
  ASSERT_TRUE(longer.ok());
  EXPECT_EQ(secondsAt(*longer, Arrival{test::ilse(3)}), 60);
  EXPECT_EQ(codeOf(clockLengthSet(smallPlan(), 39)), "beat-outside");
  EXPECT_EQ(codeOf(clockLengthSet(*bound, 45)), "mark-order");
  EXPECT_EQ(codeOf(clockLengthSet(smallPlan(), 0)), "out-of-range");
}

TEST(FrameRate, IsAFractionThatTimecodeCanCount) {
  const auto drop = frameRateSet(smallPlan(), 30000, 1001, true);
  ASSERT_TRUE(drop.ok());
  EXPECT_EQ(drop->clock.startTimecode, "00:00:00;00");
  EXPECT_EQ(codeOf(frameRateSet(smallPlan(), 24, 1, true)), "drop-frame");
  EXPECT_EQ(codeOf(frameRateSet(smallPlan(), 0, 1, false)), "rate");
  EXPECT_EQ(codeOf(frameRateSet(smallPlan(), 24, 0, false)), "rate");
}

TEST(Mains, AreFiftyOrSixty) {
  EXPECT_EQ(mainsSet(smallPlan(), 60)->clock.mainsHz, 60);
  EXPECT_EQ(codeOf(mainsSet(smallPlan(), 55)), "mains");
  EXPECT_EQ(*mainsSet(*mainsSet(smallPlan(), 60), std::nullopt), smallPlan());
}

TEST(Cycle, IsMinutesAboveNone) {
  EXPECT_EQ(cycleSet(smallPlan(), 12.5)->clock.cycleMinutes, 12.5);
  EXPECT_EQ(codeOf(cycleSet(smallPlan(), 0)), "out-of-range");
}

TEST(SiteSet, TakesAPlaceOnEarthAndADay) {
  const auto placed = siteSet(smallPlan(), Site{54.123456, -12, {2031, 6, 21}, 2, {}});
  ASSERT_TRUE(placed.ok());
  EXPECT_EQ(placed->site->latitude, 54.1235);
  EXPECT_EQ(codeOf(siteSet(smallPlan(), Site{91, 0, {2031, 6, 21}, 0, {}})), "out-of-range");
  EXPECT_EQ(codeOf(siteSet(smallPlan(), Site{9, 0, {2031, 6, 31}, 0, {}})), "date");
  EXPECT_EQ(*siteSet(*placed, std::nullopt), smallPlan());
}

TEST(SizeShare, IsAddedChangedAndTakenOut) {
  auto sized = sizeShareSet(smallPlan(), "knees", 0.71239);
  EXPECT_EQ(sized->sizes.at("knees"), 0.7124);
  EXPECT_EQ(*sizeShareSet(*sized, "knees", std::nullopt), smallPlan());
  EXPECT_EQ(codeOf(sizeShareSet(smallPlan(), "knees", 0)), "out-of-range");
  EXPECT_EQ(codeOf(sizeShareSet(smallPlan(), "", 1)), "not-there");
  EXPECT_EQ(codeOf(sizeShareSet(smallPlan(), "\xff", 1)), "text");
}

TEST(StartTimecode, ExistsAtTheRate) {
  EXPECT_EQ(startTimecodeSet(smallPlan(), "10:00:00:23")->clock.startTimecode, "10:00:00:23");
  EXPECT_EQ(codeOf(startTimecodeSet(smallPlan(), "10:00:00:24")), "timecode");
  EXPECT_EQ(codeOf(startTimecodeSet(smallPlan(), "10:00")), "timecode");
  const auto late = startTimecodeSet(smallPlan(), "10:00:00:23");
  EXPECT_TRUE(frameRateSet(*late, 25, 1, false).ok());
  const auto minute = startTimecodeSet(smallPlan(), "00:01:00:00");
  EXPECT_EQ(codeOf(frameRateSet(*minute, 30000, 1001, true)), "timecode");
}

TEST(TimeOfDay, IsASecondOfTheDay) {
  EXPECT_EQ(timeOfDaySet(smallPlan(), 22440.4)->clock.timeOfDay, 22440);
  EXPECT_EQ(codeOf(timeOfDaySet(smallPlan(), 86400)), "out-of-range");
  EXPECT_EQ(timeOfDaySet(smallPlan(), std::nullopt)->clock.timeOfDay, std::nullopt);
}

TEST(Cues, AreReplacedWhole) {
  EXPECT_EQ(speechSet(smallPlan(), {{"tom", at(1), at(2), "", {}}})->speech[0].who, "tom");
  EXPECT_EQ(codeOf(speechSet(smallPlan(), {{"nobody", at(1), at(2), "", {}}})), "missing-reference");
  EXPECT_EQ(handoversSet(smallPlan(), {})->handovers.size(), 0u);
  EXPECT_EQ(codeOf(handoversSet(smallPlan(), {{"boom", "ac1", "nobody", at(1), 1, {}}})), "missing-reference");
}

TEST(ThresholdFactor, OfOneLeavesThePlan) {
  const auto half = thresholdFactorSet(smallPlan(), "pan", 0.5);
  ASSERT_TRUE(half.ok());
  EXPECT_EQ(half->thresholds.at("pan"), 0.5);
  EXPECT_TRUE(thresholdFactorSet(*half, "pan", 1)->thresholds.empty());
  EXPECT_EQ(codeOf(thresholdFactorSet(smallPlan(), "pan", 0)), "out-of-range");
}

TEST(AcceptedSnag, IsListedOnceAndCanBeTakenBack) {
  const auto once = acceptedSnag(smallPlan(), "pan/camera//b2/1", "DP", "wanted");
  ASSERT_TRUE(once.ok());
  ASSERT_EQ(once->accepted.size(), 2u);
  const auto twice = acceptedSnag(*once, "pan/camera//b2/1", "director", "even so");
  ASSERT_TRUE(twice.ok());
  ASSERT_EQ(twice->accepted.size(), 2u);
  EXPECT_EQ(twice->accepted[1].by, "director");
  const auto back = unacceptedSnag(*twice, "pan/camera//b2/1");
  ASSERT_TRUE(back.ok());
  EXPECT_TRUE(*back == smallPlan());
  EXPECT_EQ(codeOf(unacceptedSnag(*back, "pan/camera//b2/1")), "not-there");
  EXPECT_EQ(codeOf(acceptedSnag(smallPlan(), "", "DP", "")), "not-there");
}

TEST(LoggedTake, JoinsTheOthers) {
  Take take;
  take.number = 2;
  take.beats = {{"b1", 0.40049}};
  const auto logged = loggedTake(smallPlan(), take);
  ASSERT_TRUE(logged.ok());
  ASSERT_EQ(logged->takes.size(), 2u);
  EXPECT_EQ(logged->takes[1].beats[0].second, 0.4);
}

TEST(Added, PutsANewEntityOnItsStepsAndRefusesATakenId) {
  const Gear stand{base::Id<Gear>("g2"), "stand", {1.00001, 2}, 0.3, 2, {}};
  const auto more = added(smallPlan(), stand, 0);
  ASSERT_TRUE(more.ok());
  EXPECT_EQ(more->gear[0].id.text(), "g2");
  EXPECT_EQ(more->gear[0].pos, (Point{1, 2}));
  EXPECT_EQ(codeOf(added(*more, stand)), "id-twice");
  EXPECT_EQ(codeOf(added(smallPlan(), Gear{base::Id<Gear>("ilse"), "", {}, 0.3, 2, {}})), "id-twice");
  EXPECT_EQ(codeOf(added(smallPlan(), Gear{base::Id<Gear>("no id"), "", {}, 0.3, 2, {}})), "id-word");
  EXPECT_EQ(codeOf(added(smallPlan(), Gear{base::Id<Gear>("g3"), "", {}, -1, 2, {}})), "out-of-range");
  EXPECT_EQ(codeOf(added(smallPlan(), Beat{base::Id<Beat>("end"), "", "", 1, {}})), "id-reserved");
}

TEST(Removed, IsRefusedWhileSomethingNamesIt) {
  const auto gone = removed<Performer>(smallPlan(), "ilse");
  ASSERT_FALSE(gone.ok());
  std::vector<std::string> places;
  for (const base::Problem& problem : gone.problems()) {
    EXPECT_EQ(problem.code, "missing-reference");
    places.push_back(problem.where);
  }
  for (const char* place : {"/props/0/track/1/by", "/crew/0/needs/0/sees", "/camera/aims/1/on", "/focus/keys/0/on",
                            "/focus/keys/2/on", "/zoom/keys/1/of", "/speech/0/who"})
    EXPECT_EQ(std::count(places.begin(), places.end(), place), 1) << place;
  EXPECT_EQ(codeOf(removed<Wall>(smallPlan(), "w1")), "missing-reference");
  EXPECT_EQ(codeOf(removed<Shelter>(smallPlan(), "KA")), "missing-reference");
  EXPECT_EQ(codeOf(removed<Crew>(smallPlan(), "op")), "missing-reference");
}

TEST(Removed, IsRefusedWhileEquipmentNamesIt) {
  const Plan plan = test::equippedPlan();
  for (const auto& gone :
       {removed<Crew>(plan, "ac1"), removed<Gear>(plan, "g1"), removed<Pole>(plan, "boom"), removed<Link>(plan, "l1")})
    EXPECT_EQ(codeOf(gone), "missing-reference");
  EXPECT_TRUE(removed<Cable>(plan, "k1")->cables.empty());
}

TEST(Removed, TakesOutWhatNothingNames) {
  EXPECT_TRUE(removed<Opening>(smallPlan(), "d1")->set.openings.empty());
  EXPECT_TRUE(removed<Gear>(smallPlan(), "g1")->gear.empty());
  EXPECT_EQ(codeOf(removed<Gear>(smallPlan(), "g7")), "not-there");
}

TEST(Replaced, ChangesOneEntity) {
  Piece bench = smallPlan().set.pieces[0];
  bench.hot = true;
  const auto hot = replaced(smallPlan(), bench);
  ASSERT_TRUE(hot.ok());
  EXPECT_TRUE(hot->set.pieces[0].hot);
  bench.id = base::Id<Piece>("other");
  EXPECT_EQ(codeOf(replaced(smallPlan(), bench)), "not-there");
}

TEST(Reordered, PutsAnEntityElsewhereInItsList) {
  const auto last = reordered<Piece>(smallPlan(), "bench", 2);
  ASSERT_TRUE(last.ok());
  EXPECT_EQ(last->set.pieces[2].id.text(), "bench");
  EXPECT_TRUE(diffOf(smallPlan(), *last).pieces.reordered);
  EXPECT_EQ(codeOf(reordered<Piece>(smallPlan(), "bench", 3)), "not-there");
}

TEST(FreshId, IsTakenByNothing) {
  EXPECT_EQ(freshId(smallPlan(), "b"), "b4");
  EXPECT_EQ(freshId(smallPlan(), "wall"), "wall1");
  EXPECT_EQ(freshId(smallPlan(), "c1"), "c1x2");
  EXPECT_EQ(freshId(smallPlan(), "c9"), "c9");
  EXPECT_EQ(freshId(test::equippedPlan(), "l"), "l2");
  EXPECT_EQ(freshId(test::equippedPlan(), "k"), "k2");
  EXPECT_EQ(freshId(test::equippedPlan(), "k0"), "k0x2");
}

}  // namespace
}  // namespace wend::plan
