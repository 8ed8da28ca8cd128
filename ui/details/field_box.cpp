#include "ui/details/field_box.h"

#include <QKeyEvent>
#include <QPainter>
#include <QStyleOptionFrame>

#include "ui/style/fonts.h"
#include "ui/style/palette.h"

namespace wend::ui {
namespace {

using geometry::Tone;

constexpr int kLabelHeight = 18, kEditHeight = 28, kInset = 8;
/// The block with "!" of a refused field, px.
constexpr int kMark = 14;

/// A wheel over a panel that scrolls must not change what it happens to pass over.
class ChoiceBox : public QComboBox {
 public:
  using QComboBox::QComboBox;

 protected:
  void wheelEvent(QWheelEvent* event) override { event->ignore(); }
};

}  // namespace

FieldEdit::FieldEdit(QWidget* parent) : QLineEdit(parent) {
  setFont(fontOf(14));
  connect(this, &QLineEdit::returnPressed, this, &FieldEdit::committed);
  connect(this, &QLineEdit::textEdited, this, [this] { setRefused(false); });
}

void FieldEdit::setTheme(sheets::Theme theme) {
  theme_ = theme;
  update();
}

void FieldEdit::setUnit(const QString& unit) {
  unit_ = unit;
  const int width = unit.isEmpty() ? 0 : QFontMetrics(fontOf(12)).horizontalAdvance(unit) + 4;
  setTextMargins(textMargins().left(), 0, width, 0);
  update();
}

void FieldEdit::setPlanText(const QString& text) {
  planText_ = text;
  if (QLineEdit::text() != text) {
    setText(text);
    setCursorPosition(0);
  }
  setRefused(false);
}

void FieldEdit::setRefused(bool refused) {
  refused_ = refused;
  setTextMargins(refused ? kMark : 0, 0, textMargins().right(), 0);
  update();
}

bool FieldEdit::event(QEvent* event) {
  // Nothing typed here: undo is the plan's, not the field's.
  const bool override = event->type() == QEvent::ShortcutOverride && !typed();
  if (override && static_cast<QKeyEvent*>(event)->matches(QKeySequence::Undo)) {
    event->ignore();
    return false;
  }
  return QLineEdit::event(event);
}

void FieldEdit::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  if (key == Qt::Key_Up || key == Qt::Key_Down) {
    if (!isReadOnly())
      Q_EMIT nudgedBy((key == Qt::Key_Up ? 1 : -1) * (event->modifiers() & Qt::ShiftModifier ? 10 : 1));
    return event->accept();
  }
  if (key == Qt::Key_Escape && (typed() || refused_)) {
    setPlanText(planText_);
    selectAll();
    Q_EMIT restored();
    return event->accept();
  }
  QLineEdit::keyPressEvent(event);
}

void FieldEdit::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  if (typed() && !refused_) Q_EMIT committed();
}

void FieldEdit::paintEvent(QPaintEvent* event) {
  QLineEdit::paintEvent(event);
  QPainter painter(this);
  painter.setFont(fontOf(12));
  painter.setPen(colourOf(Tone::ink2, theme_));
  painter.drawText(rect().adjusted(0, 0, -kInset, 0), Qt::AlignRight | Qt::AlignVCenter, unit_);
  if (!refused_) return;
  // Focus is a ring; a refusal is a mark of its own, with or without that ring.
  const QRect mark(2, 2, kMark, height() - 4);
  painter.fillRect(mark, colourOf(Tone::ink, theme_));
  painter.setFont(fontOf(14, true));
  painter.setPen(colourOf(Tone::page, theme_));
  painter.drawText(mark, Qt::AlignCenter, QStringLiteral("!"));
  if (hasFocus()) return;
  painter.setPen(QPen(colourOf(Tone::ink, theme_), 1, Qt::DashLine));
  painter.drawRect(rect().adjusted(1, 1, -2, -2));
}

FieldBox::FieldBox(const Field& field, QWidget* parent)
    : QWidget(parent), label_(new QLabel(QString::fromStdString(field.label), this)) {
  const int width = field.columns * (kWidth + kGap) - kGap;
  setFixedSize(width, kHeight);
  label_->setFont(fontOf(12));
  label_->setGeometry(0, 0, width, kLabelHeight);
  if (field.quantity == Quantity::choice && field.editable())
    addChoice(field);
  else
    addEdit(field);
  editor()->setGeometry(0, kLabelHeight, width, kEditHeight);
  editor()->setAccessibleName(label());
  label_->setBuddy(editor());
}

void FieldBox::addEdit(const Field& field) {
  edit_ = new FieldEdit(this);
  edit_->setReadOnly(!field.editable());
  if (!field.editable()) {
    edit_->setFocusPolicy(Qt::NoFocus);
    edit_->setStyleSheet(QStringLiteral("QLineEdit { background: transparent; border-style: dotted; }"));
  }
  edit_->setPlaceholderText(QString::fromStdString(field.whenEmpty));
  connect(edit_, &FieldEdit::committed, this, &FieldBox::committed);
  connect(edit_, &FieldEdit::restored, this, &FieldBox::restored);
  connect(edit_, &FieldEdit::nudgedBy, this, &FieldBox::nudgedBy);
}

void FieldBox::addChoice(const Field&) {
  choice_ = new ChoiceBox(this);
  choice_->setFont(fontOf(14));
  choice_->setFocusPolicy(Qt::StrongFocus);
  connect(choice_, &QComboBox::activated, this, &FieldBox::committed);
}

QWidget* FieldBox::editor() const {
  return edit_ ? static_cast<QWidget*>(edit_) : choice_;
}

void FieldBox::setTheme(sheets::Theme theme) {
  QPalette palette = label_->palette();
  palette.setColor(QPalette::WindowText, colourOf(Tone::ink2, theme));
  label_->setPalette(palette);
  label_->setStyleSheet(QStringLiteral("color: %1").arg(colourOf(Tone::ink2, theme).name()));
  if (edit_) edit_->setTheme(theme);
}

void FieldBox::showValue(const Field& field, const plan::Plan& plan) {
  const QString text = QString::fromStdString(textOf(field, plan));
  if (choice_) {
    QStringList choices;
    for (const auto& choice : field.choices) choices.append(QString::fromStdString(choice));
    choice_->clear();
    choice_->addItems(choices);
    choice_->setCurrentText(text);
    return;
  }
  const bool typing = (edit_->hasFocus() || edit_->refused()) && edit_->typed();
  edit_->setUnit(QString::fromStdString(unitOf(field, plan)));
  if (!typing) edit_->setPlanText(text);
  editor()->setAccessibleDescription(QString::fromStdString(field.unit));
  edit_->setToolTip(edit_->fontMetrics().horizontalAdvance(text) > width() - 24 ? text : QString());
}

QString FieldBox::text() const {
  return edit_ ? edit_->text() : choice_->currentText();
}

}  // namespace wend::ui
