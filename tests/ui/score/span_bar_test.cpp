// The bar of a chosen span with real clicks: what it plans anew, what it leaves, and what it refuses.
#include "ui/score/span_bar.h"

#include <QSignalSpy>

#include "tests/ui/details/one_room.h"

namespace wend::ui {
namespace {

class Span : public OneRoom {
 protected:
  Span() {
    score.resize(1000, 520);
    bar.resize(1000, 40);
    score.show();
    bar.show();
  }
  void click(QPushButton* button) { QTest::mouseClick(button, Qt::LeftButton); }
  void type(QLineEdit* edit, const QString& text) {
    edit->setFocus();
    edit->selectAll();
    QTest::keyClicks(edit, text);
    QTest::keyClick(edit, Qt::Key_Return);
  }

  ScoreView score{document, bridge};
  SpanBar bar{document, bridge, score};
  QSignalSpy told{&bar, &SpanBar::told};
};

TEST_F(Span, BarIsThereWhileASpanIsChosen) {
  score.setSpan(geometry::Span{2, 6});
  EXPECT_TRUE(bar.isVisible());
  EXPECT_EQ(bar.from()->text(), QStringLiteral("2.0"));
  EXPECT_EQ(bar.until()->text(), QStringLiteral("6.0"));
  score.setSpan(std::nullopt);
  EXPECT_FALSE(bar.isVisible());
}

TEST_F(Span, EndsCanBeTyped) {
  score.setSpan(geometry::Span{2, 6});
  type(bar.until(), QStringLiteral("7.5"));
  ASSERT_TRUE(score.span().has_value());
  EXPECT_EQ(*score.span(), (geometry::Span{2, 7.5}));
  type(bar.from(), QStringLiteral("9"));
  EXPECT_EQ(*score.span(), (geometry::Span{2, 7.5})) << "a span does not end before it begins";
  EXPECT_EQ(told.count(), 1);
}

TEST_F(Span, TheWholeTrackIsTakenIntoTheHandAndGivenBackAsOneStepEach) {
  ASSERT_TRUE(plan().focus.pulls.empty());
  score.setSpan(geometry::Span{0, plan().clock.length});
  click(bar.handButton());
  ASSERT_FALSE(plan().focus.pulls.empty());
  EXPECT_EQ(steps(), 1);
  const auto byHand = document.plan();
  click(bar.handButton());
  EXPECT_EQ(document.plan(), byHand) << "it is in the hand already";
  EXPECT_EQ(told.count(), 1);
  click(bar.planButton());
  EXPECT_TRUE(plan().focus.pulls.empty());
  EXPECT_EQ(steps(), 2);
  document.undoStack().undo();
  EXPECT_EQ(document.plan(), byHand);
}

TEST_F(Span, OnlyTheSelectedPartIsPlannedAnew) {
  score.setSpan(geometry::Span{0, plan().clock.length});
  click(bar.handButton());
  plan::Plan edited = plan();
  const double length = edited.clock.length;
  // A pull too much at the end, which the slack does not ask for.
  const double last = edited.focus.pulls.back().distance;
  edited.focus.pulls.push_back({{"", length - 3}, 0.5, last + 0.5, {}});
  edited.focus.pulls.push_back({{"", length - 2}, 0.5, last, {}});
  document.start(std::make_shared<const plan::Plan>(edited), {});
  const auto kept = plan().focus.pulls.front();
  score.setSpan(geometry::Span{length - 3.2, length});
  const std::size_t before = plan().focus.pulls.size();
  click(bar.planButton());
  EXPECT_LT(plan().focus.pulls.size(), before) << (told.isEmpty() ? "" : told.last().first().toString().toStdString());
  EXPECT_EQ(steps(), 1);
  if (!plan().focus.pulls.empty()) {
    EXPECT_EQ(plan().focus.pulls.front(), kept);
  }
}

TEST_F(Span, WhatIsChosenSaysWhichAxisIsPlanned) {
  document.select({Kind::iris, {}, 0});
  EXPECT_EQ(bar.axis()->currentText(), QStringLiteral("iris"));
  document.select({Kind::focus, {}, 0});
  EXPECT_EQ(bar.axis()->currentText(), QStringLiteral("focus"));
}

TEST_F(Span, APlannedIrisIsTakenIntoTheHand) {
  plan::Plan planned = plan();
  planned.iris.keys.clear();
  document.start(std::make_shared<const plan::Plan>(planned), {});
  score.setSpan(geometry::Span{0, plan().clock.length});
  bar.axis()->setCurrentIndex(1);
  click(bar.handButton());
  ASSERT_FALSE(plan().iris.keys.empty());
  click(bar.planButton());
  EXPECT_TRUE(plan().iris.keys.empty());
}

TEST_F(Span, AZoomSetByKeysIsPlannedAnew) {
  plan::Plan keyed = plan();
  ASSERT_TRUE(keyed.lens.has_value());
  keyed.lens->focal = {20, 80};
  keyed.zoom.slackShare = 0.06;
  const auto by = [](double at, double focal) {
    return plan::ZoomKey{{{"", at}, at > 0 ? 0.5 : 0, plan::Pace::even}, focal, "", plan::OnPerformer{}, {}};
  };
  keyed.zoom.keys = {by(0, 30), by(2, 31), by(3, 30), by(4, 31)};
  document.start(std::make_shared<const plan::Plan>(keyed), {});
  document.select({Kind::zoom, {}, 0});
  EXPECT_EQ(bar.axis()->currentText(), QStringLiteral("zoom"));
  score.setSpan(geometry::Span{0, plan().clock.length});
  click(bar.planButton());
  EXPECT_EQ(plan().zoom.keys.size(), 1u) << "the slack asks for no zoom at all";
  EXPECT_EQ(steps(), 1);
}

}  // namespace
}  // namespace wend::ui
