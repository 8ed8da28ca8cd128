#include "ui/details/snag_row.h"

#include <QPainter>

#include "core/sheets/glyphs.h"
#include "ui/canvas/drawing_painter.h"
#include "ui/style/fonts.h"
#include "ui/style/palette.h"

namespace wend::ui {

using geometry::Tone;

QSize SnagRow::sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const {
  return {240, kHeight};
}

void SnagRow::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const bool current = option.state & QStyle::State_Selected;
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->fillRect(option.rect, colourOf(current ? Tone::raise : Tone::field, theme_));
  if (current) {
    painter->setPen(QPen(colourOf(Tone::ink, theme_), 2));
    painter->drawRect(option.rect.adjusted(1, 1, -1, -1));
  }
  geometry::Drawing sign{32, kHeight, {}, {}};
  sheets::drawLozenge(sign, {20, kHeight / 2.0}, 11, snags::Severity(index.data(snagBars).toInt()));
  painter->translate(option.rect.topLeft());
  painter->setOpacity(index.data(snagAccepted).toBool() ? 0.5 : 1);
  DrawingPainter(theme_).paint(*painter, sign);
  painter->setOpacity(1);
  const int width = option.rect.width() - 48;
  const auto line = [&](int baseline, int left, const QString& text, bool bold, Tone tone) {
    painter->setFont(fontOf(12, bold));
    painter->setPen(colourOf(tone, theme_));
    const QFontMetrics metrics(painter->font());
    painter->drawText(40 + left, baseline, metrics.elidedText(text, Qt::ElideRight, width - left));
    return metrics.horizontalAdvance(text);
  };
  const int time = line(20, 0, index.data(snagTime).toString(), true, Tone::ink);
  line(20, time + 8, index.data(snagText).toString(), false, Tone::ink);
  line(38, 0, index.data(snagBelow).toString(), false, Tone::ink2);
  painter->restore();
}

}  // namespace wend::ui
