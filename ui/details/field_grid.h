/// Fields in columns of 100 px on rows of 52 px: four where there is room.
#pragma once

#include <QWidget>
#include <vector>

#include "ui/details/field_box.h"

namespace wend::ui {

class FieldGrid : public QWidget {
  Q_OBJECT

 public:
  explicit FieldGrid(QWidget* parent = nullptr);

  static constexpr int kColumns = 4;

  /// Shows the fields: boxes stay while what they are called stays, so that the one being typed in keeps the keyboard.
  void showFields(const Fields& fields, const plan::Plan& plan);
  void setTheme(sheets::Theme theme);
  const std::vector<FieldBox*>& boxes() const { return boxes_; }

  bool hasHeightForWidth() const override { return true; }
  int heightForWidth(int width) const override;
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return {2 * FieldBox::kWidth + FieldBox::kGap, 0}; }

 Q_SIGNALS:
  void committed(int field);
  void restored(int field);
  void nudgedBy(int field, double steps);

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  bool fits(const Fields& fields) const;
  void rebuild(const Fields& fields);
  /// Calls put(box, column, row) for each box; returns the rows.
  template <class Put>
  int flow(int columns, Put put) const;
  void place();
  static int columnsIn(int width);

  std::vector<FieldBox*> boxes_;
  std::vector<Quantity> quantities_;
  std::vector<bool> editable_;
  sheets::Theme theme_ = sheets::Theme::dark;
};

}  // namespace wend::ui
