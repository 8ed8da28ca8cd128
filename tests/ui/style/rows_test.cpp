#include "ui/style/rows.h"

#include <gtest/gtest.h>

#include <QListWidget>
#include <QtTest/QTest>

#include "ui/style/palette.h"

namespace wend::ui {
namespace {

TEST(TallRows, AreTallFromTheFirstPaintingOn) {
  QListWidget list;
  list.setStyleSheet(styleSheetOf(sheets::Theme::dark));
  list.setItemDelegate(new TallRows(&list));
  list.addItems({QStringLiteral("one"), QStringLiteral("two")});
  list.show();
  ASSERT_TRUE(QTest::qWaitForWindowExposed(&list));
  for (int row = 0; row < 2; ++row) EXPECT_GE(list.visualItemRect(list.item(row)).height(), 32);
  EXPECT_EQ(list.visualItemRect(list.item(1)).top(), list.visualItemRect(list.item(0)).bottom() + 1);
}

}  // namespace
}  // namespace wend::ui
