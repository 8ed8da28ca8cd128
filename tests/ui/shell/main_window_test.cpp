// The whole window with real events: what a director's hand does, and what the plan is afterwards.
#include "ui/shell/main_window.h"

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QWheelEvent>
#include <QtTest/QTest>

#include "core/plan/edits_marks.h"
#include "core/sheets/plan_view.h"
#include "ui/details/details_panel.h"
#include "ui/document/plan_file.h"
#include "ui/shell/strip.h"

namespace wend::ui {
namespace {

const QString kFirstBatch = QStringLiteral(WEND_SOURCE_DIR "/samples/first-batch.wend");

class Window : public ::testing::Test {
 protected:
  void SetUp() override {
    qputenv("XDG_STATE_HOME", state_.path().toUtf8());
    window_ = std::make_unique<MainWindow>();
    window_->resize(1920, 1040);
    window_->show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(window_.get()));
    ASSERT_TRUE(window_->open(kFirstBatch));
    QTest::qWait(50);
  }
  Document& document() { return window_->document(); }
  const plan::Plan& plan() { return *document().plan(); }
  QPoint onCanvas(geometry::Point place) {
    const geometry::Point px = window_->canvas().view().toPicture(place);
    return QPointF(px.x, px.y).toPoint();
  }
  void drag(QWidget* widget, QPoint from, QPoint to) {
    QTest::mousePress(widget, Qt::LeftButton, {}, from);
    for (int i = 1; i <= 5; ++i) QTest::mouseMove(widget, from + (to - from) * i / 5);
    QTest::mouseRelease(widget, Qt::LeftButton, {}, to);
  }
  void zoomAt(geometry::Point place) {
    const QPoint at = onCanvas(place);
    QWheelEvent wheel(at, window_->canvas().mapToGlobal(at), {}, {0, 1500}, {}, {}, Qt::NoScrollPhase, false);
    QCoreApplication::sendEvent(&window_->canvas(), &wheel);
  }
  QPoint handle(const std::string& key) {
    for (const auto& handle : sheets::scoreHandles(*window_->bridge().answers(), window_->score().view()))
      if (handle.key == key) return QPointF(handle.x + (key.starts_with("beat/") ? 6 : 0), handle.y).toPoint();
    ADD_FAILURE() << "no handle " << key;
    return {};
  }

  QTemporaryDir state_;
  std::unique_ptr<MainWindow> window_;
};

TEST_F(Window, DraggingAPerformersMarkIsOneStepAndUndoBringsItBackExactly) {
  const auto before = document().plan();
  document().setPlayhead(160);
  const plan::Mark& last = plan().performers[2].marks.back();
  drag(&window_->canvas(), onCanvas(last.pos), onCanvas(last.pos + geometry::Vec{0.8, 0.6}));
  EXPECT_NE(document().plan(), before);
  EXPECT_NEAR(plan().performers[2].marks.back().pos.x, last.pos.x + 0.8, 0.1);
  EXPECT_EQ(document().undoStack().count(), 1);
  document().undoStack().undo();
  EXPECT_EQ(document().plan(), before);
}

TEST_F(Window, WhileDraggingTheShownInstantIsOfThePreviewAndEscapeDropsIt) {
  document().setPlayhead(160);
  const geometry::Point from = plan().performers[2].marks.back().pos;
  const QPoint start = onCanvas(from), end = onCanvas(from + geometry::Vec{1, 0});
  QTest::mousePress(&window_->canvas(), Qt::LeftButton, {}, start);
  QTest::mouseMove(&window_->canvas(), start + QPoint(8, 0));
  QTest::mouseMove(&window_->canvas(), end);
  ASSERT_TRUE(document().hasPreview());
  EXPECT_NEAR(window_->bridge().instant().performers[2].pos.x, from.x + 1, 0.1);
  EXPECT_TRUE(window_->bridge().stale());
  QTest::keyClick(&window_->canvas(), Qt::Key_Escape);
  EXPECT_FALSE(document().hasPreview());
  EXPECT_EQ(document().undoStack().count(), 0);
  QTest::mouseRelease(&window_->canvas(), Qt::LeftButton, {}, end);
  EXPECT_EQ(document().undoStack().count(), 0);
}

class TypedOnThePlan : public Window {
 protected:
  void SetUp() override {
    Window::SetUp();
    zoomAt(mark().pos);
    at_ = onCanvas(mark().pos);
    QTest::mousePress(&window_->canvas(), Qt::LeftButton, {}, at_);
    QTest::mouseMove(&window_->canvas(), at_ + QPoint(30, 0));
    QTest::mouseMove(&window_->canvas(), at_ + QPoint(60, 0));
    window_->canvas().setFocus();
  }
  const plan::Mark& mark(bool shown = false) {
    return (shown ? *document().shown() : plan()).performers.find("ilse")->marks[2];
  }
  void type(const QString& keys) { QTest::keyClicks(&window_->canvas(), keys); }
  void key(Qt::Key key) { QTest::keyClick(&window_->canvas(), key); }

