/// A hand on the details panel: fields and boxes found by their labels, typed into and chosen from as a person does.
#pragma once

#include <gtest/gtest.h>

#include <QComboBox>
#include <QTest>

#include "ui/details/details_panel.h"
#include "ui/details/fields.h"

namespace wend::ui {

class PanelHand {
 public:
  explicit PanelHand(DetailsPanel& panel) : panel_(panel) {}

  FieldEdit* field(const char* label) {
    auto* edit = qobject_cast<FieldEdit*>(panel_.editorOf(QString::fromUtf8(label)));
    EXPECT_NE(edit, nullptr) << label;
    return edit;
  }
  /// Click, select all, keys; no text: all is deleted.
  void type(const char* label, const char* text) {
    FieldEdit* const edit = field(label);
    ASSERT_NE(edit, nullptr);
    edit->setFocus();
    QTest::keyClick(edit, Qt::Key_A, Qt::ControlModifier);
    if (*text)
      QTest::keyClicks(edit, QString::fromUtf8(text));
    else
      QTest::keyClick(edit, Qt::Key_Delete);
  }
  QComboBox* box(const char* label) { return qobject_cast<QComboBox*>(panel_.editorOf(QString::fromUtf8(label))); }
  /// By the arrow keys. Every choice on the way is an edit, which may bring other fields and a new box.
  void choose(const char* label, const char* choice) {
    ASSERT_NE(box(label), nullptr) << label;
    const int row = box(label)->findText(QString::fromUtf8(choice));
    ASSERT_GE(row, 0) << choice;
    for (int key = 0; key < 20 && box(label)->currentIndex() != row; ++key) {
      box(label)->setFocus();
      QTest::keyClick(box(label), box(label)->currentIndex() < row ? Qt::Key_Down : Qt::Key_Up);
    }
    ASSERT_EQ(box(label)->currentIndex(), row) << label;
  }

 private:
  DetailsPanel& panel_;
};

}  // namespace wend::ui
