#include <QImage>

#include "core/plan/edits_camera.h"
#include "core/sheets/frame_drawing.h"
#include "core/sheets/now_drawing.h"
#include "core/sheets/side_drawing.h"
#include "tests/ui/details/one_room.h"
#include "ui/frame/frame_view.h"
#include "ui/frame/now_view.h"

namespace wend::ui {
namespace {

class Frame : public OneRoom {
 protected:
  Frame() {
    document.setPlayhead(12);
    view.resize(464, 300);
    view.show();
  }
  QPoint faceOfNora() {
    const auto fit = sheets::frameFit(bridge.instant(), view.width(), view.height() - FrameView::kHeader);
    const auto at = fit.toPicture(bridge.instant().performers[0].place);
    return QPoint(int(at.x), int(at.y) + FrameView::kHeader);
  }
  FrameView view{document, bridge};
};

TEST_F(Frame, NamesTheLensInItsHeader) {
  EXPECT_EQ(view.lensLine(), QString::fromUtf8("28 mm · T4 · 24.9 × 14.0 mm · 47.9° wide"));
}

TEST_F(Frame, SaysWhoIsInFrame) {
  EXPECT_EQ(view.accessibleDescription(), QStringLiteral("NORA in frame"));
}

TEST_F(Frame, AClickOnAFigureChoosesThatPerformer) {
  QTest::mouseClick(&view, Qt::LeftButton, {}, faceOfNora());
  EXPECT_EQ(document.selection(), (Selection{Kind::performer, "nora", -1}));
}

TEST_F(Frame, AClickBesideTheFiguresChoosesNothing) {
  QTest::mouseClick(&view, Qt::LeftButton, {}, QPoint(20, FrameView::kHeader + 20));
  EXPECT_FALSE(document.selection().any());
}

TEST_F(Frame, ArrowsChooseThroughThoseInFrame) {
  QTest::keyClick(&view, Qt::Key_Right);
  EXPECT_EQ(document.selection(), (Selection{Kind::performer, "nora", -1}));
}

TEST_F(Frame, AClickOnTheOtherWordShowsTheInstantFromTheSide) {
  const QImage ahead = view.grab().toImage();
  QTest::mouseClick(&view, Qt::LeftButton, {}, view.headerWord(true).center());
  EXPECT_TRUE(view.fromSide());
  EXPECT_EQ(view.lensLine(), QString::fromStdString(sheets::sideWords(bridge.instant())));
  EXPECT_NE(view.grab().toImage(), ahead);
  EXPECT_FALSE(document.selection().any());
  QTest::mouseClick(&view, Qt::LeftButton, {}, view.headerWord(false).center());
  EXPECT_EQ(view.grab().toImage(), ahead);
}

TEST_F(Frame, AClickOnAFigureFromTheSideChoosesThatPerformer) {
  view.setFromSide(true);
  const auto side = sheets::sideView(*bridge.answers()->take, bridge.instant());
  const auto nora = std::find_if(side.people.begin(), side.people.end(), [](const auto& p) { return p.performer; });
  ASSERT_NE(nora, side.people.end()) << "the lens looks at her";
  const auto fit = sheets::sideFit(side, {double(view.width()), double(view.height() - FrameView::kHeader), false});
  const auto at = fit.toPicture({nora->ahead, (nora->floor + nora->top) / 2});
  QTest::mouseClick(&view, Qt::LeftButton, {}, QPoint(int(at.x), int(at.y) + FrameView::kHeader));
  EXPECT_EQ(document.selection(), (Selection{Kind::performer, "nora", -1}));
}

TEST_F(Frame, APlanWithoutALensIsShownAsUnknown) {
  document.propose(std::make_shared<const plan::Plan>(*plan::lensSet(plan(), std::nullopt)), {});
  EXPECT_TRUE(view.lensLine().isEmpty());
  EXPECT_EQ(view.accessibleDescription(), QStringLiteral("No lens in the plan: nothing to see"));
  EXPECT_FALSE(view.grab().isNull());
  QTest::mouseClick(&view, Qt::LeftButton, {}, view.rect().center());
  EXPECT_FALSE(document.selection().any());
}

class Now : public OneRoom {
 protected:
  Now() {
    view.resize(240, 544);
    view.show();
  }
  NowView view{document, bridge};
};

TEST_F(Now, SaysItselfInWords) {
  // From the sensor at (1.7, 1.9, 1.5) to eyes at (3.4, 3.6) and 0.07 m higher: 2.405 m on the slant.
  document.setPlayhead(12);
  const QString words = view.accessibleDescription();
  EXPECT_TRUE(words.startsWith(QStringLiteral("0:12.0, beat 3, sharp on NORA at 2.41 m, 28 mm, T4")))
      << words.toStdString();
}

TEST_F(Now, AClickOnTheCardGoesToTheSnag) {
  bridge.finish();
  const snags::Snag* snag = sheets::worstSnag(*bridge.answers()->snags, document.playhead());
  ASSERT_NE(snag, nullptr) << "the sample has a snag in its first five seconds";
  const Selection expected{Kind::snag, snag->key, -1};
  const double from = snag->from;
  QTest::mouseClick(&view, Qt::LeftButton, {}, QPoint(120, 500));
  EXPECT_EQ(document.selection(), expected);
  EXPECT_NEAR(document.playhead(), from, 1e-9);
}

TEST_F(Now, AClickElsewhereGoesNowhere) {
  bridge.finish();
  QTest::mouseClick(&view, Qt::LeftButton, {}, QPoint(120, 200));
  EXPECT_FALSE(document.selection().any());
}

}  // namespace
}  // namespace wend::ui