  QPoint at_;
};

TEST_F(TypedOnThePlan, DigitsAreEastAndTabGoesOnToNorth) {
  const double dragged = mark(true).pos.y;
  type(QStringLiteral("2.345"));
  EXPECT_DOUBLE_EQ(mark(true).pos.x, 2.345);
  EXPECT_DOUBLE_EQ(mark(true).pos.y, dragged);
  QTest::mouseMove(&window_->canvas(), at_ + QPoint(90, 40));
  EXPECT_DOUBLE_EQ(mark(true).pos.x, 2.345) << "what is typed wins over the pointer";
  key(Qt::Key_Tab);
  type(QStringLiteral("4.12"));
  EXPECT_EQ(document().undoStack().count(), 0) << "nothing is taken yet";
  key(Qt::Key_Return);
  EXPECT_DOUBLE_EQ(mark().pos.x, 2.345);
  EXPECT_DOUBLE_EQ(mark().pos.y, 4.12);
  QTest::mouseRelease(&window_->canvas(), Qt::LeftButton, {}, at_ + QPoint(90, 40));
  EXPECT_EQ(document().undoStack().count(), 1);
}

TEST_F(TypedOnThePlan, TheThirdNumberIsHowFarItIsMovedTowardsThePointer) {
  const geometry::Point before = mark().pos;
  key(Qt::Key_Tab);
  key(Qt::Key_Tab);
  type(QStringLiteral("35cm"));
  EXPECT_NEAR(geometry::distance(mark(true).pos, before), 0.35, 1e-4);
  EXPECT_GT(mark(true).pos.x, before.x + 0.34);
  QTest::mouseRelease(&window_->canvas(), Qt::LeftButton, {}, at_);
  EXPECT_NEAR(geometry::distance(mark().pos, before), 0.35, 1e-4);
}

TEST_F(TypedOnThePlan, HalfANumberChangesNothingAndEscapeDropsAll) {
  const auto before = document().plan();
  type(QStringLiteral("-"));
  const geometry::Point shown = mark(true).pos;
  EXPECT_GT(shown.x, mark().pos.x) << "where the pointer had it";
  type(QStringLiteral("1"));
  EXPECT_DOUBLE_EQ(mark(true).pos.x, -1);
  key(Qt::Key_Backspace);
  EXPECT_DOUBLE_EQ(mark(true).pos.x, shown.x);
  key(Qt::Key_Escape);
  QTest::mouseRelease(&window_->canvas(), Qt::LeftButton, {}, at_);
  EXPECT_EQ(document().plan(), before);
}

TEST_F(TypedOnThePlan, KeysOfTheWindowAreSilent) {
  QKeyEvent home(QEvent::ShortcutOverride, Qt::Key_F, {}, QStringLiteral("f"));
  home.ignore();
  QCoreApplication::sendEvent(&window_->canvas(), &home);
  EXPECT_TRUE(home.isAccepted());
  const double scale = window_->canvas().view().pxPerMetre;
  type(QStringLiteral("0"));
  EXPECT_DOUBLE_EQ(window_->canvas().view().pxPerMetre, scale) << "0 is a digit now";
  EXPECT_DOUBLE_EQ(mark(true).pos.x, 0);
}

TEST_F(Window, DraggingACameraMarkMovesTheLens) {
  document().setPlayhead(168);
  const geometry::Point from = plan().camera.marks.back().pos;
  drag(&window_->canvas(), onCanvas(from), onCanvas(from + geometry::Vec{-0.5, 0.5}));
  EXPECT_NEAR(window_->bridge().instant().camera.sensor.at.x, from.x - 0.5, 0.1);
}

TEST_F(Window, DraggingABeatMovesWhatHangsOnIt) {
  const double before = plan().beats.find("b11")->time;
  const double door = plan::secondsOf(plan(), plan().set.openings.find("d3")->open[1].time.at);
  const QPoint flag = handle("beat/b11");
  drag(&window_->score(), flag, flag + QPoint(int(0.6 * window_->score().view().pxPerSecond()), 0));
  const double moved = plan().beats.find("b11")->time - before;
  EXPECT_GT(moved, 0.2);
  EXPECT_NEAR(plan::secondsOf(plan(), plan().set.openings.find("d3")->open[1].time.at) - door, moved, 1e-9);
}

TEST_F(Window, DraggingAnIrisKeyChangesItsStop) {
  const std::size_t last = plan().iris.keys.size() - 1;
  const double before = plan().iris.keys[last].stop;
  const QPoint key = handle("iris/" + std::to_string(last));
  drag(&window_->score(), key, key + QPoint(0, 12));
  EXPECT_LT(plan().iris.keys[last].stop, before);
  EXPECT_EQ(document().undoStack().count(), 1);
}

TEST_F(Window, ClickingTheScoreMovesThePlayhead) {
  const auto& view = window_->score().view();
  QTest::mouseClick(&window_->score(), Qt::LeftButton, {}, QPoint(int(view.x(100)), 10));
  EXPECT_NEAR(document().playhead(), 100, 0.2);
  EXPECT_NEAR(window_->bridge().instant().time, 100, 0.2);
}

TEST_F(Window, ArrowsNudgeTheChosenMarkByFiveCentimetresAndMergeIntoOneStep) {
  document().select({Kind::camera, "", 0});
  const geometry::Point from = plan().camera.marks[0].pos;
  window_->canvas().setFocus();
  for (int i = 0; i < 3; ++i) QTest::keyClick(&window_->canvas(), Qt::Key_Right);
  EXPECT_NEAR(plan().camera.marks[0].pos.x, from.x + 0.15, 1e-9);
  EXPECT_EQ(document().undoStack().count(), 1);
}

TEST_F(Window, ATapeReadsFloorAndSlant) {
  QSignalSpy told(&window_->canvas(), &PlanCanvas::told);
  window_->canvas().setTaping(true);
  QTest::mouseClick(&window_->canvas(), Qt::LeftButton, {}, onCanvas({20, 0}));
  QTest::mouseClick(&window_->canvas(), Qt::LeftButton, {}, onCanvas({23, 4}));
  const QString words = told.last().first().toString();
  EXPECT_TRUE(words.contains(QStringLiteral("floor 5.0")) || words.contains(QStringLiteral("floor 4.9")))
      << words.toStdString();
  EXPECT_TRUE(words.contains(QStringLiteral("slant"))) << words.toStdString();
}

TEST_F(Window, ClickedGroundGetsItsWindowsOnTheScore) {
  QTest::mouseClick(&window_->canvas(), Qt::LeftButton, {}, onCanvas({25.5, 8.5}));
  ASSERT_TRUE(window_->canvas().spot().has_value());
  EXPECT_FALSE(window_->canvas().spot()->seen.empty());
}

TEST_F(Window, SpacePlaysAndStops) {
  QTest::keyClick(window_.get(), Qt::Key_Space);
  EXPECT_TRUE(window_->transport().playing());
  QTRY_VERIFY(document().playhead() > 0.05);
  QTest::keyClick(window_.get(), Qt::Key_Space);
  EXPECT_FALSE(window_->transport().playing());
}

TEST_F(Window, TheWholeTakeFollowsAnEditAndTellsWhatItDidToTheSnags) {
  window_->bridge().finish();
  ASSERT_FALSE(window_->bridge().stale());
  // Nobody is seen from inside the dry store: the stills move there.
  const auto moved = plan::movedMark(plan(), {plan::Owner::crew, "loc", 0}, {7.2, -1.4});
  ASSERT_TRUE(moved.ok());
  document().propose(std::make_shared<const plan::Plan>(*moved), QStringLiteral("Move"));
  EXPECT_TRUE(window_->bridge().stale());
  window_->bridge().finish();
  EXPECT_FALSE(window_->bridge().stale());
  EXPECT_TRUE(std::any_of(window_->bridge().change().cleared.begin(), window_->bridge().change().cleared.end(),
                          [](const snags::Snag& snag) { return snag.rule == "crew-seen" && snag.who == "loc"; }));
}

TEST_F(Window, AFileThatIsNoPlanLeavesTheOpenPlanAsItIs) {
  const auto before = document().plan();
  EXPECT_FALSE(window_->open(QStringLiteral(WEND_SOURCE_DIR "/README.md")));
  EXPECT_FALSE(window_->open(QStringLiteral("/")));
  EXPECT_EQ(document().plan(), before);
}

TEST_F(Window, SavingAndOpeningAgainGivesTheSamePlan) {
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("take.wend"));
  ASSERT_TRUE(savePlan(document(), path).ok());
  const auto saved = document().plan();
  ASSERT_TRUE(window_->open(path));
  EXPECT_TRUE(*document().plan() == *saved);
  EXPECT_FALSE(document().isModified());
}

