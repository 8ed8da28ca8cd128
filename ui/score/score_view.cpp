#include "ui/score/score_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollArea>
#include <algorithm>
#include <cmath>

#include "core/answers/routes.h"
#include "core/sheets/stave.h"
#include "core/sheets/stave_room.h"
#include "core/units/length.h"
#include "ui/score/handle_edits.h"
#include "ui/style/fonts.h"
#include "ui/style/icons.h"
#include "ui/style/palette.h"

namespace wend::ui {

using geometry::Tone;

namespace {

constexpr double kReachPx = 8, kDragStartsPx = 3;
constexpr double kSnapSeconds = 0.1;
/// What handles of things that can be nudged begin with.
constexpr const char* kHandles[] = {"beat/", "focus/", "pull/", "zoom/", "iris/", "nd/"};

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
  view_.opened.clear();
  if (!view_.folded.empty()) {
    view_.opened = sheets::staveNames();
    std::erase_if(view_.opened, [this](const auto& name) {
      return std::find(view_.folded.begin(), view_.folded.end(), name) != view_.folded.end();
    });
  }
  planChanged();
}

void ScoreView::toggleStave(const std::string& name) {
  const auto boxes = staves();
  const bool open =
      std::any_of(boxes.begin(), boxes.end(), [&](const auto& box) { return box.name == name && !box.folded; });
  std::erase(view_.folded, name);
  std::erase(view_.opened, name);
  (open ? view_.folded : view_.opened).push_back(name);
  planChanged();
}

std::vector<sheets::StaveBox> ScoreView::staves() const {
  if (!bridge_.answers()) return {};
  return sheets::stavesOf(bridge_.answers()->take->plan(), view_);
}

void ScoreView::setSpot(std::optional<snags::SightOf> spot) {
  spot_ = std::move(spot);
  view_.spotLane = spot_.has_value();
  planChanged();
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

/// What the scroll area around it shows of it.
void ScoreView::shownChanged() {
  const QWidget* port = parentWidget();
  const bool scrolled = port && qobject_cast<const QAbstractScrollArea*>(port->parentWidget());
  const double from = scrolled ? -y() : 0, height = scrolled ? port->height() : 0;
  if (from == view_.shownFrom && height == view_.shownHeight) return;
  const bool taller = height != view_.shownHeight;
  view_.shownFrom = from;
  view_.shownHeight = height;
  taller ? planChanged() : redraw();
}

void ScoreView::moveEvent(QMoveEvent*) {
  shownChanged();
}

bool ScoreView::eventFilter(QObject* watched, QEvent* event) {
  if (watched == parentWidget() && event->type() == QEvent::Resize) shownChanged();
  return QWidget::eventFilter(watched, event);
}

void ScoreView::redraw() {
  current_ = false;
  update();
}

void ScoreView::resizeEvent(QResizeEvent*) {
  view_.width = width();
  view_.height = height();
  shownChanged();
  redraw();
}

void ScoreView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), colourOf(Tone::page, painter_.theme()));
  if (!bridge_.answers()) return;
  view_.chosenKey = chosenKey();
  view_.chosenCrew = document_.selection().kind == Kind::crew ? document_.selection().id : std::string();
  view_.searching = answers::routesSearched(*bridge_.answers());
  if (!current_) {
    const double ratio = devicePixelRatioF();
    drawn_ = QPixmap(size() * ratio);
    drawn_.setDevicePixelRatio(ratio);
    drawn_.fill(colourOf(Tone::page, painter_.theme()));
    QPainter onto(&drawn_);
    geometry::Drawing drawing = sheets::scoreDrawing(*bridge_.answers(), view_, bridge_.stale());
    if (spot_)
      for (const auto& box : staves())
        if (box.name == "crew") sheets::drawSpotLane(drawing, view_, box.top, *spot_);
    painter_.paint(onto, drawing);
    paintIcons(onto);
    current_ = true;
  }
  painter.drawPixmap(0, 0, drawn_);
  if (span_) painter_.paint(painter, sheets::spanDrawing(bridge_.answers()->take->plan(), view_, *span_));
  painter_.paint(painter, sheets::playheadDrawing(bridge_.answers()->take->plan(), view_, bridge_.instant().time));
  paintTag(painter);
  if (!hasFocus()) return;
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colourOf(Tone::ink2, painter_.theme()), 2));
  painter.drawRect(rect().adjusted(1, 1, -1, -1));
}

