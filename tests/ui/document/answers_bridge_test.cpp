#include "ui/document/answers_bridge.h"

#include <gtest/gtest.h>

#include <QTest>

#include "core/plan/edits_camera.h"
#include "core/plan/edits_marks.h"
#include "core/sight/ground_map.h"
#include "tests/ui/details/one_room.h"

namespace wend::ui {
namespace {

using plan::Plan;

class EditedOneRoom : public OneRoom {
 protected:
  /// Until the whole take of the plan is there, its ground included.
  void edit(const base::Result<Plan>& edited) {
    ASSERT_TRUE(edited.ok());
    const auto before = bridge.answers()->ground;
    document.propose(std::make_shared<const Plan>(*edited), QStringLiteral("edit"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return !bridge.stale() && bridge.answers()->ground != before; }, 60000));
  }
  void expectAsIfNothingWereKnownBefore() {
    const auto take = *answers::Take::of(document.plan());
    const auto evidence = *answers::evidenceOf(*take);
    ASSERT_EQ(bridge.answers()->take->planPtr(), document.plan());
    const auto alone = snags::snagsOf(*evidence);
    ASSERT_EQ(bridge.answers()->snags->size(), alone.size());
    for (std::size_t i = 0; i < alone.size(); ++i) EXPECT_EQ((*bridge.answers()->snags)[i].text, alone[i].text);
    const auto& sights = bridge.answers()->evidence->sight;
    ASSERT_EQ(sights.size(), evidence->sight.size());
    for (std::size_t i = 0; i < sights.size(); ++i) {
      ASSERT_EQ(sights[i].seen.size(), evidence->sight[i].seen.size());
      for (std::size_t k = 0; k < sights[i].seen.size(); ++k)
        EXPECT_EQ(sights[i].seen[k].span, evidence->sight[i].seen[k].span);
    }
    const auto ground = *answers::groundOf(*take, {plan().sightRules.height});
    EXPECT_TRUE(bridge.answers()->ground->steps() == ground->steps());
  }
};

TEST_F(EditedOneRoom, HasTheAnswersOfItsOwnPlanAfterEveryEdit) {
  bridge.finish();
  const plan::Crew& crew = *plan().crew.find("boom");
  ASSERT_FALSE(crew.marks.empty());
  edit(plan::movedMark(plan(), {plan::Owner::crew, crew.id.text(), 0}, crew.marks[0].pos + geometry::Vec{0.4, 0.2}));
  expectAsIfNothingWereKnownBefore();
  EXPECT_EQ(bridge.answers()->ground->stepsFound(), 0u) << "the lens goes its old way";
  edit(plan::exposureIndexSet(plan(), 640));
  expectAsIfNothingWereKnownBefore();
  const auto& marks = plan().camera.marks;
  edit(plan::movedMark(plan(), {plan::Owner::camera, "", 1}, marks[1].pos + geometry::Vec{0.2, 0}));
  expectAsIfNothingWereKnownBefore();
  document.undoStack().undo();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !bridge.stale(); }, 60000));
}

/// A drag shows plans that are no edits: what it did to the snags is told against the plan before it.
TEST_F(EditedOneRoom, TellsWhatAWholeDragDidToTheSnags) {
  const auto settled = [&] { return !bridge.stale() && bridge.answers()->take->planPtr() == document.shown(); };
  ASSERT_TRUE(QTest::qWaitFor(settled, 60000));
  const auto before = bridge.answers()->snags;
  const geometry::Point from = plan().camera.marks[0].pos;
  for (const double by : {0.5, 1.0, 1.5}) {
    const auto moved = plan::movedMark(plan(), {plan::Owner::camera, "", 0}, from + geometry::Vec{by, by});
    ASSERT_TRUE(moved.ok());
    document.setPreview(std::make_shared<const Plan>(*moved));
    ASSERT_TRUE(QTest::qWaitFor(settled, 60000));
  }
  document.commitPreview(QStringLiteral("Move mark"));
  ASSERT_TRUE(QTest::qWaitFor(settled, 60000));
  const auto expected = snags::changeOf(*before, *bridge.answers()->snags);
  ASSERT_GT(expected.appeared.size() + expected.cleared.size(), 0u) << "the drag must do something to the snags";
  const auto keys = [](const snags::Snags& all) {
    std::vector<std::string> names;
    for (const auto& snag : all) names.push_back(snag.key);
    return names;
  };
  EXPECT_EQ(keys(bridge.change().appeared), keys(expected.appeared));
  EXPECT_EQ(keys(bridge.change().cleared), keys(expected.cleared));
}

}  // namespace
}  // namespace wend::ui