TEST_F(Window, EveryThemeIsPaintedWithoutAPlanToo) {
  for (const auto theme : {sheets::Theme::paper, sheets::Theme::torch, sheets::Theme::dark}) {
    window_->setTheme(theme);
    EXPECT_FALSE(window_->grab().isNull());
  }
  MainWindow empty;
  empty.show();
  EXPECT_FALSE(empty.grab().isNull());
}

TEST_F(Window, FitsALaptopsScreenWithNothingCutOff) {
  window_->resize(1366, 768);
  QTest::qWait(20);
  EXPECT_EQ(window_->width(), 1366);
  EXPECT_LE(window_->minimumSizeHint().width(), 1366);
  EXPECT_LE(window_->minimumSizeHint().height(), 768);
  for (const QWidget* face : window_->findChildren<QWidget*>()) {
    if (!face->isVisible() || face->accessibleName().isEmpty()) continue;
    EXPECT_LE(face->mapTo(window_.get(), QPoint(face->width(), 0)).x(), 1366) << face->accessibleName().toStdString();
  }
  // The plan is what crew is planned on: it keeps the largest share.
  EXPECT_GT(window_->canvas().width(), 600);
}

TEST_F(Window, OnALaptopsScreenShowsCrewAndSnagsOfTheScoreWhereverItIsScrolled) {
  window_->resize(1366, 768);
  QTest::qWait(20);
  auto& score = window_->score();
  for (const int turns : {0, -1, -30}) {
    QWheelEvent wheel({300, 100}, score.mapToGlobal(QPoint(300, 100)), {}, {0, 120 * turns}, {}, {}, Qt::NoScrollPhase,
                      false);
    // What the score leaves alone goes to the area around it.
    if (turns != 0) QCoreApplication::sendEvent(score.parentWidget(), &wheel);
    int found = 0;
    for (const auto& box : score.staves()) {
      if (box.name != "clock" && box.name != "beats" && box.name != "crew" && box.name != "snags") continue;
      ++found;
      const QRegion sight = score.visibleRegion();
      EXPECT_TRUE(sight.contains(QRect(10, int(box.top) + 1, 100, int(box.height) - 2)) &&
                  sight.boundingRect().contains(QRect(10, int(box.top) + 1, 100, int(box.height) - 2)))
          << box.name << " after " << turns;
    }
    EXPECT_EQ(found, 4);
  }
  EXPECT_LT(score.pos().y(), 0) << "there is something to scroll";
}

