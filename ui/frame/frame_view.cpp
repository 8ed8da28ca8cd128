#include "ui/frame/frame_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>

#include "core/base/text.h"
#include "core/sheets/frame_drawing.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/side_drawing.h"
#include "core/units/stop.h"
#include "ui/style/fonts.h"
#include "ui/style/palette.h"

namespace wend::ui {

using geometry::Tone;

namespace {

/// px of the line over the picture: left of its words, and between them.
constexpr int kMargin = 16, kBetween = 12;

}  // namespace

FrameView::FrameView(Document& document, AnswersBridge& bridge, QWidget* parent)
    : QWidget(parent), document_(document), bridge_(bridge) {
  setAttribute(Qt::WA_OpaquePaintEvent);
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(tr("Frame"));
  connect(&bridge, &AnswersBridge::changed, this, &FrameView::instantChanged);
  connect(&document, &Document::selectionChanged, this, qOverload<>(&QWidget::update));
  instantChanged();
}

void FrameView::setTheme(sheets::Theme theme) {
  painter_.setTheme(theme);
  update();
}

void FrameView::instantChanged() {
  setAccessibleDescription(bridge_.answers()
                               ? QString::fromStdString(sheets::frameInWords(*bridge_.answers(), bridge_.instant()))
                               : tr("Nothing computed yet"));
  update();
}

void FrameView::setFromSide(bool side) {
  if (fromSide_ == side) return;
  fromSide_ = side;
  update();
}

QRect FrameView::headerWord(bool side) const {
  const QFontMetrics metrics(fontOf(14, true));
  const int first = metrics.horizontalAdvance(tr("Frame")), second = metrics.horizontalAdvance(tr("Side"));
  return side ? QRect(kMargin + first + kBetween, 0, second, kHeader) : QRect(kMargin, 0, first, kHeader);
}

QString FrameView::lensLine() const {
  const auto& instant = bridge_.instant();
  if (!bridge_.answers() || !instant.lens) return {};
  if (fromSide_) return QString::fromStdString(sheets::sideWords(instant));
  const auto& gate = bridge_.answers()->take->plan().camera.gate;
  return QString::fromStdString(base::fixed(instant.lens->focal, 0) + " mm · " + units::stopText(instant.iris.set) +
                                " · " + base::fixed(gate[0], 1) + " × " + base::fixed(gate[1], 1) + " mm · " +
                                base::fixed(instant.lens->hfov, 1) + "° wide");
}

void FrameView::paintHeader(QPainter& painter) const {
  painter.setFont(fontOf(14, true));
  for (const bool side : {false, true}) {
    const QRect word = headerWord(side);
    painter.setPen(colourOf(side == fromSide_ ? Tone::ink : Tone::ink3, painter_.theme()));
    painter.drawText(word, Qt::AlignLeft | Qt::AlignVCenter, side ? tr("Side") : tr("Frame"));
    // Said by a line, too, where colours are one hue.
    if (side == fromSide_) painter.fillRect(QRect(word.left(), kHeader - 4, word.width(), 2), painter.pen().color());
  }
  const int from = headerWord(true).right() + kBetween;
  const QRect rest(from, 0, width() - from - 8, kHeader);
  painter.setPen(colourOf(Tone::ink2, painter_.theme()));
  painter.setFont(fontOf(12));
  painter.drawText(rest, Qt::AlignRight | Qt::AlignVCenter,
                   QFontMetrics(painter.font()).elidedText(lensLine(), Qt::ElideRight, rest.width()));
}

geometry::Drawing FrameView::picture() const {
  const double rest = height() - kHeader;
  if (fromSide_ && bridge_.instant().lens)
    return sheets::sideDrawing(*bridge_.answers(), bridge_.instant(), {double(width()), rest, false});
  auto drawing = sheets::frameDrawing(*bridge_.answers(), bridge_.instant(), width(), rest);
  addChosen(drawing);
  return drawing;
}

void FrameView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.fillRect(rect(), colourOf(Tone::panel, painter_.theme()));
  paintHeader(painter);
  const int rest = height() - kHeader;
  if (bridge_.answers() && width() > 32 && rest > 32) {
    painter.save();
    painter.translate(0, kHeader);
    painter_.paint(painter, picture());
    painter.restore();
  }
  if (!hasFocus()) return;
  painter.setPen(QPen(colourOf(Tone::ink, painter_.theme()), 2));
  painter.drawRect(rect().adjusted(1, 1, -1, -1));
}

void FrameView::addChosen(geometry::Drawing& drawing) const {
  const auto& instant = bridge_.instant();
  if (!instant.lens || document_.selection().kind != Kind::performer) return;
  const auto fit = sheets::frameFit(instant, drawing.width, drawing.height);
  for (const auto& at : instant.performers) {
    if (at.id != document_.selection().id || !at.present || at.inFrame == optics::Showing::out) continue;
    const double stands = (at.frameTop - at.frameBottom) * fit.halfHeight;
    sheets::drawChosen(drawing, fit.toPicture(at.place), std::clamp(stands / 9, 14.0, fit.halfHeight / 2));
  }
}

void FrameView::choose(std::size_t performer) {
  document_.select({Kind::performer, document_.shown()->performers[performer].id.text(), -1});
}

void FrameView::mousePressEvent(QMouseEvent* event) {
  for (const bool side : {false, true})
    if (event->button() == Qt::LeftButton && headerWord(side).contains(event->position().toPoint()))
      return setFromSide(side);
  const auto& instant = bridge_.instant();
  const double rest = height() - kHeader;
  if (!bridge_.answers() || !instant.lens || event->button() != Qt::LeftButton || rest <= 32) return;
  const QPointF at = event->position();
  if (fromSide_) {
    const auto view = sheets::sideView(*bridge_.answers()->take, instant);
    const auto who = sheets::performerBeside(view, {double(width()), rest, false}, {at.x(), at.y() - kHeader});
    return who ? choose(*who) : void();
  }
  const auto fit = sheets::frameFit(instant, width(), rest);
  if (const auto who = sheets::performerAt(instant, fit.toFrame({at.x(), at.y() - kHeader}))) choose(*who);
}

void FrameView::keyPressEvent(QKeyEvent* event) {
  const int way = event->key() == Qt::Key_Right ? 1 : event->key() == Qt::Key_Left ? -1 : 0;
  const auto& performers = bridge_.instant().performers;
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < performers.size(); ++i)
    if (performers[i].present && performers[i].inFrame != optics::Showing::out) order.push_back(i);
  if (way == 0 || order.empty()) return QWidget::keyPressEvent(event);
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return performers[a].place.x < performers[b].place.x; });
  const std::size_t chosen = document_.shown()->performers.indexOf(
      document_.selection().kind == Kind::performer ? document_.selection().id : std::string());
  const auto at = std::find(order.begin(), order.end(), chosen);
  if (at == order.end()) return choose(way > 0 ? order.front() : order.back());
  const auto next = std::clamp<std::ptrdiff_t>(at - order.begin() + way, 0, std::ptrdiff_t(order.size()) - 1);
  choose(order[std::size_t(next)]);
}

}  // namespace wend::ui
