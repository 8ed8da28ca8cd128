#include "core/plan/diff.h"

#include <gtest/gtest.h>

#include <functional>

#include "core/plan/edits_camera.h"
#include "core/plan/edits_entities.h"
#include "core/plan/edits_keys.h"
#include "core/plan/edits_legs.h"
#include "core/plan/edits_marks.h"
#include "core/plan/edits_people.h"
#include "core/plan/edits_plan.h"
#include "tests/core/plan/small_plan.h"

namespace wend::plan {
namespace {

using test::smallPlan;

/// The difference an edit makes, with the one flag it should raise taken down again.
void expectOnly(const base::Result<Plan>& edited, bool PlanDiff::*flag) {
  ASSERT_TRUE(edited.ok());
  PlanDiff diff = diffOf(smallPlan(), *edited);
  EXPECT_TRUE(diff.*flag);
  EXPECT_TRUE(diff.any());
  diff.*flag = false;
  EXPECT_FALSE(diff.any());
}

TEST(DiffOf, APlanAndItselfIsNothing) {
  EXPECT_FALSE(diffOf(smallPlan(), smallPlan()).any());
  EXPECT_EQ(diffOf(smallPlan(), smallPlan()), PlanDiff{});
}

TEST(DiffOf, RaisesOneFlagForOneEdit) {
  const Plan plan = smallPlan();
  expectOnly(titled(plan, "x"), &PlanDiff::headings);
  expectOnly(clockLengthSet(plan, 61), &PlanDiff::clock);
  expectOnly(movedMark(plan, {Owner::camera, "", 4}, {1, 1}), &PlanDiff::cameraMarks);
  expectOnly(legPaced(plan, {Owner::camera, "", 3}, Pace::eased), &PlanDiff::cameraMarks);
  expectOnly(aimTurnsSet(plan, 1, 1), &PlanDiff::aims);
  expectOnly(gateSet(plan, 36, 24), &PlanDiff::camera);
  expectOnly(closeFocusSet(plan, 0.5), &PlanDiff::lens);
  expectOnly(blurShareSet(plan, 0.5), &PlanDiff::focus);
  expectOnly(zoomFocalSet(plan, 0, 40), &PlanDiff::zoom);
  expectOnly(irisStopSet(plan, 0, 4), &PlanDiff::iris);
  expectOnly(speechSet(plan, {}), &PlanDiff::speech);
  expectOnly(handoversSet(plan, {}), &PlanDiff::handovers);
  expectOnly(thresholdFactorSet(plan, "pan", 2), &PlanDiff::thresholds);
  expectOnly(acceptedSnag(plan, "a", "b", "c"), &PlanDiff::accepted);
  expectOnly(loggedTake(plan, {}), &PlanDiff::takes);
  expectOnly(mainsSet(plan, 50), &PlanDiff::clock);
  expectOnly(siteSet(plan, Site{54, 12, {2031, 6, 21}, 2, {}}), &PlanDiff::site);
  expectOnly(sizeShareSet(plan, "knees", 0.7), &PlanDiff::sizes);
  expectOnly(insertedKey(plan, Axis::nd, 0, 0), &PlanDiff::density);
  expectOnly(trailingCableSet(plan, TrailingCable{{1, 1}, 20, {}}), &PlanDiff::camera);
  expectOnly(zoomLimitSet(plan, 50), &PlanDiff::lens);
}

TEST(DiffOf, NamesEntitiesByTable) {
  const Plan plan = smallPlan();
  const auto taller = statureSet(plan, "tom", 1.9);
  ASSERT_TRUE(taller.ok());
  PlanDiff expected;
  expected.performers.changed = {"tom"};
  EXPECT_EQ(diffOf(plan, *taller), expected);
  EXPECT_TRUE(expected.people());
  EXPECT_FALSE(expected.set());
}

TEST(DiffOf, NamesWhatIsLaidHeldAndSent) {
  const Plan plan = test::equippedPlan();
  PlanDiff expected;
  expected.cables.removed = {"k1"};
  EXPECT_EQ(diffOf(plan, *removed<Cable>(plan, "k1")), expected);
  EXPECT_TRUE(expected.set());
  expected = {};
  Pole boom = plan.poles[0];
  boom.reach = 2;
  expected.poles.changed = {"boom"};
  EXPECT_EQ(diffOf(plan, *replaced(plan, boom)), expected);
  EXPECT_TRUE(expected.people());
  expected = {};
  Link spare = plan.links[0];
  spare.id = base::Id<Link>("l2");
  expected.links.added = {"l2"};
  EXPECT_EQ(diffOf(plan, *added(plan, spare)), expected);
  EXPECT_TRUE(expected.people());
  expected = {};
  expected.pieces.changed = {"bench"};
  EXPECT_EQ(diffOf(plan, *pieceMoveSet(plan, "bench", 1, {1, 1}, 0)), expected);
}

TEST(DiffOf, TellsAddedRemovedAndReorderedApart) {
  const Plan plan = smallPlan();
  auto next = added(plan, Piece{base::Id<Piece>("rack"), "", Disc{{1, 1}, 1}, 0, 1, {}, {}, {}, {}, {}}, 0);
  ASSERT_TRUE(next.ok());
  next = removed<Piece>(*next, "column");
  ASSERT_TRUE(next.ok());
  EXPECT_EQ(diffOf(plan, *next).pieces, (TableDiff{{"rack"}, {"column"}, {}, false}));
  const auto swapped = reordered<Piece>(plan, "m1", 0);
  ASSERT_TRUE(swapped.ok());
  EXPECT_EQ(diffOf(plan, *swapped).pieces, (TableDiff{{}, {}, {}, true}));
}

TEST(DiffOf, ComparesValuesWherePointersDiffer) {
  Plan copy = smallPlan();
  const Plan plan = copy;
  copy.performers.replace(0, Performer(copy.performers[0]));
  EXPECT_NE(copy.performers.ref(0), plan.performers.ref(0));
  EXPECT_FALSE(diffOf(plan, copy).any());
}

}  // namespace
}  // namespace wend::plan