TEST_F(Window, StaysAsWideAsItIsHoweverMuchASnagSays) {
  window_->resize(1366, 768);
  window_->bridge().finish();
  for (int i = 0; i < 12; ++i) {
    QTest::keyClick(window_.get(), Qt::Key_F);
    QTest::qWait(5);
    ASSERT_EQ(window_->width(), 1366) << window_->strip().said().text().toStdString();
    ASSERT_LE(window_->minimumSizeHint().width(), 1366);
  }
}

TEST_F(Window, ARefusalGoesWithTheNextGoodEdit) {
  document().select({Kind::camera, "", 2});
  auto* east = qobject_cast<QLineEdit*>(window_->details().editorOf(QStringLiteral("east x")));
  ASSERT_TRUE(east);
  east->setFocus();
  east->selectAll();
  QTest::keyClicks(east, QStringLiteral("1e9"));
  QTest::keyClick(east, Qt::Key_Return);
  const QString resting = window_->strip().said().text();
  EXPECT_TRUE(resting.startsWith(QStringLiteral("east x"))) << resting.toStdString();
  const auto moved = plan::movedMark(plan(), {plan::Owner::crew, "loc", 0}, {7.2, -1.4});
  document().propose(std::make_shared<const plan::Plan>(*moved), QStringLiteral("Move"));
  EXPECT_TRUE(window_->strip().said().text().startsWith(QStringLiteral("Caution")));
}

