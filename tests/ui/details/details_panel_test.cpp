#include "ui/details/details_panel.h"

#include <QMenu>
#include <QSignalSpy>

#include "core/answers/routes.h"
#include "core/plan/edits_marks.h"
#include "core/plan/edits_plan.h"
#include "core/sheets/route_lines.h"
#include "core/units/stop.h"
#include "tests/ui/details/one_room.h"
#include "tests/ui/details/panel_hand.h"
#include "ui/details/field_grid.h"

namespace wend::ui {
namespace {

class Details : public OneRoom, public PanelHand {
 protected:
  Details() : PanelHand(panel) {
    panel.resize(464, 600);
    panel.show();
    panel.activateWindow();  // only an active window tells its fields that the keyboard left
    EXPECT_TRUE(QTest::qWaitForWindowActive(&panel));
  }

  void enter(const char* label) { QTest::keyClick(field(label), Qt::Key_Return); }
  const plan::Mark& noraMark(std::size_t i) { return plan().performers[0].marks[i]; }
  void selectNora(int mark) { document.select({Kind::performer, "nora", mark}); }

  DetailsPanel panel{document, bridge};
  QSignalSpy problems{&panel, &DetailsPanel::toldProblem};
};

TEST_F(Details, ANarrowPanelHasRoomForEveryField) {
  document.select({});
  auto* grid = panel.findChild<FieldGrid*>();
  ASSERT_NE(grid, nullptr);
  for (const int width : {460, 330, 240}) {
    panel.resize(width, 1600);
    QCoreApplication::processEvents();
    EXPECT_EQ(grid->height(), grid->heightForWidth(grid->width())) << width;
    for (const FieldBox* box : grid->boxes()) EXPECT_LE(box->geometry().bottom(), grid->height()) << width;
  }
}

TEST_F(Details, TypedMetresMoveTheMarkAsOneStep) {
  selectNora(1);
  EXPECT_EQ(field("east x")->text(), QStringLiteral("3.40"));
  type("east x", "2.5 m");
  EXPECT_EQ(noraMark(1).pos.x, 3.4) << "typing alone changes nothing";
  enter("east x");
  EXPECT_EQ(noraMark(1).pos, (plan::Point{2.5, 3.6}));
  EXPECT_EQ(steps(), 1);
  EXPECT_EQ(field("east x")->text(), QStringLiteral("2.50"));
  document.undoStack().undo();
  EXPECT_EQ(noraMark(1).pos.x, 3.4);
  EXPECT_EQ(field("east x")->text(), QStringLiteral("3.40"));
}

TEST_F(Details, FeetAndInchesAreReadInAMetricPlan) {
  selectNora(1);
  type("east x", "10'6\"");
  enter("east x");
  EXPECT_NEAR(noraMark(1).pos.x, 3.2004, 1e-9);
  type("north y", "1'6\"");
  enter("north y");
  EXPECT_NEAR(noraMark(1).pos.y, 0.4572, 1e-9);
}

TEST_F(Details, ThePlaceOfTheSunIsTypedInOneLine) {
  document.select({});
  ASSERT_FALSE(plan().site);
  type("sun at", "51.5, -0.12, 2026-06-21, 1");
  enter("sun at");
  ASSERT_TRUE(plan().site);
  EXPECT_EQ(plan().site->latitude, 51.5);
  EXPECT_EQ(plan().site->longitude, -0.12);
  EXPECT_EQ(plan().site->date, (plan::Date{2026, 6, 21}));
  EXPECT_EQ(plan().site->utcOffset, 1);
  EXPECT_EQ(field("sun at")->text(), QStringLiteral("51.5, -0.12, 2026-06-21, 1"));
  type("plan north", "30");
  enter("plan north");
  EXPECT_EQ(plan().site->north, 30);
  const plan::PlanPtr before = document.plan();
  for (const char* wrong :
       {"somewhere", "51.5, -0.12", "51.5, -0.12, 21.06.2026", "x, 1, 2026-06-21", "91, 0, 2026-06-21"}) {
    type("sun at", wrong);
    enter("sun at");
    EXPECT_EQ(document.plan(), before) << wrong;
  }
  EXPECT_EQ(problems.count(), 5);
  type("sun at", "");
  enter("sun at");
  EXPECT_FALSE(plan().site);
}

TEST_F(Details, NewThingsAreAddedChosenAndUndone) {
  Q_EMIT panel.newButton()->menu()->aboutToShow();
  std::vector<QString> offered;
  for (const QAction* action : panel.newButton()->menu()->actions()) offered.push_back(action->text());
  ASSERT_GE(offered.size(), 7u);
  for (const QString& label : offered) {
    const plan::PlanPtr before = document.plan();
    panel.addThing(label);
    ASSERT_NE(document.plan(), before) << label.toStdString() << ": " << problems.count();
    EXPECT_TRUE(exists(plan(), document.selection())) << label.toStdString();
    document.undoStack().undo();
    EXPECT_EQ(document.plan(), before) << label.toStdString();
  }
  EXPECT_EQ(problems.count(), 0);
  panel.addThing(QStringLiteral("crew"));
  EXPECT_EQ(document.selection().kind, Kind::crew);
  panel.addThing(QStringLiteral("pole"));
  EXPECT_EQ(document.selection().kind, Kind::pole) << "there is somebody to hold it now";
}

TEST_F(Details, TheChosenLensShowsItsMarksToType) {
  selectNora(1);
  EXPECT_FALSE(panel.lensMarks()->isVisible());
  document.select({Kind::lens, {}, -1});
  ASSERT_TRUE(panel.lensMarks()->isVisible());
  const std::size_t marks = plan().lens->focusMarks.size();
  QTest::keyClicks(panel.lensMarks()->newValue(), QStringLiteral("1.07"));
  QTest::keyClicks(panel.lensMarks()->newDegrees(), QStringLiteral("205"));
  QTest::mouseClick(panel.lensMarks()->addButton(), Qt::LeftButton);
  EXPECT_EQ(plan().lens->focusMarks.size(), marks + 1);
  EXPECT_EQ(steps(), 1);
}

TEST_F(Details, NonsenseIsRefusedAndStaysToBeMended) {
  selectNora(1);
  const plan::PlanPtr before = document.plan();
  type("east x", "a bit left");
  enter("east x");
  EXPECT_EQ(document.plan(), before);
  EXPECT_EQ(steps(), 0);
  EXPECT_TRUE(field("east x")->refused());
  EXPECT_EQ(field("east x")->text(), QStringLiteral("a bit left"));
  ASSERT_EQ(problems.count(), 1);
  const QString told = problems.at(0).at(0).toString();
  EXPECT_TRUE(told.startsWith(QStringLiteral("east x: \"a bit left\""))) << told.toStdString();
  EXPECT_TRUE(told.contains(QStringLiteral("type a number with a unit"))) << told.toStdString();
}

TEST_F(Details, LeavingARefusedFieldTellsOnlyOnce) {
  selectNora(1);
  type("east x", "nonsense");
  enter("east x");
  field("north y")->setFocus();
  EXPECT_EQ(problems.count(), 1);
  EXPECT_TRUE(field("east x")->refused());
}

TEST_F(Details, EscapeGoesBackToThePlansValue) {
  selectNora(1);
  type("east x", "nonsense");
  enter("east x");
  QTest::keyClick(field("east x"), Qt::Key_Escape);
  EXPECT_EQ(field("east x")->text(), QStringLiteral("3.40"));
  EXPECT_FALSE(field("east x")->refused());
  EXPECT_EQ(steps(), 0);
}

TEST_F(Details, LeavingAFieldCommits) {
  selectNora(1);
  type("east x", "3.1");
  field("north y")->setFocus();
  EXPECT_EQ(noraMark(1).pos.x, 3.1);
}

TEST_F(Details, AnUntouchedFieldIsNoStep) {
  selectNora(1);
  field("east x")->setFocus();
  enter("east x");
  field("north y")->setFocus();
  EXPECT_EQ(steps(), 0);
}

TEST_F(Details, ArrowsNudgeAndMergeIntoOneStep) {
  selectNora(1);
  field("east x")->setFocus();
  QTest::keyClick(field("east x"), Qt::Key_Up);
  QTest::keyClick(field("east x"), Qt::Key_Up);
  EXPECT_NEAR(noraMark(1).pos.x, 3.5, 1e-9);
  QTest::keyClick(field("east x"), Qt::Key_Down, Qt::ShiftModifier);
  EXPECT_NEAR(noraMark(1).pos.x, 3.0, 1e-9);
  EXPECT_EQ(steps(), 1);
  document.undoStack().undo();
  EXPECT_EQ(noraMark(1).pos.x, 3.4);
}

TEST_F(Details, AnArrowAfterTypingStartsFromWhatWasTyped) {
  selectNora(1);
  type("east x", "3");
  QTest::keyClick(field("east x"), Qt::Key_Up);
  EXPECT_NEAR(noraMark(1).pos.x, 3.05, 1e-9);
}

TEST_F(Details, ATimeMayHangOnABeat) {
  selectNora(1);
  EXPECT_EQ(field("arrive")->text(), QStringLiteral("10.0"));
  type("arrive", "b3+1.5");
  enter("arrive");
  EXPECT_EQ(noraMark(1).at, (plan::Moment{"b3", 1.5}));
  type("arrive", "0:11");
  enter("arrive");
  EXPECT_EQ(noraMark(1).at, (plan::Moment{"b3", 1})) << "seconds keep it on its beat";
  type("arrive", "b9");
  enter("arrive");
  EXPECT_EQ(noraMark(1).at, (plan::Moment{"b3", 1}));
  EXPECT_TRUE(problems.last().at(0).toString().contains(QStringLiteral("b9")));
}

TEST_F(Details, AnEditThePlanRefusesSaysWhy) {
  selectNora(1);
  type("arrive", "2");  // before the first mark is left
  enter("arrive");
  EXPECT_EQ(steps(), 0);
  EXPECT_TRUE(field("arrive")->refused());
  ASSERT_EQ(problems.count(), 1);
  EXPECT_GT(problems.at(0).at(0).toString().size(), 12);
}

TEST_F(Details, AnEmptyFieldMeansWhatItSays) {
  selectNora(1);
  type("facing", "");
  QTest::keyClick(field("facing"), Qt::Key_Delete);
  enter("facing");
  EXPECT_FALSE(noraMark(1).facing.has_value());
  EXPECT_EQ(field("facing")->placeholderText(), QStringLiteral("along way"));
  type("facing", "90\302\260");
  enter("facing");
  EXPECT_EQ(noraMark(1).facing, 90);
}

TEST_F(Details, FeetAreShownAndTypedInAPlanInFeet) {
  document.propose(std::make_shared<const plan::Plan>(*plan::displayUnitSet(plan(), plan::LengthUnit::feet)), {});
  document.propose(
      std::make_shared<const plan::Plan>(*plan::movedMark(plan(), {plan::Owner::performer, "nora", 1}, {3.2004, 3.6})),
      {});
  selectNora(1);
  EXPECT_EQ(field("east x")->text(), QStringLiteral("10'-6\""));
  EXPECT_EQ(field("north y")->text(), QStringLiteral("11'-9.73\"")) << "no tape mark there: hundredths of an inch";
  type("east x", "9");
  enter("east x");
  EXPECT_NEAR(noraMark(1).pos.x, 2.7432, 1e-9);
}

TEST_F(Details, ChoicesAreEditsToo) {
  selectNora(1);
  choose("posture", "kneel");
  EXPECT_EQ(noraMark(1).posture, plan::Posture::kneel);
  choose("taped", "no");
  EXPECT_FALSE(noraMark(1).taped);
}

TEST_F(Details, ALegThatBecomesAnArcHasATurn) {
  selectNora(0);
  EXPECT_EQ(panel.editorOf(QStringLiteral("turns by")), nullptr);
  choose("leg", "arc");
  ASSERT_EQ(noraMark(0).leg.shape, plan::LegShape::arc);
  EXPECT_EQ(field("turns by")->text(), QStringLiteral("90.0"));
  type("turns by", "-60");
  enter("turns by");
  EXPECT_EQ(noraMark(0).leg.sweep, -60);
}

TEST_F(Details, AStopIsTypedInThirds) {
  document.select({Kind::iris, {}, 0});
  EXPECT_EQ(field("stop")->text(), QStringLiteral("T4"));
  type("stop", "T5.6 1/3");
  enter("stop");
  EXPECT_EQ(units::stopText(plan().iris.keys[0].stop), "T5.6\u2153");
  EXPECT_EQ(field("stop")->text(), QStringLiteral("T5.6\u2153"));
}

TEST_F(Details, FocusGoesFromAPersonToADistance) {
  document.select({Kind::focus, {}, 0});
  choose("on", "a distance");
  ASSERT_TRUE(std::holds_alternative<plan::OnDistance>(plan().focus.keys[0].on));
  type("distance", "2.25");
  enter("distance");
  EXPECT_EQ(std::get<plan::OnDistance>(plan().focus.keys[0].on).metres, 2.25);
}

TEST_F(Details, NothingChosenEditsThePlan) {
  document.select({});
  type("title", "Two rooms");
  enter("title");
  EXPECT_EQ(plan().title, "Two rooms");
  type("index EI", "1600");
  enter("index EI");
  EXPECT_EQ(plan().camera.exposureIndex, 1600);
  type("close focus", "45 cm");
  enter("close focus");
  EXPECT_NEAR(plan().lens->closeFocus, 0.45, 1e-12);
}

TEST_F(Details, AMarkIsAddedAtThePlayheadAndRemoved) {
  document.select({Kind::performer, "nora", -1});
  document.setPlayhead(7);
  panel.addAtPlayhead();
  ASSERT_EQ(plan().performers[0].marks.size(), 3U);
  EXPECT_NEAR(noraMark(1).pos.x, 4.15, 1e-6) << "half of the way at half of the time";
  EXPECT_EQ(document.selection(), (Selection{Kind::performer, "nora", 1}));
  panel.setFocus();
  QTest::keyClick(&panel, Qt::Key_Delete);
  EXPECT_EQ(plan().performers[0].marks.size(), 2U);
  EXPECT_EQ(steps(), 2);
}

TEST_F(Details, AKeyIsAddedAtThePlayhead) {
  document.select({Kind::focus, {}, -1});
  document.setPlayhead(12);
  panel.addAtPlayhead();
  ASSERT_EQ(plan().focus.keys.size(), 2U);
  EXPECT_EQ(plan().focus.keys[1].time.at.seconds, 12);
  EXPECT_EQ(document.selection(), (Selection{Kind::focus, {}, 1}));
}

TEST_F(Details, WhatIsNamedCannotBeRemoved) {
  document.select({Kind::performer, "nora", -1});
  panel.removeChosen();
  EXPECT_EQ(plan().performers.size(), 1U);
  EXPECT_EQ(problems.count(), 1);
}

TEST_F(Details, ARemovalThatIsRefusedNamesWhatRefersToIt) {
  document.select({Kind::performer, "nora", -1});
  panel.removeChosen();
  const std::string line = problems.last().first().toString().toStdString();
  EXPECT_NE(line.find("Focus key 1"), std::string::npos) << line;
}

TEST_F(Details, DeleteGoesOnToTheNeighbourAndLeavesWhoeverHasNoMarkLeft) {
  const std::string id = "boom";
  const std::size_t marks = plan().crew.find(id)->marks.size();
  ASSERT_GE(marks, 1U);
  document.select({Kind::crew, id, 0});
  panel.setFocus();
  for (std::size_t left = marks; left-- > 0;) {
    QTest::keyClick(&panel, Qt::Key_Delete);
    ASSERT_EQ(plan().crew.find(id)->marks.size(), left);
    EXPECT_EQ(document.selection(), (Selection{Kind::crew, id, left > 0 ? 0 : -1}));
  }
  const int before = steps();
  for (int i = 0; i < 3; ++i) QTest::keyClick(&panel, Qt::Key_Delete);
  EXPECT_NE(plan().crew.find(id), nullptr) << "a key hit once too often takes nobody out";
  EXPECT_EQ(steps(), before);
  EXPECT_EQ(problems.count(), 3);
  // The choice made anew is deliberate.
  document.select({});
  document.select({Kind::crew, id, -1});
  QTest::keyClick(&panel, Qt::Key_Delete);
  const plan::Crew* const still = plan().crew.find(id);
  EXPECT_TRUE(still == nullptr || problems.count() == 4) << "gone, or refused for what refers to them";
}

TEST_F(Details, AfterTheLastMarkTheOneBeforeIsChosen) {
  document.select({Kind::camera, {}, 0});
  const int last = int(plan().camera.marks.size()) - 1;
  ASSERT_GE(last, 1);
  document.select({Kind::camera, {}, last});
  panel.removeChosen();
  EXPECT_EQ(document.selection(), (Selection{Kind::camera, {}, last - 1}));
}

TEST_F(Details, AllMarksOfAWayGoAsOneStepByTheirOwnButton) {
  document.select({Kind::crew, "boom", 0});
  ASSERT_TRUE(panel.wayButton()->isVisible());
  QTest::mouseClick(panel.wayButton(), Qt::LeftButton);
  EXPECT_TRUE(plan().crew.find("boom")->marks.empty());
  EXPECT_EQ(steps(), 1);
  EXPECT_FALSE(panel.wayButton()->isVisible());
  document.undoStack().undo();
  EXPECT_FALSE(plan().crew.find("boom")->marks.empty());
  document.select({Kind::camera, {}, 0});
  EXPECT_FALSE(panel.wayButton()->isVisible()) << "the camera keeps a mark";
}

TEST_F(Details, AFoundRouteIsReadAndTakenOverAsOneStep) {
  document.select({Kind::crew, "boom", 0});
  QTest::mouseClick(panel.wayButton(), Qt::LeftButton);
  const auto says = [&](const char* words) {
    for (const QLabel* label : panel.findChildren<QLabel*>())
      if (label->isVisible() && label->text().contains(QString::fromUtf8(words))) return true;
    return false;
  };
  EXPECT_TRUE(says("searching for a route"));
  EXPECT_FALSE(panel.routeButton()->isVisible());
  ASSERT_TRUE(QTest::qWaitFor([&] { return bridge.answers()->routes != nullptr; }, 60000));
  const auto* route = bridge.answers()->routes->find("boom");
  ASSERT_TRUE(route && route->found) << (route ? route->whole() : "");
  EXPECT_TRUE(says("found, not drawn"));
  EXPECT_TRUE(says(route->stands.front().crouch ? "crouches: " : "stands: "));
  const geometry::Point ends = route->at(plan().clock.length);
  const int before = steps();
  ASSERT_TRUE(panel.routeButton()->isVisible());
  const auto top = [&](const QWidget* part) { return part->mapTo(&panel, QPoint(0, 0)).y(); };
  panel.layout()->activate();
  EXPECT_LT(top(panel.routeButton()), top(panel.findChild<FieldGrid*>())) << "over the fields, where it is seen";
  QTest::mouseClick(panel.routeButton(), Qt::LeftButton);
  ASSERT_FALSE(plan().crew.find("boom")->marks.empty())
      << (problems.isEmpty() ? "" : problems.last().first().toString().toStdString());
  EXPECT_NEAR(geometry::distance(plan().crew.find("boom")->marks.back().pos, ends), 0, 2e-4);
  EXPECT_EQ(steps(), before + 1);
  EXPECT_FALSE(panel.routeButton()->isVisible());
}

class DetailsOfFirstBatch : public OnSample {
 protected:
  DetailsOfFirstBatch() : OnSample("first-batch.wend") {
    panel.resize(464, 900);
    panel.show();
  }
  bool says(const std::string& words) const {
    for (const QLabel* label : panel.findChildren<QLabel*>())
      if (label->isVisible() && label->text().contains(QString::fromStdString(words))) return true;
    return false;
  }
  DetailsPanel panel{document, bridge};
};

TEST_F(DetailsOfFirstBatch, TheCornersOfWalksAreToldAsThePapersTellThem) {
  ASSERT_TRUE(QTest::qWaitFor([&] { return bridge.answers() != nullptr; }, 60000));
  document.select({Kind::crew, "ac1", -1});
  const auto& take = *bridge.answers()->take;
  const auto drawn = sheets::drawnWalksOf(take, plan().crew.indexOf("ac1"));
  ASSERT_GT(drawn.size(), 2u);
  for (const auto& walk : drawn) EXPECT_TRUE(says("by way of: " + sheets::wayText(walk)));
  EXPECT_TRUE(says("-1.00, 2.45 at 36.2")) << "a mark passed without a stop, two seconds and a bit after b5";

  QTest::mouseClick(panel.wayButton(), Qt::LeftButton);
  ASSERT_TRUE(plan().crew.find("ac1")->marks.empty());
  EXPECT_FALSE(says("by way of: ")) << "nobody knows a way yet";
  ASSERT_TRUE(QTest::qWaitFor([&] { return bridge.answers()->routes && !bridge.stale(); }, 60000));
  const auto found = sheets::soughtRouteOf(*bridge.answers(), "ac1");
  ASSERT_TRUE(found && !found->walks.empty());
  for (const auto& walk : found->walks) EXPECT_TRUE(says("by way of: " + sheets::wayText(walk)));
}

TEST_F(Details, ARefusedFieldIsToldFromOneWithTheKeyboard) {
  selectNora(1);
  FieldEdit* const east = field("east x");
  const auto look = [&] { return east->grab().toImage(); };
  east->setFocus();
  const QImage focused = look();
  field("north y")->setFocus();
  const QImage plain = look();
  type("east x", "nowhere");
  enter("east x");
  ASSERT_TRUE(east->refused());
  // The block at the left edge is the mark of a refusal.
  const QColor mark = look().pixelColor(4, 4);
  EXPECT_NE(mark, focused.pixelColor(4, 4));
  EXPECT_NE(mark, plain.pixelColor(4, 4));
  field("north y")->setFocus();
  EXPECT_EQ(look().pixelColor(4, 4), mark) << "with or without the keyboard";
}

TEST_F(Details, ShowsWhatIsDragged) {
  selectNora(1);
  document.setPreview(
      std::make_shared<const plan::Plan>(*plan::movedMark(plan(), {plan::Owner::performer, "nora", 1}, {3, 3})));
  EXPECT_EQ(field("east x")->text(), QStringLiteral("3.00"));
  document.dropPreview();
  EXPECT_EQ(field("east x")->text(), QStringLiteral("3.40"));
}

/// Every kind of thing of the sample has fields, and each reads back what it shows.
TEST_F(Details, EveryFieldReadsBackWhatItShows) {
  const Selection all[] = {{Kind::none, {}, -1},     {Kind::beat, "b2", -1},        {Kind::room, "room", 1},
                           {Kind::wall, "north", 0}, {Kind::opening, "door", -1},   {Kind::piece, "table", 2},
                           {Kind::area, "light", 1}, {Kind::performer, "nora", -1}, {Kind::performer, "nora", 0},
                           {Kind::camera, {}, -1},   {Kind::camera, {}, 1},         {Kind::aim, {}, 0},
                           {Kind::lens, {}, -1},     {Kind::focus, {}, 0},          {Kind::iris, {}, 0},
                           {Kind::crew, "boom", -1}, {Kind::crew, "boom", 0}};
  for (const bool feet : {false, true}) {
    plan::Plan shown = plan();
    shown.display = feet ? plan::LengthUnit::feet : plan::LengthUnit::metres;
    for (const Selection& selection : all) {
      const Fields fields = fieldsOf({shown, selection, bridge.answers().get(), 0});
      EXPECT_FALSE(fields.empty()) << int(selection.kind);
      for (const Field& field : fields) {
        if (!field.editable()) continue;
        const auto value = valueFrom(field, shown, textOf(field, shown));
        ASSERT_TRUE(value.ok()) << field.label << ": " << textOf(field, shown);
        const auto edited = field.set(shown, *value);
        ASSERT_TRUE(edited.ok()) << field.label << ": " << base::toText(edited.problems().front());
        if (feet) continue;  // a hundredth of an inch may be another step
        EXPECT_EQ(*edited, shown) << field.label << " of kind " << int(selection.kind);
      }
    }
  }
}

}  // namespace
}  // namespace wend::ui
