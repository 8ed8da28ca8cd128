/// Rows of lists, trees and tables that are large enough to hit. A style sheet cannot do it: Qt measures rows before it
/// has applied the sheet and does not measure them again.
#pragma once

#include <QStyledItemDelegate>

#include "core/sheets/theme.h"

namespace wend::ui {

class TallRows : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;
  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    return QStyledItemDelegate::sizeHint(option, index).expandedTo(QSize(0, int(sheets::space::kTarget)));
  }
};

}  // namespace wend::ui
