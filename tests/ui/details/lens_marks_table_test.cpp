#include "ui/details/lens_marks_table.h"

#include <cmath>

#include "core/plan/edits_camera.h"
#include "core/plan/edits_plan.h"
#include "tests/ui/details/one_room.h"

namespace wend::ui {
namespace {

using optics::ScaleOf;

class MarksTable : public OneRoom {
 protected:
  MarksTable() {
    plan::Lens lens = plan().lens.value_or(plan::Lens{});
    lens.closeFocus = 0.75;
    lens.focusMarks = {{std::nullopt, 0}, {3, 100, "B"}, {1.5, 190}, {0.75, 300}};
    document.start(std::make_shared<const plan::Plan>(plan::lensSet(plan(), lens).value()), {});
    table.resize(640, 480);
    table.show();
  }
  const std::vector<plan::FocusMark>& marks() { return plan().lens->focusMarks; }
  QString cell(int row, int column) { return table.table()->item(row, column)->text(); }
  /// Types over a cell as a hand does: the cell, the text, Return.
  void type(int row, int column, const char* text) {
    table.table()->setFocus();
    table.table()->setCurrentCell(row, column);
    QTest::keyClick(table.table(), Qt::Key_F2);
    auto* edit = table.table()->findChild<QLineEdit*>();
    ASSERT_NE(edit, nullptr);
    edit->selectAll();
    QTest::keyClicks(edit, QString::fromUtf8(text));
    QTest::keyClick(edit, Qt::Key_Return);
    QTest::qWait(1);  // the editor is let go of by the loop of events
  }

