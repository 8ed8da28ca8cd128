/// One field on the screen: its label over a place to type or to choose, the unit inside.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>

#include "core/sheets/theme.h"
#include "ui/details/field.h"

namespace wend::ui {

/// A line to type a value in.
///
/// Enter and leaving the field commit, Escape goes back, Up and Down nudge, ten times as far with Shift.
class FieldEdit : public QLineEdit {
  Q_OBJECT

 public:
  explicit FieldEdit(QWidget* parent);

  void setTheme(sheets::Theme theme);
  void setUnit(const QString& unit);
  /// The plan's text; what was typed and not committed is dropped.
  void setPlanText(const QString& text);
  /// What was typed differs from the plan.
  bool typed() const { return text() != planText_; }
  /// An edit of this text was refused: it stays, marked with "!", until it is changed.
  void setRefused(bool refused);
  bool refused() const { return refused_; }

 Q_SIGNALS:
  void committed();
  void restored();
  void nudgedBy(double steps);

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  QString planText_, unit_;
  sheets::Theme theme_ = sheets::Theme::dark;
  bool refused_ = false;
};

/// A field with its label, 100 px wide a column.
class FieldBox : public QWidget {
  Q_OBJECT

 public:
  FieldBox(const Field& field, QWidget* parent);

  static constexpr int kWidth = 100, kHeight = 52, kGap = 8;
  void setTheme(sheets::Theme theme);
  /// Shows the plan's value; keeps what somebody is typing.
  void showValue(const Field& field, const plan::Plan& plan);
  QString text() const;
  QString label() const { return label_->text(); }
  QWidget* editor() const;
  /// Null for fields to choose in.
  FieldEdit* edit() const { return edit_; }

 Q_SIGNALS:
  void committed();
  void restored();
  void nudgedBy(double steps);

 private:
  void addEdit(const Field& field);
  void addChoice(const Field& field);

  QLabel* label_;
  FieldEdit* edit_ = nullptr;
  QComboBox* choice_ = nullptr;
};

}  // namespace wend::ui
