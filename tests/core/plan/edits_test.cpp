// Edits on First Batch: what they change, what they share, what they refuse.
#include <gtest/gtest.h>

#include "core/plan/edits_beats.h"
#include "core/plan/edits_keys.h"
#include "core/plan/edits_marks.h"
#include "tests/samples.h"

namespace wend::plan {
namespace {

const Plan& firstBatch() {
  static const Plan plan = samplePlan("first-batch.wend");
  return plan;
}

TEST(MovedMark, MovesOneMarkOntoItsStepAndSharesTheRest) {
  const auto moved = movedMark(firstBatch(), {Owner::performer, "ilse", 2}, {-0.70004, 2.6});
  ASSERT_TRUE(moved.ok());
  EXPECT_DOUBLE_EQ(moved->performers[0].marks[2].pos.x, -0.7);
  EXPECT_EQ(moved->performers.ref(1), firstBatch().performers.ref(1));
  EXPECT_EQ(moved->set.walls.ref(0), firstBatch().set.walls.ref(0));
  EXPECT_NE(moved->performers.ref(0), firstBatch().performers.ref(0));
}

TEST(MovedMark, KeepsAnArcTrueWhenItsEndMoves) {
  std::size_t arc = 0;
  while (firstBatch().camera.marks[arc].leg.shape != LegShape::arc) ++arc;
  const auto moved = movedMark(firstBatch(), {Owner::camera, "", arc}, {4.8, 1.3});
  ASSERT_TRUE(moved.ok()) << base::toText(moved.problems().front());
  const Mark& from = moved->camera.marks[arc];
  const Mark& to = moved->camera.marks[arc + 1];
  EXPECT_NEAR(geometry::distance(from.pos, from.leg.centre), geometry::distance(to.pos, from.leg.centre), 0.005);
}

TEST(MovedBeat, TakesEverythingThatHangsOnItAlong) {
  const double door = secondsOf(firstBatch(), firstBatch().set.openings.find("d1")->open[1].time.at);
  const auto moved = movedBeat(firstBatch(), {"b4"}, 25.5);
  ASSERT_TRUE(moved.ok()) << base::toText(moved.problems().front());
  EXPECT_NEAR(secondsOf(*moved, moved->set.openings.find("d1")->open[1].time.at) - door, 0.5, 1e-9);
}

TEST(MovedBeat, IsRefusedBeyondTheTakeWithAPlaceAndARemedy) {
  const auto moved = movedBeat(firstBatch(), {"b12"}, 400);
  ASSERT_FALSE(moved.ok());
  EXPECT_FALSE(moved.problems().front().where.empty());
  EXPECT_FALSE(moved.problems().front().remedy.empty());
}

TEST(ArrivalSet, RefusesAMarkBeforeTheOneBeforeIt) {
  const auto early = arrivalSet(firstBatch(), {Owner::performer, "ilse", 3}, 1);
  ASSERT_FALSE(early.ok());
  EXPECT_FALSE(early.problems().front().remedy.empty());
}

TEST(KeyTime, RefusesAKeyThatStartsBeforeTheOneBeforeIsDone) {
  const std::size_t last = firstBatch().iris.keys.size() - 1;
  EXPECT_FALSE(keyTimeSet(firstBatch(), {Axis::iris, last, {}}, 1).ok());
}

}  // namespace
}  // namespace wend::plan