TEST_F(Window, WhatTheLastEditDidToTheSnagsStandsInTheStripUntilTheNext) {
  window_->resize(1366, 768);
  window_->bridge().finish();
  EXPECT_FALSE(window_->strip().change().isVisible());
  const auto moved = plan::movedMark(plan(), {plan::Owner::crew, "loc", 0}, {7.2, -1.4});
  document().propose(std::make_shared<const plan::Plan>(*moved), QStringLiteral("Move"));
  EXPECT_TRUE(window_->strip().change().text().contains(QStringLiteral("being computed")));
  window_->bridge().finish();
  EXPECT_TRUE(window_->strip().change().text().contains(QStringLiteral("went"))) << "said what went";
  QTest::keyClick(window_.get(), Qt::Key_F);
  EXPECT_TRUE(window_->strip().change().isVisible());
  EXPECT_GT(window_->strip().change().width(), 200);
  EXPECT_LE(window_->strip().change().mapTo(window_.get(), QPoint(0, window_->strip().change().height())).y(), 768);
}

TEST_F(Window, HomeOnThePlanShowsTheWholeTakeAgain) {
  const auto whole = window_->canvas().view();
  window_->canvas().showPlace({200, 200});
  ASSERT_NE(window_->canvas().view().centre, whole.centre);
  window_->canvas().setFocus();
  QTest::keyClick(&window_->canvas(), Qt::Key_Home);
  EXPECT_EQ(window_->canvas().view().centre, whole.centre);
  window_->canvas().showPlace({200, 200});
  QTest::keyClick(&window_->canvas(), Qt::Key_0);
  EXPECT_EQ(window_->canvas().view().centre, whole.centre);
}

TEST_F(Window, AClickOnWhatIsDrawnOnThePlanChoosesIt) {
  const auto click = [&](geometry::Point place) {
    QTest::mouseClick(&window_->canvas(), Qt::LeftButton, {}, onCanvas(place));
    return document().selection();
  };
  EXPECT_EQ(click({-3.8, 3}), (Selection{Kind::wall, "alleywest", -1}));
  EXPECT_EQ(click({13.9, 1}), (Selection{Kind::piece, "m1", -1}));
  // Seen from nearby, where no mark is within reach of the pointer.
  for (const auto& opening : plan().set.openings) {
    const auto& points = plan().set.walls.find(opening.wall)->points;
    const auto at = points[0] + geometry::unit(points[1] - points[0]) * (opening.along.from + 0.15);
    zoomAt(at);
    EXPECT_EQ(click(at), (Selection{Kind::opening, opening.id.text(), -1})) << opening.id.text();
    window_->canvas().showWholeTake();
  }
  EXPECT_EQ(document().undoStack().count(), 0);
}

