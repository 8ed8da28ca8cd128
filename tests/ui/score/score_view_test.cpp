// The score with real mouse and key events: what a drag, a click-click and a typed number do to the plan.
#include "ui/score/score_view.h"

#include <QSignalSpy>
#include <cmath>

#include "core/plan/edits_beats.h"
#include "core/sheets/stave.h"
#include "tests/ui/details/one_room.h"

namespace wend::ui {
namespace {

class Score : public OneRoom {
 protected:
  Score() {
    plan::Plan plan = *document.plan();
    plan.clock.length = std::max(plan.clock.length, 20.0);
    plan.zoom.keys = {{{{"", 0}, 0, {}}, 25, "", {}, {}}, {{{"", 4}, 2, {}}, 30, "", {}, {}}};
    plan.iris.keys = {{{{"", 0}, 0, {}}, 4, {}}, {{{"", 8}, 0, {}}, 5.656854249492381, {}}};
    plan.focus.pulls = {{{"", 0}, 0, 4, {}}, {{"", 3}, 2, 2, {}}, {{"", 9}, 2, 3, {}}};
    if (plan.lens) plan.lens->focal = {20, 60};
    document.start(std::make_shared<const plan::Plan>(plan), {});
    score.resize(1000, 520);
    score.show();
    EXPECT_TRUE(QTest::qWaitForWindowExposed(&score));
    score.setFocus();
  }

  QPoint at(const std::string& key) {
    for (const auto& handle : sheets::scoreHandles(*bridge.answers(), score.view()))
      if (handle.key == key) return QPointF(handle.x, handle.y).toPoint();
    ADD_FAILURE() << "no handle " << key;
    return {};
  }
  void press(QPoint from) { QTest::mousePress(&score, Qt::LeftButton, {}, from); }
  void move(QPoint to, Qt::KeyboardModifiers keys = {}) {
    QMouseEvent event(QEvent::MouseMove, to, score.mapToGlobal(to), Qt::NoButton, Qt::LeftButton, keys);
    QCoreApplication::sendEvent(&score, &event);
  }
  void drag(QPoint from, QPoint by, Qt::KeyboardModifiers keys = {}) {
    press(from);
    move(from + by / 2, keys);
    move(from + by, keys);
    QTest::mouseRelease(&score, Qt::LeftButton, {}, from + by);
  }
  int px(double seconds) const { return int(std::lround(seconds * score.view().pxPerSecond())); }
  const plan::HandPull& pull(std::size_t i) const { return plan().focus.pulls[i]; }

