#include "ui/shell/strip.h"

#include <gtest/gtest.h>

#include <QTest>
#include <QVBoxLayout>

namespace wend::ui {
namespace {

const QString kRest = QStringLiteral("Caution");
const QString kLong =
    QStringLiteral("hot focus on hands at the lock: band 0.3 x wobble at 1.28 m. Mend: back off. ").repeated(40);

class StripOfAWindow : public ::testing::Test {
 protected:
  StripOfAWindow() : strip(new Strip(kRest, &window)) {
    auto* rows = new QVBoxLayout(&window);
    rows->addWidget(strip);
    window.resize(600, 100);
    window.show();
    EXPECT_TRUE(QTest::qWaitForWindowExposed(&window));
  }
  QWidget window;
  Strip* strip;
};

TEST_F(StripOfAWindow, AsksForNoWidthHoweverLongItsWords) {
  const int least = window.minimumSizeHint().width();
  strip->say(kLong);
  strip->showChange(kLong);
  QTest::qWait(20);
  EXPECT_EQ(window.minimumSizeHint().width(), least);
  EXPECT_EQ(window.width(), 600);
  EXPECT_GT(strip->said().width(), 100);
  EXPECT_GT(strip->change().width(), 100);
}

TEST_F(StripOfAWindow, CutsWhatHasNoRoomAndKeepsTheWholeForTheToolTipAndForReadingAloud) {
  strip->say(kLong);
  QTest::qWait(20);
  EXPECT_TRUE(strip->said().shownText().endsWith(QChar(0x2026)));
  EXPECT_LT(strip->said().shownText().size(), kLong.size());
  EXPECT_EQ(strip->said().text(), kLong);
  EXPECT_EQ(strip->said().toolTip(), kLong);
  strip->say(QStringLiteral("Saved"));
  QTest::qWait(20);
  EXPECT_EQ(strip->said().shownText(), QStringLiteral("Saved"));
}

TEST_F(StripOfAWindow, ForgetsARefusalOnceItIsSettledAndNothingElse) {
  strip->refuse(QStringLiteral("no"));
  EXPECT_EQ(strip->said().text(), QStringLiteral("no"));
  strip->settle();
  EXPECT_EQ(strip->said().text(), kRest);
  strip->say(QStringLiteral("another window has this plan open"));
  strip->settle();
  EXPECT_EQ(strip->said().text(), QStringLiteral("another window has this plan open"));
}

TEST_F(StripOfAWindow, ShowsTheLinesOfAChangeInOneAndHidesThemWhenThereAreNone) {
  EXPECT_FALSE(strip->change().isVisible());
  strip->showChange(QStringLiteral("1 came\n+ a snag"));
  EXPECT_TRUE(strip->change().isVisible());
  EXPECT_EQ(strip->change().text(), QStringLiteral("1 came   + a snag"));
  EXPECT_EQ(strip->change().toolTip(), QStringLiteral("1 came\n+ a snag"));
  strip->showChange({});
  EXPECT_FALSE(strip->change().isVisible());
}

}  // namespace
}  // namespace wend::ui
