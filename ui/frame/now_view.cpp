#include "ui/frame/now_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include "core/sheets/now_drawing.h"
#include "ui/style/palette.h"

namespace wend::ui {

using geometry::Tone;

NowView::NowView(Document& document, AnswersBridge& bridge, QWidget* parent)
    : QWidget(parent), document_(document), bridge_(bridge) {
  setAttribute(Qt::WA_OpaquePaintEvent);
  setFocusPolicy(Qt::StrongFocus);
  setFixedWidth(kWidth);
  setAccessibleName(tr("Now"));
  connect(&bridge, &AnswersBridge::changed, this, &NowView::instantChanged);
  connect(&document, &Document::selectionChanged, this, qOverload<>(&QWidget::update));
  instantChanged();
}

void NowView::setTheme(sheets::Theme theme) {
  painter_.setTheme(theme);
  update();
}

void NowView::instantChanged() {
  setAccessibleDescription(bridge_.answers()
                               ? QString::fromStdString(sheets::nowInWords(*bridge_.answers(), bridge_.instant()))
                               : tr("Nothing computed yet"));
  update();
}

void NowView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.fillRect(rect(), colourOf(Tone::panel, painter_.theme()));
  const Selection& chosen = document_.selection();
  if (bridge_.answers())
    painter_.paint(painter, sheets::nowDrawing(*bridge_.answers(), bridge_.instant(), bridge_.stale(), width(),
                                               height(), chosen.kind == Kind::crew ? chosen.id : std::string()));
  if (!hasFocus()) return;
  painter.setPen(QPen(colourOf(Tone::ink, painter_.theme()), 2));
  painter.drawRect(rect().adjusted(1, 1, -1, -1));
}

const snags::Snag* NowView::shownSnag() const {
  if (!bridge_.answers() || !bridge_.answers()->snags) return nullptr;
  return sheets::worstSnag(*bridge_.answers()->snags, bridge_.instant().time);
}

void NowView::goToSnag() {
  const snags::Snag* const shown = shownSnag();
  if (!shown) return;
  const snags::Snag snag = *shown;  // moving the playhead makes new answers
  document_.setPlayhead(snag.from);
  document_.select({Kind::snag, snag.key, -1});
}

void NowView::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && event->position().y() >= sheets::snagCardTop(height())) goToSnag();
}

void NowView::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return goToSnag();
  QWidget::keyPressEvent(event);
}

}  // namespace wend::ui
