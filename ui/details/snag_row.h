/// How a snag stands in a list: lozenge, time and text over what would mend it or who accepted it.
#pragma once

#include <QStyledItemDelegate>

#include "core/sheets/theme.h"

namespace wend::ui {

enum SnagRole { snagKey = Qt::UserRole, snagFrom, snagBars, snagTime, snagText, snagBelow, snagAccepted };

class SnagRow : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  static constexpr int kHeight = 48;
  void setTheme(sheets::Theme theme) { theme_ = theme; }
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

 private:
  sheets::Theme theme_ = sheets::Theme::dark;
};

}  // namespace wend::ui
