#include "ui/score/score_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/units/clock_time.h"
#include "core/units/stop.h"
#include "ui/score/handle_edits.h"
#include "ui/style/fonts.h"
#include "ui/style/palette.h"

namespace wend::ui {

using geometry::Tone;

namespace {

constexpr double kReachPx = 8, kDragStartsPx = 3;
constexpr double kSnapSeconds = 0.1;

}  // namespace

ScoreView::ScoreView(Document& document, AnswersBridge& bridge, QWidget* parent)
    : QWidget(parent), document_(document), bridge_(bridge), painter_(sheets::Theme::dark) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAccessibleName(tr("Score: the take along the clock"));
  setAttribute(Qt::WA_OpaquePaintEvent);
  connect(&bridge, &AnswersBridge::takeChanged, this, &ScoreView::planChanged);
  connect(&bridge, &AnswersBridge::changed, this, qOverload<>(&QWidget::update));
  connect(&document, &Document::selectionChanged, this, &ScoreView::redraw);
}

void ScoreView::setTheme(sheets::Theme theme) {
  painter_.setTheme(theme);
  redraw();
}

void ScoreView::setFolded(std::vector<std::string> names) {
  view_.folded = std::move(names);
  planChanged();
}

void ScoreView::setSpot(std::optional<snags::SightOf> spot) {
  spot_ = std::move(spot);
  redraw();
}

QSize ScoreView::sizeHint() const {
  sheets::ScoreView least = view_;
  least.height = 0;
  const double height = bridge_.answers() ? sheets::scoreHeight(bridge_.answers()->take->plan(), least) : 400;
  return {800, static_cast<int>(height)};
}

void ScoreView::planChanged() {
  if (!bridge_.answers()) return;
  const double length = bridge_.answers()->take->length();
  if (view_.until > length || view_.from <= 0) view_.until = length, view_.from = std::min(view_.from, length / 2);
  setMinimumHeight(sizeHint().height());
  redraw();
}

void ScoreView::redraw() {
  current_ = false;
  update();
}

void ScoreView::resizeEvent(QResizeEvent*) {
  view_.width = width();
  view_.height = height();
  redraw();
}

void ScoreView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), colourOf(Tone::page, painter_.theme()));
  if (!bridge_.answers()) return;
  view_.chosenKey = chosenKey();
  if (!current_) {
    const double ratio = devicePixelRatioF();
    drawn_ = QPixmap(size() * ratio);
    drawn_.setDevicePixelRatio(ratio);
    drawn_.fill(colourOf(Tone::page, painter_.theme()));
    QPainter onto(&drawn_);
    geometry::Drawing drawing = sheets::scoreDrawing(*bridge_.answers(), view_, bridge_.stale());
    if (spot_)
      for (const auto& box : sheets::stavesOf(bridge_.answers()->take->plan(), view_))
        if (box.name == "crew") sheets::drawSpotLane(drawing, view_, box.top - 16, *spot_);
    painter_.paint(onto, drawing);
    current_ = true;
  }
  painter.drawPixmap(0, 0, drawn_);
  painter_.paint(painter, sheets::playheadDrawing(bridge_.answers()->take->plan(), view_, bridge_.instant().time));
  paintTag(painter);
  if (!hasFocus()) return;
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colourOf(Tone::ink2, painter_.theme()), 2));
  painter.drawRect(rect().adjusted(1, 1, -1, -1));
}

void ScoreView::paintTag(QPainter& painter) {
  if (tag_.isEmpty()) return;
  painter.setFont(fontOf(14, true));
  QRectF box(lastAt_.x() + 14, lastAt_.y() - 30, painter.fontMetrics().horizontalAdvance(tag_) + 16, 22);
  box.moveRight(std::min(box.right(), width() - 4.0));
  box.moveTop(std::max(box.top(), 2.0));
  painter.setPen(QPen(colourOf(Tone::line2, painter_.theme()), 1));
  painter.setBrush(colourOf(Tone::panel, painter_.theme()));
  painter.drawRoundedRect(box, 4, 4);
  painter.setPen(colourOf(Tone::ink, painter_.theme()));
  painter.drawText(box, Qt::AlignCenter, tag_);
}

std::string ScoreView::chosenKey() const {
  return handleOf(document_.selection());
}

std::optional<sheets::ScoreHandle> ScoreView::handleAt(QPointF px) const {
  std::optional<sheets::ScoreHandle> best;
  double nearest = kReachPx;
  for (const auto& handle : sheets::scoreHandles(*bridge_.answers(), view_)) {
    const bool beat = handle.key.starts_with("beat/");
    const double away = beat ? std::max(std::abs(px.x() - handle.x - 9) - 8, std::abs(px.y() - handle.y) - 6)
                             : std::hypot(px.x() - handle.x, px.y() - handle.y);
    if (away > nearest) continue;
    nearest = away;
    best = handle;
  }
  return best;
}