  LensMarksTable table{document};
};

TEST_F(MarksTable, ShowsEachMarkWithWhatTheOthersSay) {
  ASSERT_EQ(table.table()->rowCount(), 4);
  EXPECT_EQ(cell(0, 0), QStringLiteral("\u221e"));
  EXPECT_EQ(cell(1, 2), QStringLiteral("B"));
  EXPECT_EQ(cell(0, 3), QStringLiteral("\u2013"));
  EXPECT_NE(cell(1, 3).indexOf(QStringLiteral("\u00b0, ")), -1) << cell(1, 3).toStdString();
  EXPECT_NE(table.advice()->text().indexOf(QStringLiteral("mark next: ")), -1);
}

TEST_F(MarksTable, ATypedMarkIsOneStepAndUndone) {
  type(1, LensMarksTable::valueColumn, "9'6\"");
  EXPECT_NEAR(*marks()[1].distance, 9.5 * 0.3048, 1e-4);
  EXPECT_EQ(marks()[1].witness, "B");
  EXPECT_EQ(steps(), 1);
  document.undoStack().undo();
  EXPECT_EQ(marks()[1].distance, 3);
  EXPECT_EQ(cell(1, 0), QStringLiteral("3"));
  type(2, LensMarksTable::degreesColumn, "180.5");
  EXPECT_EQ(marks()[2].deg, 180.5);
  type(2, LensMarksTable::witnessColumn, "C");
  EXPECT_EQ(marks()[2].witness, "C");
}

TEST_F(MarksTable, AMarkThatTurnsBackIsRefusedWithItsRow) {
  type(2, LensMarksTable::degreesColumn, "90");
  EXPECT_EQ(steps(), 0);
  EXPECT_EQ(marks()[2].deg, 190);
  EXPECT_TRUE(table.problem()->isVisible());
  EXPECT_NE(table.problem()->text().indexOf(QStringLiteral("row 3")), -1) << table.problem()->text().toStdString();
  EXPECT_EQ(cell(2, 1), QStringLiteral("190"));
  type(2, LensMarksTable::degreesColumn, "many");
  EXPECT_EQ(steps(), 0);
  type(2, LensMarksTable::degreesColumn, "180");
  EXPECT_EQ(steps(), 1);
  EXPECT_FALSE(table.problem()->isVisible());
}

TEST_F(MarksTable, AddsAMarkWhereItBelongs) {
  QTest::keyClicks(table.newValue(), QStringLiteral("2"));
  QTest::keyClicks(table.newDegrees(), QStringLiteral("150"));
  QTest::keyClicks(table.newWitness(), QStringLiteral("door"));
  QTest::keyClick(table.newWitness(), Qt::Key_Return);
  ASSERT_EQ(marks().size(), 5u);
  EXPECT_EQ(marks()[2].distance, 2);
  EXPECT_EQ(marks()[2].witness, "door");
  EXPECT_EQ(steps(), 1);
  EXPECT_TRUE(table.newValue()->text().isEmpty());
  QTest::keyClicks(table.newValue(), QStringLiteral("1"));
  QTest::keyClicks(table.newDegrees(), QStringLiteral("10"));
  QTest::keyClick(table.newDegrees(), Qt::Key_Return);
  EXPECT_EQ(marks().size(), 5u);
  EXPECT_NE(table.problem()->text().indexOf(QStringLiteral("row 5")), -1) << table.problem()->text().toStdString();
  EXPECT_FALSE(table.newValue()->text().isEmpty()) << "what was typed stays to be mended";
  const QString said = table.problem()->text();
  EXPECT_TRUE(said.startsWith(QStringLiteral("1 at 10\u00b0"))) << said.toStdString();
  EXPECT_NE(said.indexOf(cell(4, 0) + QStringLiteral(" at ") + cell(4, 1)), -1) << "row 5 as it is on screen";
  EXPECT_EQ(said.indexOf(QStringLiteral("/lens")), -1) << said.toStdString();
  EXPECT_TRUE(table.problem()->isVisible());
  document.propose(std::make_shared<const plan::Plan>(plan::displayUnitSet(plan(), plan::LengthUnit::feet).value()),
                   {});
  EXPECT_FALSE(table.problem()->isVisible()) << "an old refusal goes with the next change";
}

TEST_F(MarksTable, DeleteTakesARowOut) {
  table.table()->setFocus();
  table.table()->setCurrentCell(1, 0);
  QTest::keyClick(table.table(), Qt::Key_Delete);
  ASSERT_EQ(marks().size(), 3u);
  EXPECT_EQ(marks()[1].distance, 1.5);
  EXPECT_EQ(steps(), 1);
}

TEST_F(MarksTable, HasIrisAndZoomAsWell) {
  table.rings()->setCurrentIndex(int(ScaleOf::stop));
  const int rows = table.table()->rowCount();
  ASSERT_EQ(std::size_t(rows), plan().lens->irisMarks.size());
  document.start(std::make_shared<const plan::Plan>(*[&] {
                   plan::Lens lens = *plan().lens;
                   lens.irisMarks.clear();
                   return std::make_unique<plan::Plan>(plan::lensSet(plan(), lens).value());
                 }()),
                 {});
  for (const auto& [stop, degrees] : {std::pair{"T4", "20"}, {"2.8", "0"}, {"5.6", "40"}}) {
    QTest::keyClicks(table.newValue(), QString::fromUtf8(stop));
    QTest::keyClicks(table.newDegrees(), QString::fromUtf8(degrees));
    QTest::keyClick(table.newDegrees(), Qt::Key_Return);
  }
  ASSERT_EQ(plan().lens->irisMarks.size(), 3u);
  EXPECT_EQ(plan().lens->irisMarks[0].stop, 2.8);
  EXPECT_TRUE(table.table()->isColumnHidden(LensMarksTable::witnessColumn));
}

TEST_F(MarksTable, SpeaksFeetWhereThePlanDoes) {
  document.propose(std::make_shared<const plan::Plan>(plan::displayUnitSet(plan(), plan::LengthUnit::feet).value()),
                   {});
  EXPECT_EQ(table.table()->horizontalHeaderItem(0)->text(), QStringLiteral("feet, inches"));
  EXPECT_EQ(cell(1, 0), QStringLiteral("9'-10\""));
  type(1, LensMarksTable::valueColumn, "10'");
  EXPECT_NEAR(*marks()[1].distance, 3.048, 1e-4);
}

TEST(MarkValue, IsReadByItsRing) {
  const auto read = [](ScaleOf of, const char* typed) { return markValueFrom(of, typed, plan::LengthUnit::metres); };
  EXPECT_NEAR(*read(ScaleOf::distance, "4'6\""), 1.3716, 1e-9);
  EXPECT_EQ(*read(ScaleOf::distance, "1.37"), 1.37);
  EXPECT_TRUE(std::isinf(*read(ScaleOf::distance, " inf ")));
  EXPECT_EQ(*read(ScaleOf::stop, "T2.8"), 2.8);
  EXPECT_EQ(*read(ScaleOf::focal, "35 mm"), 35);
  EXPECT_EQ(*read(ScaleOf::focal, "35"), 35);
  EXPECT_FALSE(read(ScaleOf::focal, "long").ok());
  EXPECT_FALSE(read(ScaleOf::stop, "inf").ok());
}

}  // namespace
}  // namespace wend::ui
