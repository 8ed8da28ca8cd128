#include "ui/shell/strip.h"

#include <QPainter>
#include <algorithm>

#include "ui/style/fonts.h"

namespace wend::ui {
namespace {

constexpr int kHeight = 26, kPad = 16, kGap = 24;

}  // namespace

CutLabel::CutLabel(QWidget* parent) : QLabel(parent) {
  setFont(fontOf(12));
  setTextFormat(Qt::PlainText);
}

QString CutLabel::shownText() const {
  return fontMetrics().elidedText(text(), Qt::ElideRight, width());
}

void CutLabel::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setFont(font());
  painter.setPen(palette().color(foregroundRole()));
  painter.drawText(rect(), Qt::AlignLeft | Qt::AlignVCenter, shownText());
}

Strip::Strip(const QString& resting, QWidget* parent)
    : QWidget(parent), resting_(resting), said_(new CutLabel(this)), change_(new CutLabel(this)) {
  setFixedHeight(kHeight);
  change_->hide();
  say(resting_);
}

void Strip::say(const QString& words) {
  refused_ = false;
  said_->setText(words);
  said_->setToolTip(words);
  shareOut();
}

void Strip::refuse(const QString& words) {
  say(words);
  refused_ = true;
}

void Strip::settle() {
  if (refused_) say(resting_);
}

void Strip::showChange(const QString& lines) {
  QString line = lines;
  change_->setText(line.replace(QLatin1Char('\n'), QStringLiteral("   ")));
  change_->setToolTip(lines);
  change_->setVisible(!lines.isEmpty());
  shareOut();
}

void Strip::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  shareOut();
}

void Strip::shareOut() {
  const int room = width() - 2 * kPad;
  if (change_->isHidden()) return said_->setGeometry(kPad, 0, room, height());
  const int change = std::min(change_->sizeHint().width(), std::max(room / 2, room - said_->sizeHint().width()) - kGap);
  said_->setGeometry(kPad, 0, room - change - kGap, height());
  change_->setGeometry(kPad + room - change, 0, change, height());
}

}  // namespace wend::ui
