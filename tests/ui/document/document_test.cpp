#include "ui/document/document.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <random>

namespace wend::ui {
namespace {

plan::PlanPtr named(const std::string& title, double length = 60) {
  plan::Plan plan;
  plan.title = title;
  plan.clock.length = length;
  return std::make_shared<const plan::Plan>(std::move(plan));
}

plan::PlanPtr withGear(std::initializer_list<const char*> ids) {
  plan::Plan plan;
  for (const char* id : ids) {
    plan::Gear gear;
    gear.id = base::Id<plan::Gear>(id);
    plan.gear.add(std::move(gear));
  }
  return std::make_shared<const plan::Plan>(std::move(plan));
}

Selection gear(const char* id) {
  return {Kind::gear, id, -1};
}

class OpenDocument : public ::testing::Test {
 protected:
  QString label = QStringLiteral("Edit");
  Document document;
  QSignalSpy plans{&document, &Document::planChanged};
  QSignalSpy previews{&document, &Document::previewChanged};
  QSignalSpy playheads{&document, &Document::playheadChanged};
  QSignalSpy selections{&document, &Document::selectionChanged};
  QSignalSpy modified{&document, &Document::modifiedChanged};
};

TEST_F(OpenDocument, StartsEmptyAndUnmodified) {
  EXPECT_EQ(*document.plan(), plan::Plan{});
  EXPECT_EQ(document.shown(), document.plan());
  EXPECT_FALSE(document.isModified());
  EXPECT_TRUE(document.path().isEmpty());
}

TEST_F(OpenDocument, GoesBackToTheVerySamePlans) {
  const plan::PlanPtr first = document.plan(), second = named("two"), third = named("three");
  document.propose(second, label);
  document.propose(third, label);
  EXPECT_EQ(document.plan(), third);
  document.undoStack().undo();
  EXPECT_EQ(document.plan(), second);
  document.undoStack().undo();
  EXPECT_EQ(document.plan(), first);
  document.undoStack().redo();
  document.undoStack().redo();
  EXPECT_EQ(document.plan(), third);
  EXPECT_EQ(plans.count(), 6);
  EXPECT_EQ(document.undoStack().undoText(), label);
}

TEST_F(OpenDocument, TakesAnEqualPlanForNoStep) {
  document.propose(named("two"), label);
  const plan::PlanPtr before = document.plan();
  document.propose(named("two"), label);
  EXPECT_EQ(document.plan(), before);
  EXPECT_EQ(document.undoStack().count(), 1);
}

TEST_F(OpenDocument, MergesStepsOfOneKeyInARow) {
  const plan::PlanPtr first = document.plan();
  document.propose(named("a"), label, QStringLiteral("nudge A2"));
  document.propose(named("b"), label, QStringLiteral("nudge A2"));
  document.propose(named("c"), label, QStringLiteral("nudge A3"));
  document.propose(named("d"), label);
  document.propose(named("e"), label);
  EXPECT_EQ(document.undoStack().count(), 4);
  for (int i = 0; i < 3; ++i) document.undoStack().undo();
  EXPECT_EQ(document.plan()->title, "b");
  document.undoStack().undo();
  EXPECT_EQ(document.plan(), first);
}

TEST_F(OpenDocument, ForgetsStepsThatMergeIntoNothing) {
  document.propose(named("a"), label, QStringLiteral("k"));
  document.propose(std::make_shared<const plan::Plan>(), label, QStringLiteral("k"));
  EXPECT_EQ(document.undoStack().count(), 0);
  EXPECT_FALSE(document.isModified());
  EXPECT_EQ(*document.plan(), plan::Plan{});
}

TEST_F(OpenDocument, DoesNotMergeAcrossASave) {
  document.propose(named("a"), label, QStringLiteral("k"));
  document.saved(QStringLiteral("/a.wend"), "hash");
  document.propose(named("b"), label, QStringLiteral("k"));
  EXPECT_TRUE(document.isModified());
  document.undoStack().undo();
  EXPECT_EQ(document.plan()->title, "a");
  EXPECT_FALSE(document.isModified());
}

TEST_F(OpenDocument, ShowsAPreviewUntilItIsDroppedOrCommitted) {
  const plan::PlanPtr first = document.plan();
  document.setPreview(named("half way"));
  EXPECT_EQ(document.shown()->title, "half way");
  EXPECT_EQ(document.plan(), first);
  EXPECT_FALSE(document.isModified());
  document.dropPreview();
  document.dropPreview();
  EXPECT_EQ(document.shown(), first);
  EXPECT_EQ(previews.count(), 2);
  EXPECT_EQ(plans.count(), 0);

  const plan::PlanPtr last = named("there");
  document.setPreview(named("half way"));
  document.setPreview(last);
  document.commitPreview(label);
  EXPECT_EQ(document.plan(), last);
  EXPECT_FALSE(document.hasPreview());
  EXPECT_EQ(document.undoStack().count(), 1);
  document.commitPreview(label);
  EXPECT_EQ(document.undoStack().count(), 1);
}

TEST_F(OpenDocument, DropsAPreviewThatCameBackToWhereItBegan) {
  document.setPreview(named("away"));
  document.setPreview(std::make_shared<const plan::Plan>());
  document.commitPreview(label);
  EXPECT_FALSE(document.hasPreview());
  EXPECT_EQ(document.undoStack().count(), 0);
}

TEST_F(OpenDocument, DropsThePreviewOnUndo) {
  document.propose(named("a"), label);
  document.setPreview(named("b"));
  document.undoStack().undo();
  EXPECT_EQ(document.shown(), document.plan());
  EXPECT_EQ(*document.plan(), plan::Plan{});
}

TEST_F(OpenDocument, BringsBackWhatWasChosen) {
  document.propose(withGear({"cart", "crane"}), label);
  document.select(gear("cart"));
  document.propose(withGear({"cart", "crane", "tent"}), label, {}, gear("tent"));
  EXPECT_EQ(document.selection(), gear("tent"));
  document.undoStack().undo();
  EXPECT_EQ(document.selection(), gear("cart"));
  document.undoStack().redo();
  EXPECT_EQ(document.selection(), gear("tent"));
}

TEST_F(OpenDocument, ChoosesNothingThatIsNotThere) {
  document.propose(withGear({"cart"}), label);
  document.select(gear("crane"));
  EXPECT_FALSE(document.selection().any());
  document.select(gear("cart"));
  document.propose(withGear({"crane"}), label);
  EXPECT_FALSE(document.selection().any());
  document.undoStack().undo();
  EXPECT_EQ(document.selection(), gear("cart"));
  EXPECT_EQ(selections.count(), 3);
}

TEST_F(OpenDocument, HoldsThePlayheadWithinTheTake) {
  document.propose(named("a", 30), label);
  document.setPlayhead(45);
  EXPECT_EQ(document.playhead(), 30);
  document.setPlayhead(-1);
  EXPECT_EQ(document.playhead(), 0);
  document.setPlayhead(20);
  document.setPlayhead(20);
  document.setPreview(named("shorter", 10));
  EXPECT_EQ(document.playhead(), 10);
  EXPECT_EQ(playheads.count(), 4);
  EXPECT_EQ(document.undoStack().count(), 1);
  EXPECT_DEATH(document.setPlayhead(std::nan("")), "isnan");
}

TEST_F(OpenDocument, IsModifiedUntilSavedOrUndone) {
  document.propose(named("a"), label);
  EXPECT_TRUE(document.isModified());
  document.undoStack().undo();
  EXPECT_FALSE(document.isModified());
  document.undoStack().redo();
  document.saved(QStringLiteral("/a.wend"), "hash");
  EXPECT_FALSE(document.isModified());
  EXPECT_EQ(document.path(), QStringLiteral("/a.wend"));
  document.undoStack().undo();
  EXPECT_TRUE(document.isModified());
  EXPECT_EQ(modified.count(), 5);
}

TEST_F(OpenDocument, IsModifiedWhenRecoveredUntilSaved) {
  document.start(named("a"), QStringLiteral("/a.wend"), "hash", true);
  EXPECT_TRUE(document.isModified());
  document.propose(named("b"), label);
  document.undoStack().undo();
  EXPECT_TRUE(document.isModified());
  document.saved(QStringLiteral("/a.wend"), "hash2");
  EXPECT_FALSE(document.isModified());
  EXPECT_EQ(document.contentHash(), QByteArray("hash2"));
}

TEST_F(OpenDocument, ForgetsEverythingWhenAnotherPlanIsOpened) {
  document.propose(withGear({"cart"}), label);
  document.select(gear("cart"));
  document.setPlayhead(5);
  document.setPreview(named("x"));
  document.start(named("b"), QStringLiteral("/b.wend"), "h");
  EXPECT_EQ(document.shown()->title, "b");
  EXPECT_EQ(document.undoStack().count(), 0);
  EXPECT_FALSE(document.selection().any());
  EXPECT_EQ(document.playhead(), 0);
  EXPECT_FALSE(document.isModified());
}

// A thousand random edits, all undone, all redone: at every step the very plan that was there.
TEST_F(OpenDocument, WalksAThousandStepsBackAndForth) {
  std::mt19937_64 random(20240611);
  std::vector<plan::PlanPtr> states{document.plan()};
  for (int i = 0; i < 1000; ++i) {
    plan::Plan next = *document.plan();
    if (random() % 3 == 0 && !next.gear.empty()) {
      next.gear.remove(random() % next.gear.size());
    } else {
      plan::Gear gear;
      gear.id = base::Id<plan::Gear>("g" + std::to_string(i));
      next.gear.add(std::move(gear));
    }
    document.propose(std::make_shared<const plan::Plan>(std::move(next)), label);
    states.push_back(document.plan());
  }
  for (int i = 1000; i > 0; --i) {
    ASSERT_EQ(document.plan(), states[std::size_t(i)]);
    document.undoStack().undo();
  }
  EXPECT_FALSE(document.isModified());
  for (int i = 0; i < 1000; ++i) {
    ASSERT_EQ(document.plan(), states[std::size_t(i)]);
    document.undoStack().redo();
  }
  EXPECT_EQ(document.plan(), states.back());
}

TEST(Selection, ExistsWhenThePlanHasIt) {
  plan::Plan plan;
  plan::Performer performer;
  performer.id = base::Id<plan::Performer>("p");
  performer.marks.resize(2);
  plan.performers.add(std::move(performer));
  plan.camera.marks.resize(1);
  EXPECT_TRUE(exists(plan, {}));
  EXPECT_TRUE(exists(plan, {Kind::performer, "p", -1}));
  EXPECT_TRUE(exists(plan, {Kind::performer, "p", 1}));
  EXPECT_FALSE(exists(plan, {Kind::performer, "p", 2}));
  EXPECT_FALSE(exists(plan, {Kind::performer, "q", -1}));
  EXPECT_FALSE(exists(plan, {Kind::performer, "p", -2}));
  EXPECT_TRUE(exists(plan, {Kind::camera, "", 0}));
  EXPECT_FALSE(exists(plan, {Kind::camera, "", 1}));
  EXPECT_FALSE(exists(plan, {Kind::lens, "", -1}));
  EXPECT_FALSE(exists(plan, {Kind::underlay, "", -1}));
  EXPECT_TRUE(exists(plan, {Kind::snag, "any key", -1}));
}

}  // namespace
}  // namespace wend::ui