  ScoreView score{document, bridge};
};

TEST_F(Score, DraggingTheEndOfAPullMakesItLongerAndLeavesItsBegin) {
  drag(at("pull/1"), {px(1.5), 0});
  EXPECT_DOUBLE_EQ(pull(1).at.seconds, 3);
  EXPECT_NEAR(pull(1).over, 3.5, 0.051);
  EXPECT_DOUBLE_EQ(pull(1).distance, 2);
  EXPECT_EQ(steps(), 1);
}

TEST_F(Score, DraggingTheBeginOfAPullLeavesItsEnd) {
  drag(at("pull/1/start"), {px(-1), 0});
  EXPECT_NEAR(pull(1).at.seconds, 2, 0.051);
  EXPECT_NEAR(pull(1).at.seconds + pull(1).over, 5, 1e-9);
  EXPECT_EQ(steps(), 1);
}

TEST_F(Score, ShiftTakesTheWholePullAlong) {
  drag(at("pull/1"), {px(1), 0}, Qt::ShiftModifier);
  EXPECT_NEAR(pull(1).at.seconds, 4, 0.051);
  EXPECT_NEAR(pull(1).over, 2, 1e-9);
}

TEST_F(Score, DraggingAPullUpBringsItsDistanceNearerByWhatTheStaveSays) {
  const QPoint from = at("pull/1");
  double perPx = 0;
  for (const auto& handle : sheets::scoreHandles(*bridge.answers(), score.view()))
    if (handle.key == "pull/1") perPx = handle.perPx;
  drag(from, {0, -8});
  EXPECT_NEAR(1 / pull(1).distance, 0.5 + 8 * perPx, 0.01);
  EXPECT_LT(pull(1).distance, 2);
  EXPECT_DOUBLE_EQ(pull(1).over, 2) << "up and down alone keeps the time";
  EXPECT_EQ(steps(), 1);
}

TEST_F(Score, ADraggedPullIsShownWhileItIsDraggedAndEscapeDropsIt) {
  const auto before = document.plan();
  const QPoint from = at("pull/1");
  press(from);
  move(from + QPoint(0, -10));
  ASSERT_TRUE(document.hasPreview());
  EXPECT_NEAR(bridge.answers()->take->lens().focusAt(6), document.shown()->focus.pulls[1].distance, 0.02);
  QTest::keyClick(&score, Qt::Key_Escape);
  EXPECT_FALSE(document.hasPreview());
  QTest::mouseRelease(&score, Qt::LeftButton, {}, from);
  EXPECT_EQ(document.plan(), before);
  EXPECT_EQ(steps(), 0);
}

TEST_F(Score, ANumberTypedWhileDraggingIsTaken) {
  const QPoint from = at("pull/1");
  press(from);
  move(from + QPoint(0, -10));
  QTest::keyClicks(&score, QStringLiteral("2.35"));
  EXPECT_DOUBLE_EQ(document.shown()->focus.pulls[1].distance, 2.35);
  move(from + QPoint(0, -40));
  EXPECT_DOUBLE_EQ(document.shown()->focus.pulls[1].distance, 2.35) << "what is typed wins over the pointer";
  QTest::keyClick(&score, Qt::Key_Return);
  QTest::mouseRelease(&score, Qt::LeftButton, {}, from);
  EXPECT_DOUBLE_EQ(pull(1).distance, 2.35);
  EXPECT_EQ(steps(), 1);
}

TEST_F(Score, TabGoesFromTheValueToTheTime) {
  const QPoint from = at("pull/1");
  press(from);
  move(from + QPoint(6, 0));
  QTest::keyClick(&score, Qt::Key_Tab);
  QTest::keyClicks(&score, QStringLiteral("6.25"));
  QTest::mouseRelease(&score, Qt::LeftButton, {}, from);
  EXPECT_NEAR(pull(1).at.seconds + pull(1).over, 6.25, 1e-9);
  EXPECT_DOUBLE_EQ(pull(1).distance, 2);
}

TEST_F(Score, LettersOfTheWindowAreSilentWhileSomethingIsDragged) {
  const QPoint from = at("pull/1");
  QKeyEvent idle(QEvent::ShortcutOverride, Qt::Key_F, {}, QStringLiteral("f"));
  idle.ignore();
  QCoreApplication::sendEvent(&score, &idle);
  EXPECT_FALSE(idle.isAccepted());
  press(from);
  move(from + QPoint(10, 0));
  QKeyEvent dragging(QEvent::ShortcutOverride, Qt::Key_F, {}, QStringLiteral("f"));
  dragging.ignore();
  QCoreApplication::sendEvent(&score, &dragging);
  EXPECT_TRUE(dragging.isAccepted());
}

class ScoreOfDensity : public Score {
 protected:
  ScoreOfDensity() {
    plan::Plan with = *document.plan();
    with.camera.nd = {{{{"", 0}, 0, {}}, 1, {}}, {{{"", 4}, 2, {}}, 2, {}}};
    document.start(std::make_shared<const plan::Plan>(with), {});
  }
  const plan::DensityKey& key(std::size_t i) const { return plan().camera.nd[i]; }
};

TEST_F(ScoreOfDensity, DraggingAKeyUpAddsStopsInThirdsAndAlongMovesItsEnd) {
  const QPoint from = at("nd/1");
  double perPx = 0;
  for (const auto& handle : sheets::scoreHandles(*bridge.answers(), score.view()))
    if (handle.key == "nd/1") perPx = handle.perPx;
  ASSERT_GT(perPx, 0);
  drag(from, {0, -6});
  EXPECT_NEAR(key(1).stops, std::round((2 + 6 * perPx) * 3) / 3, 5e-4);
  EXPECT_GT(key(1).stops, 2);
  EXPECT_DOUBLE_EQ(key(1).time.over, 2) << "up and down alone keeps the time";
  drag(at("nd/1"), {px(1), 0});
  EXPECT_NEAR(key(1).time.over, 3, 0.051);
  EXPECT_DOUBLE_EQ(key(1).time.at.seconds, 4);
  EXPECT_EQ(steps(), 2);
}

TEST_F(ScoreOfDensity, GoesNoLowerThanNoneAndTakesWhatIsTyped) {
  drag(at("nd/1"), {0, 200});
  EXPECT_DOUBLE_EQ(key(1).stops, 0);
  const QPoint from = at("nd/1");
  press(from);
  move(from + QPoint(0, -6));
  QTest::keyClicks(&score, QStringLiteral("0.6"));
  QTest::mouseRelease(&score, Qt::LeftButton, {}, from);
  EXPECT_DOUBLE_EQ(key(1).stops, 0.6);
}

TEST_F(ScoreOfDensity, AClickChoosesTheKeyAndArrowsNudgeIt) {
  QTest::mouseClick(&score, Qt::LeftButton, {}, at("nd/1"));
  EXPECT_EQ(document.selection(), (Selection{Kind::density, "", 1}));
  QTest::keyClick(&score, Qt::Key_Up);
  EXPECT_NEAR(key(1).stops, 2 + 1.0 / 3, 5e-4) << "a third, in the thousandths that the plan is written in";
}

TEST_F(Score, HasNoStaveOfADensityThatDoesNotVary) {
  for (const auto& box : sheets::stavesOf(plan(), score.view())) EXPECT_NE(box.name, "density");
}

TEST_F(Score, ADoubleClickPicksUpAndAClickLetsGo) {
  const QPoint from = at("zoom/1");
  QTest::mouseClick(&score, Qt::LeftButton, {}, from);
  QTest::mouseDClick(&score, Qt::LeftButton, {}, from);
  QMouseEvent hover(QEvent::MouseMove, from + QPoint(px(1), 0), score.mapToGlobal(from), Qt::NoButton, Qt::NoButton,
                    {});
  QCoreApplication::sendEvent(&score, &hover);
  EXPECT_TRUE(document.hasPreview());
  EXPECT_EQ(steps(), 0);
  QTest::mouseClick(&score, Qt::LeftButton, {}, from + QPoint(px(1), 0));
  EXPECT_NEAR(plan().zoom.keys[1].time.over, 3, 0.051);
  EXPECT_EQ(steps(), 1);
}

TEST_F(Score, ACutMovesAsAWholeAndShiftPullsItApart) {
  drag(at("iris/1"), {px(-2), 0});
  EXPECT_NEAR(plan().iris.keys[1].time.at.seconds, 6, 0.051);
  EXPECT_EQ(plan().iris.keys[1].time.over, 0);
  drag(at("iris/1"), {px(1), 0}, Qt::ShiftModifier);
  EXPECT_NEAR(plan().iris.keys[1].time.at.seconds, 6, 0.051);
  EXPECT_NEAR(plan().iris.keys[1].time.over, 1, 0.051);
}

TEST_F(Score, IrisSnapsToThirdsAndCtrlBreaksIt) {
  drag(at("iris/1"), {0, 7});
  const double thirds = 6 * std::log2(plan().iris.keys[1].stop);
  EXPECT_NEAR(thirds, std::round(thirds), 2e-3) << "to the step of a stop in the plan";
  EXPECT_NE(plan().iris.keys[1].stop, 5.656854249492381);
  document.undoStack().undo();
  drag(at("iris/1"), {0, 5}, Qt::ControlModifier);
  const double free = 6 * std::log2(plan().iris.keys[1].stop);
  EXPECT_GT(std::abs(free - std::round(free)), 0.02);
}

TEST_F(Score, TimesSnapToBeatsAndCtrlBreaksIt) {
  const auto with = plan::insertedBeat(plan(), 13.07, "drops the cup");
  ASSERT_TRUE(with.ok());
  document.start(std::make_shared<const plan::Plan>(*with), {});
  const QPoint from = at("pull/2"), to(int(std::lround(score.view().x(13.07))) + 4, from.y());
  drag(from, to - from, Qt::ShiftModifier);
  EXPECT_NEAR(pull(2).at.seconds + pull(2).over, 13.07, 1e-9);
  document.undoStack().undo();
  drag(from, to - from, Qt::ShiftModifier | Qt::ControlModifier);
  EXPECT_GT(pull(2).at.seconds + pull(2).over, 13.07 + 0.01);
}

TEST_F(Score, AKeyIsNotPushedOverTheNextOne) {
  const auto before = document.plan();
  drag(at("pull/1"), {px(6), 0});
  EXPECT_LE(pull(1).at.seconds + pull(1).over, pull(2).at.seconds + 1e-9);
  for (int i = 0; i < steps(); ++i) document.undoStack().undo();
  EXPECT_EQ(document.plan(), before);
}

TEST_F(Score, ArrowsNudgeAPullAsOneStep) {
  document.select({Kind::pull, "", 1});
  for (int i = 0; i < 3; ++i) QTest::keyClick(&score, Qt::Key_Right);
  EXPECT_NEAR(pull(1).at.seconds, 3.3, 1e-9);
  EXPECT_NEAR(pull(1).over, 2, 1e-9);
  QTest::keyClick(&score, Qt::Key_Up);
  EXPECT_NEAR(pull(1).distance, 1.98, 1e-9) << "a tape is read to 2 cm below 3 m";
  EXPECT_EQ(steps(), 1);
}

TEST_F(Score, APressOnAPlannedPullSaysHowItCanBeDragged) {
  plan::Plan planned = plan();
  planned.focus.pulls.clear();
  planned.focus.keys = {{{{"", 0}, 0, {}}, plan::OnDistance{4}, {}}, {{{"", 6}, 2, {}}, plan::OnDistance{1.5}, {}}};
  document.start(std::make_shared<const plan::Plan>(planned), {});
  const auto& lens = bridge.answers()->take->lens();
  ASSERT_FALSE(lens.focus().moves.empty());
  const auto& move = lens.focus().moves.front();
  QSignalSpy told(&score, &ScoreView::told);
  for (const auto& box : sheets::stavesOf(plan(), score.view())) {
    if (box.name != "sharp") continue;
    const auto scale = sheets::focusStaveScale(*bridge.answers()->take, box);
    const double y = scale.y(1 / lens.focusScale().valueAt(move.valueBefore));
    QTest::mouseClick(&score, Qt::LeftButton, {}, QPointF(score.view().x(move.from), y).toPoint());
  }
  EXPECT_EQ(told.count(), 1);
  EXPECT_EQ(steps(), 0);
}

TEST_F(Score, DraggingTheRulerChoosesASpanAndEscapeDropsIt) {
  QSignalSpy spy(&score, &ScoreView::spanChanged);
  drag({int(score.view().x(2)), 10}, {px(5), 0});
  ASSERT_TRUE(score.span().has_value());
  EXPECT_NEAR(score.span()->from, 2, 0.2);
  EXPECT_NEAR(score.span()->length(), 5, 0.2);
  EXPECT_EQ(steps(), 0);
  QTest::keyClick(&score, Qt::Key_Escape);
  EXPECT_FALSE(score.span().has_value());
  EXPECT_GE(spy.count(), 2);
}

TEST_F(Score, ShiftClickAndBracketsChooseASpanWithoutADrag) {
  document.setPlayhead(3);
  QTest::mouseClick(&score, Qt::LeftButton, Qt::ShiftModifier, QPoint(int(score.view().x(7)), 10));
  ASSERT_TRUE(score.span().has_value());
  EXPECT_DOUBLE_EQ(score.span()->from, 3);
  EXPECT_NEAR(score.span()->until, 7, 0.1);
  document.setPlayhead(5);
  QTest::keyClick(&score, Qt::Key_BracketLeft);
  EXPECT_DOUBLE_EQ(score.span()->from, 5);
  QTest::keyClick(&score, Qt::Key_BracketRight);
  EXPECT_DOUBLE_EQ(score.span()->from, 0) << "from the start where the end comes before the begin";
  EXPECT_DOUBLE_EQ(score.span()->until, 5);
}

TEST_F(Score, AClickOnTheRulerMovesThePlayheadAndDropsTheSpan) {
  score.setSpan(geometry::Span{2, 5});
  QTest::mouseClick(&score, Qt::LeftButton, {}, QPoint(int(score.view().x(8)), 10));
  EXPECT_NEAR(document.playhead(), 8, 0.1);
  EXPECT_FALSE(score.span().has_value());
}

TEST_F(Score, AClickOnAStavesNameFoldsItAndOpensItAgain) {
  const auto height = [&](const std::string& name) {
    for (const auto& box : sheets::stavesOf(plan(), score.view()))
      if (box.name == name) return box.folded;
    return false;
  };
  const auto click = [&](const std::string& name) {
    for (const auto& box : sheets::stavesOf(plan(), score.view()))
      if (box.name == name) return QTest::mouseClick(&score, Qt::LeftButton, {}, QPoint(40, int(box.top) + 8));
  };
  click("zoom");
  EXPECT_TRUE(height("zoom"));
  click("zoom");
  EXPECT_FALSE(height("zoom"));
  click("beats");
  EXPECT_FALSE(height("beats"));
}

}  // namespace
}  // namespace wend::ui