void ScoreView::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || !bridge_.answers()) return;
  pressedAt_ = lastAt_ = event->position();
  dragged_ = handleAt(event->position());
  if (dragged_) {
    document_.select(selectionOfHandle(dragged_->key));
    doing_ = Doing::pressedHandle;
    return;
  }
  doing_ = Doing::scrubbing;
  document_.setPlayhead(view_.time(event->position().x()));
}

void ScoreView::mouseMoveEvent(QMouseEvent* event) {
  lastAt_ = event->position();
  if (doing_ == Doing::scrubbing) return document_.setPlayhead(view_.time(event->position().x()));
  if (doing_ == Doing::pressedHandle && (event->position() - pressedAt_).manhattanLength() > kDragStartsPx)
    doing_ = Doing::draggingHandle;
  if (doing_ == Doing::draggingHandle) dragTo(event->position());
}

void ScoreView::dragTo(QPointF px) {
  double by = (px.x() - pressedAt_.x()) / view_.pxPerSecond();
  by = std::round(by / kSnapSeconds) * kSnapSeconds;
  std::optional<double> measure;
  const double up = pressedAt_.y() - px.y();
  if (dragged_->perPx > 0 && std::abs(up) > kDragStartsPx) measure = dragged_->value + up * dragged_->perPx;
  const auto moved = movedHandle(*document_.plan(), dragged_->key, by, measure);
  if (!moved) {
    tag_ = QString::fromStdString(moved.problems().front().remedy);
    return update();
  }
  document_.setPreview(std::make_shared<const plan::Plan>(*moved));
  std::string words = units::secondsText(dragged_->time + by) + " s";
  if (measure && dragged_->key.starts_with("zoom/")) words += "  " + base::fixed(std::exp2(*measure), 1) + " mm";
  if (measure && dragged_->key.starts_with("iris/"))
    words += "  " + units::stopText(std::clamp(std::exp2(*measure / 2), units::kWidestStop, units::kClosedStop));
  tag_ = QString::fromStdString(words);
  update();
}

void ScoreView::mouseReleaseEvent(QMouseEvent*) {
  if (doing_ == Doing::draggingHandle)
    document_.commitPreview(dragged_->key.starts_with("beat/") ? tr("Move beat") : tr("Move key"));
  doing_ = Doing::nothing;
  tag_.clear();
  update();
}

void ScoreView::wheelEvent(QWheelEvent* event) {
  if (!event->modifiers().testFlag(Qt::ControlModifier) || !bridge_.answers()) return QWidget::wheelEvent(event);
  const double length = bridge_.answers()->take->length();
  const double at = view_.time(event->position().x()), factor = std::pow(1.0015, -event->angleDelta().y());
  const double span = std::clamp((view_.until - view_.from) * factor, 4.0, length);
  const double share = (at - view_.from) / (view_.until - view_.from);
  view_.from = std::clamp(at - share * span, 0.0, length - span);
  view_.until = view_.from + span;
  redraw();
  event->accept();
}

void ScoreView::nudge(double seconds, double steps) {
  const std::string key = chosenKey();
  std::optional<double> measure;
  for (const auto& handle : sheets::scoreHandles(*bridge_.answers(), view_))
    // A third of a stop, a twelfth of an octave of focal length.
    if (handle.key == key && steps != 0)
      measure = handle.value + steps * (key.starts_with("iris/") ? 1.0 / 3 : 1.0 / 12);
  const auto moved = movedHandle(*document_.plan(), key, seconds, measure);
  if (!moved) return Q_EMIT told(QString::fromStdString(moved.problems().front().remedy));
  document_.propose(std::make_shared<const plan::Plan>(*moved),
                    key.starts_with("beat/") ? tr("Nudge beat") : tr("Nudge key"),
                    QStringLiteral("nudge/") + QString::fromStdString(key));
}

void ScoreView::keyPressEvent(QKeyEvent* event) {
  if (!bridge_.answers()) return;
  const bool shift = event->modifiers().testFlag(Qt::ShiftModifier);
  const std::string key = chosenKey();
  const bool handle =
      key.starts_with("beat/") || key.starts_with("focus/") || key.starts_with("zoom/") || key.starts_with("iris/");
  const double frame = 1 / bridge_.answers()->take->rate();
  switch (event->key()) {
    case Qt::Key_Left:
    case Qt::Key_Right: {
      const double sign = event->key() == Qt::Key_Left ? -1 : 1;
      if (handle) return nudge(sign * (shift ? 1.0 : 0.1), 0);
      return document_.setPlayhead(document_.playhead() + sign * (shift ? 1.0 : frame));
    }
    case Qt::Key_Up:
    case Qt::Key_Down:
      if (handle) return nudge(0, event->key() == Qt::Key_Up ? 1 : -1);
      return QWidget::keyPressEvent(event);
    case Qt::Key_Home:
      return document_.setPlayhead(0);
    case Qt::Key_End:
      return document_.setPlayhead(bridge_.answers()->take->length());
    case Qt::Key_Escape:
      doing_ = Doing::nothing;
      tag_.clear();
      document_.hasPreview() ? document_.dropPreview() : document_.select({});
      return;
    default:
      QWidget::keyPressEvent(event);
  }
}

}  // namespace wend::ui
