#include "ui/details/snag_list.h"

#include "tests/ui/details/one_room.h"
#include "ui/details/snag_row.h"

namespace wend::ui {
namespace {

class ListOfSnags : public OneRoom {
 protected:
  ListOfSnags() {
    bridge.finish();
    list.resize(464, 400);
    list.show();
  }
  QListWidgetItem* row(int i) { return list.list()->item(i); }
  void click(int i) {
    list.list()->scrollToItem(row(i));
    QTest::mouseClick(list.list()->viewport(), Qt::LeftButton, {}, list.list()->visualItemRect(row(i)).center());
  }
  void click(QPushButton* button) { QTest::mouseClick(button, Qt::LeftButton); }

  SnagList list{document, bridge};
};

TEST_F(ListOfSnags, HasEverySnagOfTheTake) {
  ASSERT_TRUE(bridge.answers()->snags);
  ASSERT_GT(bridge.answers()->snags->size(), 0U) << "the sample has snags to list";
  EXPECT_EQ(list.list()->count(), int(bridge.answers()->snags->size()));
}

TEST_F(ListOfSnags, AClickGoesThere) {
  const auto& snag = bridge.answers()->snags->back();
  click(list.list()->count() - 1);
  EXPECT_NEAR(document.playhead(), snag.from, 1e-9);
  EXPECT_EQ(document.selection(), (Selection{Kind::snag, snag.key, -1}));
}

TEST_F(ListOfSnags, IsNarrowedByWords) {
  const QString word = QString::fromStdString(bridge.answers()->snags->front().rule);
  QTest::keyClicks(list.filter(), word);
  ASSERT_GT(list.list()->count(), 0);
  for (int i = 0; i < list.list()->count(); ++i)
    EXPECT_TRUE(row(i)->data(snagKey).toString().contains(word)) << row(i)->data(snagKey).toString().toStdString();
  QTest::keyClicks(list.filter(), QStringLiteral(" nosuchword"));
  EXPECT_EQ(list.list()->count(), 0);
}

TEST_F(ListOfSnags, ASnagIsAcceptedByNameAndTakenBack) {
  click(0);
  const std::string key = document.selection().id;
  EXPECT_FALSE(list.takeBackButton()->isEnabled());
  click(list.acceptButton());
  ASSERT_TRUE(list.acceptedBy()->isVisible());
  QTest::keyClicks(list.acceptedBy(), QStringLiteral("Vera"));
  QTest::keyClicks(list.note(), QStringLiteral("seen at the recce"));
  QTest::keyClick(list.note(), Qt::Key_Return);
  ASSERT_EQ(plan().accepted.size(), 1U);
  EXPECT_EQ(plan().accepted[0].key, key);
  EXPECT_EQ(plan().accepted[0].by, "Vera");
  EXPECT_EQ(plan().accepted[0].note, "seen at the recce");
  EXPECT_EQ(steps(), 1);
  EXPECT_FALSE(list.acceptedBy()->isVisible());
  EXPECT_EQ(row(0)->data(snagBelow).toString(), QStringLiteral("accepted by Vera: seen at the recce"));
  click(list.takeBackButton());
  EXPECT_TRUE(plan().accepted.empty());
  EXPECT_EQ(steps(), 2);
}

TEST_F(ListOfSnags, NobodyAcceptsNothing) {
  click(0);
  click(list.acceptButton());
  QTest::keyClick(list.acceptedBy(), Qt::Key_Return);
  EXPECT_TRUE(plan().accepted.empty());
  EXPECT_TRUE(list.acceptedBy()->isVisible());
  QTest::keyClick(list.acceptedBy(), Qt::Key_Escape);
  EXPECT_FALSE(list.acceptedBy()->isVisible());
}

}  // namespace
}  // namespace wend::ui