/// The picture of each department beside its name.
void ScoreView::paintIcons(QPainter& painter) {
  constexpr std::pair<const char*, const char*> kIcons[] = {
      {"beats", "beat"},        {"in frame", "performer"}, {"sharp", "focus"},
      {"zoom", "zoom"},         {"iris, faces", "iris"},   {"crew", "crew"},
      {"pan, speed", "camera"}, {"doors, lights", "door"}, {"snags", "snag"}};
  const auto boxes = staves();
  for (const auto& box : boxes)
    for (const auto& [stave, icon] : kIcons) {
      const geometry::Span free = sheets::uncovered(boxes, box);
      if (box.name != stave || free.length() < std::min(box.height, 18.0) || free.from > box.top) continue;
      const int size = box.folded ? 14 : 18;
      const int top =
          int(box.top) + (box.folded ? 1 : std::max(1, std::min(int(box.height) - size, 9 + 8 - size / 2) - 4));
      iconOf(QString::fromLatin1(icon), painter_.theme()).paint(&painter, QRect(8, top, size, size));
    }
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
    // A flag is wide; of a key both ends are squares.
    const bool beat = handle.key.starts_with("beat/");
    const double away = beat ? std::max(std::abs(px.x() - handle.x - 9) - 8, std::abs(px.y() - handle.y) - 6)
                             : std::hypot(px.x() - handle.x, px.y() - handle.y);
    if (away > nearest) continue;
    nearest = away;
    best = handle;
  }
  return best;
}

std::optional<sheets::StaveBox> ScoreView::staveAt(double y) const {
  const auto boxes = staves();
  for (const auto& box : boxes) {
    const geometry::Span free = sheets::uncovered(boxes, box);
    if (y >= free.from && y < free.until) return box;
  }
  return std::nullopt;
}

bool ScoreView::onRuler(QPointF px) const {
  const auto box = staveAt(px.y());
  return box && box->name == "clock";
}

/// A click on a stave's name folds it, or opens it again. The ruler and the beats are what everything is read against.
bool ScoreView::foldedByName(QPointF px) {
  if (px.x() >= view_.labels - kReachPx) return false;
  const auto box = staveAt(px.y());
  if (!box || box->name == "clock" || box->name == "beats") return false;
  toggleStave(box->name);
  return true;
}

double ScoreView::snappedTime(double px, Qt::KeyboardModifiers keys) const {
  const double t = std::clamp(view_.time(px), 0.0, bridge_.answers()->take->length());
  if (keys.testFlag(Qt::ControlModifier)) return t;
  for (const auto& beat : document_.shown()->beats)
    if (std::abs(view_.x(beat.time) - px) < kReachPx) return beat.time;
  return std::round(t / kSnapSeconds) * kSnapSeconds;
}

/// Squares of a planned focus look like what can be dragged: a press on one says how it can be.
void ScoreView::tellPlanned(QPointF px) {
  const answers::Take& take = *bridge_.answers()->take;
  const auto box = staveAt(px.y());
  if (!take.plan().focus.pulls.empty() || !box || box->folded || box->name != "sharp") return;
  const auto scale = sheets::focusStaveScale(take, *box);
  for (const auto& move : take.lens().focus().moves)
    for (const auto& [t, barrel] : {std::pair(move.from, move.valueBefore), std::pair(move.until, move.valueAfter)}) {
      const double y = scale.y(sheets::focusMeasure(take.lens().focusScale().valueAt(barrel)));
      if (std::hypot(px.x() - view_.x(t), px.y() - y) > kReachPx) continue;
      return Q_EMIT told(tr("Wend plans this pull. To drag it choose a span on the ruler, then Keep as hand keys"));
    }
}

/// The window goes where the snag begins.
bool ScoreView::choseSnag(QPointF px) {
  const snags::Snag* snag = sheets::snagAt(*bridge_.answers(), view_, {px.x(), px.y()});
  if (!snag) return false;
  Q_EMIT snagChosen(QString::fromStdString(snag->key));
  return true;
}

