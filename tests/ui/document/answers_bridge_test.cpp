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

}  // namespace
}  // namespace wend::ui
