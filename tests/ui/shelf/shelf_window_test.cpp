#include "ui/shelf/shelf_window.h"

#include <QDir>
#include <QMenu>
#include <QTemporaryDir>
#include <algorithm>

#include "core/file/chart_file.h"
#include "tests/ui/details/one_room.h"
#include "ui/document/open.h"
#include "ui/shell/main_window.h"

namespace wend::ui {
namespace {

class LensShelfWindow : public OneRoom {
 protected:
  void SetUp() override {
    window = std::make_unique<ShelfWindow>(document, ChartShelf(QDir(home.path()).filePath(QStringLiteral("charts"))));
    window->show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(window.get()));
    window->activateWindow();
    window->search()->setFocus();
  }
  void type(const char* text) { QTest::keyClicks(window->search(), QString::fromUtf8(text)); }
  void click(QPushButton* button) { QTest::mouseClick(button, Qt::LeftButton); }
  std::string currentText() {
    return window->list()->currentItem() ? window->list()->currentItem()->text().toStdString() : std::string();
  }
  std::ptrdiff_t own() {
    const auto& charts = window->shelf().charts();
    return std::count_if(charts.begin(), charts.end(), [](const auto& chart) { return !chart.starter; });
  }

  QTemporaryDir home;
  std::unique_ptr<ShelfWindow> window;
};

TEST_F(LensShelfWindow, WordsAndReturnMakeAChartThePlansLensInOneStep) {
  const auto before = document.plan();
  type("35 prime");
  ASSERT_EQ(window->list()->count(), 1);
  QTest::keyClick(window->search(), Qt::Key_Return);
  EXPECT_EQ(plan().lens->name, "generic 35 mm prime, T1.5");
  EXPECT_GE(plan().lens->focusMarks.size(), 8u);
  EXPECT_EQ(steps(), 1);
  EXPECT_EQ(window->marks()->table()->rowCount(), int(plan().lens->focusMarks.size()));
  document.undoStack().undo();
  EXPECT_EQ(document.plan(), before);
}

TEST_F(LensShelfWindow, IsUsedFromTheKeyboardAlone) {
  type("zoom");
  QTest::keyClick(window->search(), Qt::Key_Down);
  EXPECT_TRUE(window->list()->hasFocus());
  QTest::keyClick(window->list(), Qt::Key_Down);
  const std::string second = currentText();
  QTest::keyClick(window->list(), Qt::Key_Return);
  ASSERT_EQ(steps(), 1);
  EXPECT_EQ(second.rfind(plan().lens->name, 0), 0u) << second;
}

TEST_F(LensShelfWindow, KeepsThePlansLensAndRenamesIt) {
  ASSERT_TRUE(plan().lens);
  click(window->keepButton());
  ASSERT_EQ(own(), 1);
  EXPECT_TRUE(window->shelf().charts()[0].chart.lens == *plan().lens);
  EXPECT_EQ(steps(), 0) << "the plan is as it was";
  QTest::keyClick(window.get(), Qt::Key_F2);
  ASSERT_TRUE(window->newName()->isVisible());
  QTest::keyClicks(window->newName(), QStringLiteral("house zoom"));
  QTest::keyClick(window->newName(), Qt::Key_Return);
  EXPECT_EQ(currentText().rfind("house zoom\n", 0), 0u) << currentText();
  EXPECT_FALSE(window->newName()->isVisible());
}

TEST_F(LensShelfWindow, DeleteRemovesAndPutBackBringsBack) {
  click(window->keepButton());
  const int listed = window->list()->count();
  EXPECT_FALSE(window->putBackButton()->isVisible());
  window->list()->setFocus();
  QTest::keyClick(window->list(), Qt::Key_Delete);
  EXPECT_EQ(window->list()->count(), listed - 1);
  EXPECT_EQ(own(), 0);
  click(window->putBackButton());
  EXPECT_EQ(own(), 1);
  EXPECT_FALSE(window->putBackButton()->isVisible());
}

TEST_F(LensShelfWindow, AStarterCannotBeRemovedAndSaysWhy) {
  window->list()->setFocus();
  const int listed = window->list()->count();
  EXPECT_FALSE(window->removeButton()->isEnabled());
  QTest::keyClick(window->list(), Qt::Key_Delete);
  EXPECT_EQ(window->list()->count(), listed);
  EXPECT_NE(window->status()->text().indexOf(QStringLiteral("comes with Wend")), -1);
}

TEST_F(LensShelfWindow, ImportsAndExportsAndSaysWhatIsWrongWithAFile) {
  type("50 prime");
  const QString out = QDir(home.path()).filePath(QStringLiteral("out.wendchart"));
  window->exportTo(out);
  const auto written = readFile(out, 1 << 20);
  ASSERT_TRUE(written.ok());
  EXPECT_EQ(file::readChart(written->bytes)->chart.lens.name, "generic 50 mm prime, T1.5");
  window->importFrom(out);
  EXPECT_EQ(own(), 1);
  window->importFrom(QString::fromUtf8(WEND_SOURCE_DIR "/README.md"));
  EXPECT_EQ(own(), 1);
  EXPECT_FALSE(window->status()->text().isEmpty());
}

TEST_F(LensShelfWindow, OpensOnceForAWindowOnTheUsersFolder) {
  qputenv("XDG_DATA_HOME", home.path().toUtf8());
  QWidget parent;
  showShelf(document, &parent);
  showShelf(document, &parent);
  const auto shelves = parent.findChildren<ShelfWindow*>();
  ASSERT_EQ(shelves.size(), 1);
  EXPECT_TRUE(shelves[0]->isVisible());
  EXPECT_EQ(shelves[0]->shelf().folder(), home.path() + QStringLiteral("/wend/charts"));
  QTest::keyClick(shelves[0], Qt::Key_Escape);
  EXPECT_FALSE(shelves[0]->isVisible());
  qunsetenv("XDG_DATA_HOME");
}

TEST(ShelfOfTheProgram, OpensByKeyAndByMenu) {
  const QTemporaryDir home;
  qputenv("XDG_DATA_HOME", home.path().toUtf8());
  qputenv("XDG_STATE_HOME", home.path().toUtf8());
  MainWindow window;
  window.show();
  ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
  window.activateWindow();
  EXPECT_EQ(window.findChild<ShelfWindow*>(), nullptr);
  QTest::keyClick(&window, Qt::Key_L, Qt::ControlModifier);
  auto* shelf = window.findChild<ShelfWindow*>();
  ASSERT_NE(shelf, nullptr);
  EXPECT_TRUE(shelf->isVisible());
  shelf->close();
  QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  ASSERT_EQ(window.findChild<ShelfWindow*>(), nullptr);
  for (QMenu* menu : window.findChildren<QMenu*>())
    for (QAction* action : menu->actions())
      if (action->text().startsWith(QStringLiteral("Lens charts"))) action->trigger();
  EXPECT_NE(window.findChild<ShelfWindow*>(), nullptr);
  qunsetenv("XDG_DATA_HOME");
}

}  // namespace
}  // namespace wend::ui