/// Whoever's lane it is: the mark they stand on or walk towards, or they themselves where nobody has drawn their way.
void ScoreView::chooseCrew(QPointF px) {
  const auto at = sheets::crewAt(*bridge_.answers(), view_, {px.x(), px.y()});
  if (!at) return;
  const std::string& id = bridge_.answers()->take->plan().crew[at->crew].id.text();
  document_.select({Kind::crew, id, at->mark ? static_cast<int>(*at->mark) : -1});
}

void ScoreView::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || !bridge_.answers()) return;
  if (doing_ == Doing::carryingHandle) return finishDrag();
  const QPointF at = event->position();
  pressedAt_ = lastAt_ = at;
  if (foldedByName(at)) return;
  if (event->modifiers().testFlag(Qt::ShiftModifier) && onRuler(at)) {
    const double t = snappedTime(at.x(), event->modifiers()), from = document_.playhead();
    return setSpan(geometry::Span{std::min(t, from), std::max(t, from)});
  }
  if (const auto handle = handleAt(at)) {
    drag_.emplace(*handle, at);
    document_.select(selectionOfHandle(handle->key));
    doing_ = Doing::pressedHandle;
    return;
  }
  if (choseSnag(at)) return;
  chooseCrew(at);
  tellPlanned(at);
  doing_ = onRuler(at) ? Doing::pressedRuler : Doing::scrubbing;
  document_.setPlayhead(view_.time(at.x()));
}

void ScoreView::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || !bridge_.answers()) return;
  const auto handle = handleAt(event->position());
  if (!handle) return mousePressEvent(event);
  drag_.emplace(*handle, event->position());
  document_.select(selectionOfHandle(handle->key));
  doing_ = Doing::carryingHandle;
  lastAt_ = event->position();
  tag_ = tr("picked up: click to let go, or type its number");
  update();
}

void ScoreView::mouseMoveEvent(QMouseEvent* event) {
  lastAt_ = event->position();
  const bool far = (lastAt_ - pressedAt_).manhattanLength() > kDragStartsPx;
  if (doing_ == Doing::scrubbing) return document_.setPlayhead(view_.time(lastAt_.x()));
  if (doing_ == Doing::pressedRuler && far) doing_ = Doing::spanning;
  if (doing_ == Doing::spanning) {
    const double a = snappedTime(pressedAt_.x(), event->modifiers()), b = snappedTime(lastAt_.x(), event->modifiers());
    return setSpan(geometry::Span{std::min(a, b), std::max(a, b)});
  }
  if (doing_ == Doing::pressedHandle && far) doing_ = Doing::draggingHandle;
  if (!dragging()) return;
  drag_->pointTo(lastAt_, event->modifiers(), view_, *document_.plan());
  showDrag();
}

/// Always from the plan, never from the last preview: what the pointer shows is one edit.
void ScoreView::showDrag() {
  const auto moved = movedHandle(*document_.plan(), drag_->handle().key, drag_->move());
  tag_ = drag_->words(*document_.plan());
  if (moved)
    document_.setPreview(std::make_shared<const plan::Plan>(*moved));
  else
    tag_ += QStringLiteral("  ") + QString::fromStdString(moved.problems().front().remedy);
  update();
}

void ScoreView::finishDrag() {
  if (dragging() && drag_)
    document_.commitPreview(drag_->handle().key.starts_with("beat/")   ? tr("Move beat")
                            : drag_->handle().key.starts_with("pull/") ? tr("Move pull")
                                                                       : tr("Move key"));
  dropDrag();
}

void ScoreView::dropDrag() {
  doing_ = Doing::nothing;
  drag_.reset();
  tag_.clear();
  update();
}

void ScoreView::mouseReleaseEvent(QMouseEvent*) {
  if (doing_ == Doing::carryingHandle) return;
  if (doing_ == Doing::pressedRuler && span_) setSpan(std::nullopt);
  finishDrag();
}

void ScoreView::setSpan(std::optional<geometry::Span> span) {
  if (span && bridge_.answers()) {
    const double length = bridge_.answers()->take->length();
    span->from = std::clamp(span->from, 0.0, length);
    span->until = std::clamp(span->until, span->from, length);
    if (span->length() <= 0) span.reset();
  }
  if (span == span_) return;
  span_ = span;
  update();
  Q_EMIT spanChanged();
}