TEST_F(Window, AClickOnSomebodyWhoWalksChoosesThemAndOnTheKiteTheCamera) {
  for (double t = 5; t < plan().clock.length; t += 1.3) {
    document().setPlayhead(t);
    const auto& instant = window_->bridge().instant();
    const auto& walking = instant.performers[0];
    const auto* track = window_->bridge().answers()->take->people().performer(0);
    const bool alone = std::all_of(track->marks().begin(), track->marks().end(),
                                   [&](const auto& mark) { return geometry::distance(mark.pos, walking.pos) > 1; });
    if (!walking.present || walking.speed < 0.3 || !alone ||
        geometry::distance(walking.pos, geometry::flat(instant.camera.sensor.at)) < 2)
      continue;
    QTest::mouseClick(&window_->canvas(), Qt::LeftButton, {}, onCanvas(walking.pos));
    if (document().selection().kind == Kind::camera) continue;  // over a mark of the camera's
    EXPECT_EQ(document().selection(), (Selection{Kind::performer, walking.id, -1})) << t;
    document().setPlayhead(155);
    QTest::mouseClick(&window_->canvas(), Qt::LeftButton, {},
                      onCanvas(geometry::flat(window_->bridge().instant().camera.sensor.at)));
    EXPECT_EQ(document().selection(), (Selection{Kind::camera, "", -1}));
    return;
  }
  FAIL() << "nobody walks alone in the sample";
}

TEST_F(Window, AClickOnASnagOfThePlanOrTheScoreGoesThere) {
  window_->bridge().finish();
  const auto& answers = *window_->bridge().answers();
  document().setPlayhead(20);
  const auto lozenges = sheets::snagLozenges(answers, 20, window_->canvas().view());
  ASSERT_FALSE(lozenges.empty());
  const auto on = lozenges.back();
  const double from = on.snag->from;
  const std::string key = on.snag->key;
  QTest::mouseClick(&window_->canvas(), Qt::LeftButton, {}, QPointF(on.at.x, on.at.y).toPoint());
  EXPECT_EQ(document().selection(), (Selection{Kind::snag, key, -1}));
  EXPECT_DOUBLE_EQ(document().playhead(), from);
  // The last snag that stops the take, by its lozenge at the score's foot.
  const auto stops = std::find_if(answers.snags->rbegin(), answers.snags->rend(), [](const snags::Snag& snag) {
    return snag.severity == snags::Severity::stops && !snag.accepted;
  });
  ASSERT_NE(stops, answers.snags->rend());
  const snags::Snag snag = *stops;
  const auto& view = window_->score().view();
  for (const auto& box : sheets::stavesOf(plan(), view))
    if (box.name == "snags")
      QTest::mouseClick(&window_->score(), Qt::LeftButton, {}, QPointF(view.x(snag.from), box.top + 7).toPoint());
  EXPECT_EQ(document().selection().kind, Kind::snag);
  EXPECT_NEAR(document().playhead(), snag.from, 10 / view.pxPerSecond());
}

TEST_F(Window, AClickOnACrewLaneChoosesTheMarkTheyWalkTowards) {
  const auto& answers = *window_->bridge().answers();
  const std::size_t boom = plan().crew.indexOf("boom1");
  const auto* track = answers.take->people().crew(boom);
  ASSERT_TRUE(track);
  ASSERT_GE(track->marks().size(), 2u);
  const auto& view = window_->score().view();
  for (const auto& lane : sheets::crewLanes(answers, view)) {
    if (lane.crew != boom) continue;
    const double walks = (track->marks()[0].until + track->marks()[1].at) / 2;
    QTest::mouseClick(&window_->score(), Qt::LeftButton, {}, QPointF(view.x(walks), lane.y).toPoint());
    EXPECT_EQ(document().selection(), (Selection{Kind::crew, "boom1", 1}));
    EXPECT_NEAR(document().playhead(), walks, 1 / view.pxPerSecond());
    return;
  }
  FAIL() << "no lane";
}

}  // namespace
}  // namespace wend::ui