void ScoreView::wheelEvent(QWheelEvent* event) {
  if (!event->modifiers().testFlag(Qt::ControlModifier) || !bridge_.answers()) return QWidget::wheelEvent(event);
  const double length = bridge_.answers()->take->length();
  const double at = view_.time(event->position().x()), factor = std::pow(1.0015, -event->angleDelta().y());
  const double span = std::clamp((view_.until - view_.from) * factor, std::min(4.0, length), length);
  const double share = (at - view_.from) / (view_.until - view_.from);
  view_.from = std::clamp(at - share * span, 0.0, length - span);
  view_.until = view_.from + span;
  redraw();
  event->accept();
}

void ScoreView::nudge(double seconds, double steps) {
  const std::string key = chosenKey();
  HandleMove move{{}, {}, true};
  for (const auto& handle : sheets::scoreHandles(*bridge_.answers(), view_)) {
    if (handle.key != key) continue;
    if (seconds != 0) move.to = handle.time + seconds;
    // A third of a stop, a twelfth of an octave of focal length, a tape's step towards the lens.
    if (steps == 0) continue;
    const double metres = 1 / std::max(handle.value, 1e-3);
    move.measure = key.starts_with("iris/") || key.starts_with("nd/") ? handle.value + steps / 3
                   : key.starts_with("zoom/")
                       ? handle.value + steps / 12
                       : sheets::focusMeasure(metres - steps * units::tapeStep(metres, document_.plan()->display));
  }
  const auto moved = movedHandle(*document_.plan(), key, move);
  if (!moved) return Q_EMIT refused(QString::fromStdString(moved.problems().front().remedy));
  document_.propose(std::make_shared<const plan::Plan>(*moved),
                    key.starts_with("beat/") ? tr("Nudge beat") : tr("Nudge key"),
                    QStringLiteral("nudge/") + QString::fromStdString(key));
}

/// Letters and digits are the drag's while there is one.
bool ScoreView::event(QEvent* event) {
  if (event->type() == QEvent::ParentChange && parentWidget()) {
    parentWidget()->installEventFilter(this);
    shownChanged();
  }
  if (event->type() == QEvent::ShortcutOverride && dragging()) {
    event->accept();
    return true;
  }
  return QWidget::event(event);
}

bool ScoreView::focusNextPrevChild(bool next) {
  return !dragging() && QWidget::focusNextPrevChild(next);
}

void ScoreView::escape() {
  const bool had = document_.hasPreview() || dragging();
  dropDrag();
  if (document_.hasPreview()) return document_.dropPreview();
  if (had) return;
  if (span_) return setSpan(std::nullopt);
  document_.select({});
}

bool ScoreView::arrow(int key, bool shift) {
  const std::string chosen = chosenKey();
  const bool handle = std::any_of(std::begin(kHandles), std::end(kHandles),
                                  [&](const char* begin) { return chosen.starts_with(begin); });
  if (key == Qt::Key_Up || key == Qt::Key_Down) {
    if (handle) nudge(0, key == Qt::Key_Up ? 1 : -1);
    return handle;
  }
  const double sign = key == Qt::Key_Left ? -1 : 1, frame = 1 / bridge_.answers()->take->rate();
  if (handle)
    nudge(sign * (shift ? 1.0 : 0.1), 0);
  else
    document_.setPlayhead(document_.playhead() + sign * (shift ? 1.0 : frame));
  return true;
}

void ScoreView::keyPressEvent(QKeyEvent* event) {
  if (!bridge_.answers()) return;
  const double t = document_.playhead(), length = bridge_.answers()->take->length();
  if (dragging() && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)) return finishDrag();
  if (dragging() && drag_->type(*event, *document_.plan())) return showDrag();
  switch (event->key()) {
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
      if (arrow(event->key(), event->modifiers().testFlag(Qt::ShiftModifier))) return;
      return QWidget::keyPressEvent(event);
    case Qt::Key_Home:
      return document_.setPlayhead(0);
    case Qt::Key_End:
      return document_.setPlayhead(length);
    case Qt::Key_BracketLeft:
      return setSpan(geometry::Span{t, span_ && span_->until > t ? span_->until : length});
    case Qt::Key_BracketRight:
      return setSpan(geometry::Span{span_ && span_->from < t ? span_->from : 0, t});
    case Qt::Key_Escape:
      return escape();
    default:
      QWidget::keyPressEvent(event);
  }
}

}  // namespace wend::ui
