#include "ui/canvas/plan_canvas.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <cmath>

#include "core/answers/whole_take.h"
#include "core/base/text.h"
#include "core/plan/edits_marks.h"
#include "core/sheets/text_tables.h"
#include "core/units/length.h"
#include "ui/style/fonts.h"
#include "ui/style/palette.h"

namespace wend::ui {

using geometry::Point;
using geometry::Tone;
using geometry::Vec;

namespace {

constexpr double kSnapStep = 0.05;
constexpr double kDragStarts = 4;
/// The ground lags the playhead by at most so much while it plays.
constexpr double kGroundStep = 0.25;

Point pointOf(QPointF p) {
  return {p.x(), p.y()};
}

}  // namespace

PlanCanvas::PlanCanvas(Document& document, AnswersBridge& bridge, QWidget* parent)
    : QWidget(parent), document_(document), bridge_(bridge), painter_(sheets::Theme::dark) {
  setMouseTracking(true);
  setFocusPolicy(Qt::StrongFocus);
  setMinimumSize(320, 240);
  setAccessibleName(tr("Plan: the set from above"));
  setAttribute(Qt::WA_OpaquePaintEvent);
  connect(&bridge, &AnswersBridge::changed, this, &PlanCanvas::answersChanged);
  connect(&bridge, &AnswersBridge::takeChanged, this, &PlanCanvas::answersChanged);
  connect(&document, &Document::selectionChanged, this, [this] {
    ways_.current = false;
    update();
  });
}

void PlanCanvas::setTheme(sheets::Theme theme) {
  painter_.setTheme(theme);
  viewChanged();
}

void PlanCanvas::setGround(sheets::Ground ground) {
  picture_.ground = ground;
  ground_.current = false;
  update();
}

void PlanCanvas::setSpan(geometry::Span span) {
  picture_.span = span;
  ground_.current = false;
  update();
}

void PlanCanvas::setTaping(bool taping) {
  taping_ = taping;
  tapeFrom_.reset();
  tapeTo_.reset();
  setCursor(taping ? Qt::CrossCursor : Qt::ArrowCursor);
  if (taping) Q_EMIT told(tr("Tape: click the first point"));
  Q_EMIT tapingChanged(taping);
  update();
}

void PlanCanvas::showWholeTake() {
  if (!bridge_.answers()) return;
  view_ = sheets::wholeTake(*bridge_.answers()->take, width(), height());
  viewChosen_ = false;
  viewChanged();
}

void PlanCanvas::showPlace(Point place) {
  constexpr double kRoom = 60;
  const Point px = view_.toPicture(place);
  const double foot = height() - sheets::kLegendHeight - kRoom;
  // What is in view already needs no move that loses the rest.
  if (px.x >= kRoom && px.y >= kRoom && px.x <= width() - kRoom && px.y <= foot) return update();
  view_.centre = place;
  viewChosen_ = true;
  viewChanged();
}

void PlanCanvas::viewChanged() {
  ground_.current = set_.current = ways_.current = false;
  update();
}

void PlanCanvas::answersChanged() {
  if (!bridge_.answers()) return;
  const auto& answers = *bridge_.answers();
  if (drawnTake_ != answers.take) {
    drawnTake_ = answers.take;
    set_.current = ways_.current = false;
    if (picture_.ground == sheets::Ground::light) ground_.current = false;
  }
  if (drawnGround_ != answers.ground.get()) {
    drawnGround_ = answers.ground.get();
    ground_.current = false;
  }
  const double t = bridge_.instant().time;
  if (t != picture_.time) {
    // Leaves hang as they hang at the instant, and ways are cut at it.
    picture_.time = t;
    set_.current = ways_.current = false;
    if (std::abs(t - groundTime_) >= kGroundStep) ground_.current = false;
  }
  update();
}

template <class Make>
const PlanCanvas::Layer& PlanCanvas::layerOf(Layer& layer, Make make) {
  if (layer.current && !layer.pixmap.isNull()) return layer;
  const double ratio = devicePixelRatioF();
  layer.pixmap = QPixmap(size() * ratio);
  layer.pixmap.setDevicePixelRatio(ratio);
  layer.pixmap.fill(Qt::transparent);
  QPainter painter(&layer.pixmap);
  sheets::Layer made = make();
  painter_.paint(painter, made.drawing);
  layer.writing = std::move(made.writing);
  layer.current = true;
  return layer;
}

void PlanCanvas::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), colourOf(Tone::window, painter_.theme()));
  if (!bridge_.answers()) return;
  const auto& answers = *bridge_.answers();
  picture_.time = bridge_.instant().time;
  picture_.chosen = chosenOf(document_.selection());
  if (!ground_.current) groundTime_ = picture_.time;
  sheets::Writing writing;
  const auto paintKept = [&](const Layer& layer) {
    painter.drawPixmap(0, 0, layer.pixmap);
    writing.add(layer.writing);
  };
  const auto paintNew = [&](sheets::Layer layer) {
    painter_.paint(painter, layer.drawing);
    writing.add(std::move(layer.writing));
  };
  paintKept(layerOf(ground_, [&] { return sheets::Layer{sheets::groundLayer(answers, view_, picture_), {}}; }));
  painter_.paint(painter, sheets::wedgeLayer(answers, bridge_.instant(), view_));
  paintKept(layerOf(set_, [&] { return sheets::setLayer(*answers.take, view_, picture_.time); }));
  paintKept(layerOf(ways_, [&] { return sheets::waysLayer(*answers.take, view_, picture_); }));
  paintNew(sheets::foundWaysLayer(answers, view_, picture_));
  paintNew(sheets::nowLayer(answers, bridge_.instant(), view_, picture_));
  painter_.paint(painter, sheets::labelsLayer(view_, std::move(writing)));
  painter_.paint(
      painter, sheets::planLegend(view_, picture_, answers.take->plan().display, sheets::groundShowsInGlass(answers)));
  paintTape(painter);
  paintTag(painter);
  if (hasFocus()) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colourOf(Tone::ink2, painter_.theme()), 2));
    painter.drawRect(rect().adjusted(1, 1, -1, -1));
  }
}

void PlanCanvas::resizeEvent(QResizeEvent*) {
  view_.width = width();
  view_.height = height();
  if (!viewChosen_) return showWholeTake();
  viewChanged();
}

void PlanCanvas::paintTape(QPainter& painter) {
  if (!taping_ || !tapeFrom_ || !tapeTo_) return;
  geometry::Drawing drawing = view_.sheet();
  geometry::Path line;
  line.rings = {{view_.toPicture(*tapeFrom_), view_.toPicture(*tapeTo_)}};
  line.stroke = {.tone = Tone::ink, .width = 2, .dash = {8, 4}};
  drawing.add(line);
  painter_.paint(painter, drawing);
}

/// The words beside the pointer: what a drag does, what a tape reads.
void PlanCanvas::paintTag(QPainter& painter) {
  if (tag_.isEmpty()) return;
  painter.setFont(fontOf(14, true));
  const QRectF text = painter.fontMetrics().boundingRect(tag_);
  QRectF box(lastAt_.x() + 16, lastAt_.y() - 28, text.width() + 16, 22);
  box.moveRight(std::min(box.right(), width() - 4.0));
  box.moveTop(std::max(box.top(), 4.0));
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(colourOf(Tone::line2, painter_.theme()), 1));
  painter.setBrush(colourOf(Tone::panel, painter_.theme()));
  painter.drawRoundedRect(box, 4, 4);
  painter.setPen(colourOf(Tone::ink, painter_.theme()));
  painter.drawText(box, Qt::AlignCenter, tag_);
}

void PlanCanvas::mousePressEvent(QMouseEvent* event) {
  pressedAt_ = lastAt_ = event->position();
  if (!bridge_.answers()) return;
  if (event->button() == Qt::MiddleButton) {
    doing_ = Doing::panning;
    return;
  }
  if (event->button() != Qt::LeftButton) return;
  if (taping_) return tapeClick(view_.toPlan(pointOf(event->position())));
  doing_ = Doing::pressed;
  drag_.reset();
  const auto hit = planHit(*bridge_.answers(), bridge_.instant(), view_, pointOf(event->position()));
  if (!hit || !hit->mark) return;
  document_.select(hit->what);
  const motion::Track* track = trackOf(*hit->mark);
  if (track && hit->mark->index < track->marks().size())
    drag_.emplace(*hit->mark, track->marks()[hit->mark->index].pos);
}

void PlanCanvas::mouseMoveEvent(QMouseEvent* event) {
  const QPointF at = event->position(), moved = at - lastAt_;
  lastAt_ = at;
  if (taping_ && tapeFrom_) {
    tapeTo_ = view_.toPlan(pointOf(at));
    tag_ = tapeText(*tapeFrom_, *tapeTo_);
    return update();
  }
  if (doing_ == Doing::pressed && QLineF(pressedAt_, at).length() > kDragStarts)
    doing_ = drag_ ? Doing::draggingMark : Doing::panning;
  if (doing_ == Doing::draggingMark) return dragTo(at, event->modifiers().testFlag(Qt::ControlModifier));
  if (doing_ != Doing::panning) return;
  view_.centre = view_.centre - Vec{moved.x(), -moved.y()} / view_.pxPerMetre;
  viewChosen_ = true;
  viewChanged();
}

Point PlanCanvas::snapped(Point place, const plan::MarkRef& moving, bool free, QString* to) const {
  if (free) return place;
  const auto& people = bridge_.answers()->take->people();
  const double reach = kReach / view_.pxPerMetre;
  const auto tryTrack = [&](const motion::Track* track, bool own) -> std::optional<Point> {
    if (!track) return std::nullopt;
    for (std::size_t k = 0; k < track->marks().size(); ++k)
      if (!(own && k == moving.index) && geometry::distance(track->marks()[k].pos, place) < reach)
        return track->marks()[k].pos;
    return std::nullopt;
  };
  const auto& plan = *document_.plan();
  std::optional<Point> found = tryTrack(&people.camera(), moving.owner == plan::Owner::camera);
  for (std::size_t i = 0; i < plan.performers.size() && !found; ++i)
    found = tryTrack(people.performer(i),
                     moving.owner == plan::Owner::performer && plan.performers[i].id.text() == moving.id);
  if (found) {
    *to = tr("on a mark");
    return *found;
  }
  *to = tr("5 cm");
  return {std::round(place.x / kSnapStep) * kSnapStep, std::round(place.y / kSnapStep) * kSnapStep};
}

void PlanCanvas::dragTo(QPointF px, bool free) {
  QString snappedTo = tr("free");
  const Point place = snapped(view_.toPlan(pointOf(px)), drag_->mark(), free, &snappedTo);
  drag_->pointTo(place, snappedTo);
  showDrag();
}

/// Always from the plan, never from the last preview: what the pointer shows is one edit.
void PlanCanvas::showDrag() {
  const auto moved = plan::movedMark(*document_.plan(), drag_->mark(), drag_->place());
  if (!moved) {
    tag_ = QString::fromStdString(moved.problems().front().remedy);
    return update();
  }
  document_.setPreview(std::make_shared<const plan::Plan>(*moved));
  tag_ = drag_->words(document_.plan()->display) + QStringLiteral("  ") + legText(drag_->mark());
  update();
}

void PlanCanvas::finishDrag() {
  doing_ = Doing::nothing;
  drag_.reset();
  tag_.clear();
  document_.commitPreview(tr("Move mark"));
  update();
}

/// Letters and digits are the drag's while there is one.
bool PlanCanvas::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && doing_ == Doing::draggingMark) {
    event->accept();
    return true;
  }
  return QWidget::event(event);
}

bool PlanCanvas::focusNextPrevChild(bool next) {
  return doing_ != Doing::draggingMark && QWidget::focusNextPrevChild(next);
}

const motion::Track* PlanCanvas::trackOf(const plan::MarkRef& mark) const {
  const auto& people = bridge_.answers()->take->people();
  const auto& plan = bridge_.answers()->take->plan();
  return mark.owner == plan::Owner::camera      ? &people.camera()
         : mark.owner == plan::Owner::performer ? people.performer(plan.performers.indexOf(mark.id))
                                                : people.crew(plan.crew.indexOf(mark.id));
}

/// "5.0 s, 0.65 m/s": the leg that arrives at the mark, or leaves the first one.
QString PlanCanvas::legText(const plan::MarkRef& mark) const {
  const motion::Track* track = trackOf(mark);
  if (!track || track->legs().empty()) return {};
  const auto& leg = track->legs()[mark.index == 0 ? 0 : mark.index - 1];
  return QString::fromStdString(base::fixed(leg.time.length(), 1) + " s, " + base::fixed(leg.peakSpeed, 2) + " m/s");
}

void PlanCanvas::mouseReleaseEvent(QMouseEvent* event) {
  if (doing_ == Doing::draggingMark) return finishDrag();
  const Doing was = doing_;
  doing_ = Doing::nothing;
  tag_.clear();
  if (was == Doing::pressed && !drag_ && event->button() == Qt::LeftButton) clickAt(event->position());
  update();
}

/// What cannot be dragged is chosen when the button comes up without a move: else the picture was panned.
void PlanCanvas::clickAt(QPointF px) {
  if (px.y() > height() - sheets::kLegendHeight) return;
  const auto hit = planHit(*bridge_.answers(), bridge_.instant(), view_, pointOf(px));
  if (!hit) return pickSpot(view_.toPlan(pointOf(px)));
  if (hit->what.kind == Kind::snag) return Q_EMIT snagChosen(QString::fromStdString(hit->what.id));
  document_.select(hit->what);
}

void PlanCanvas::mouseDoubleClickEvent(QMouseEvent*) {
  showWholeTake();
}

void PlanCanvas::wheelEvent(QWheelEvent* event) {
  const Point under = view_.toPlan(pointOf(event->position()));
  const double factor = std::pow(1.0015, event->angleDelta().y());
  view_.pxPerMetre = std::clamp(view_.pxPerMetre * factor, 4.0, 800.0);
  view_.centre = view_.centre + (under - view_.toPlan(pointOf(event->position())));
  viewChosen_ = true;
  viewChanged();
  event->accept();
}

void PlanCanvas::pickSpot(Point place) {
  document_.select({});
  picture_.spot = place;
  const answers::Take& take = *bridge_.answers()->take;
  const auto& rules = take.plan().sightRules;
  spotSight_.reset();
  if (take.plan().lens) spotSight_ = answers::sightOfSpot(take, place, rules.height, rules.radius);
  Q_EMIT told(spotWords(place));
  Q_EMIT spotChanged();
  update();
}

QString PlanCanvas::spotWords(Point place) const {
  const answers::Take& take = *bridge_.answers()->take;
  const auto here = QString::fromStdString(base::fixed(place.x, 2) + ", " + base::fixed(place.y, 2));
  const std::string none = sheets::noGroundText(take, place, take.plan().sightRules.height);
  if (!none.empty()) return tr("No ground at %1: it is %2").arg(here, QString::fromStdString(none));
  if (!spotSight_) return tr("Ground at %1: sight unknown, the plan has no lens").arg(here);
  const double t = bridge_.instant().time;
  const std::string now = sheets::spotTakenText(take, place, take.plan().sightRules.height, t) +
                          sheets::spotNowText(take.plan(), *spotSight_, t);
  return tr("Ground at %1: %2. All of it is on the score").arg(here, QString::fromStdString(now));
}

/// Lens height at the camera, eyes at a performer, floor elsewhere.
double PlanCanvas::heightAt(Point place) const {
  const auto& instant = bridge_.instant();
  if (geometry::distance(place, geometry::flat(instant.camera.sensor.at)) < 0.3) return instant.camera.sensor.at.z;
  for (const auto& performer : instant.performers)
    if (performer.present && geometry::distance(place, performer.pos) < 0.3) return performer.eyes;
  return bridge_.answers()->take->people().floorAt(place);
}

QString PlanCanvas::tapeText(Point a, Point b) const {
  const auto unit =
      document_.plan()->display == plan::LengthUnit::feet ? units::LengthUnit::feet : units::LengthUnit::metres;
  const double floor = geometry::distance(a, b);
  const double slant = std::hypot(floor, heightAt(b) - heightAt(a));
  return tr("floor %1, slant %2")
      .arg(QString::fromStdString(units::lengthText(floor, unit)),
           QString::fromStdString(units::lengthText(slant, unit)));
}

void PlanCanvas::tapeClick(Point place) {
  if (!tapeFrom_) {
    tapeFrom_ = tapeTo_ = place;
    return Q_EMIT told(tr("Tape: click the second point"));
  }
  tapeTo_ = place;
  Q_EMIT told(tr("Tape: ") + tapeText(*tapeFrom_, place));
  tag_ = tapeText(*tapeFrom_, place);
  tapeFrom_ = place;
  update();
}

void PlanCanvas::nudge(Vec by) {
  const auto mark = markOf(document_.selection());
  if (!mark) return Q_EMIT refused(tr("Choose a mark to nudge it"));
  const auto moved = plan::movedMarks(*document_.plan(), {*mark}, by);
  if (!moved) return Q_EMIT refused(QString::fromStdString(moved.problems().front().remedy));
  const QString key =
      QStringLiteral("nudge/%1/%2/%3").arg(int(mark->owner)).arg(QString::fromStdString(mark->id)).arg(mark->index);
  document_.propose(std::make_shared<const plan::Plan>(*moved), tr("Nudge mark"), key);
}

void PlanCanvas::keyPressEvent(QKeyEvent* event) {
  if (doing_ == Doing::draggingMark) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return finishDrag();
    if (drag_->type(*event, document_.plan()->display)) return showDrag();
  }
  const double step = event->modifiers().testFlag(Qt::ShiftModifier) ? 0.5 : 0.05;
  switch (event->key()) {
    case Qt::Key_Left:
      return nudge({-step, 0});
    case Qt::Key_Right:
      return nudge({step, 0});
    case Qt::Key_Up:
      return nudge({0, step});
    case Qt::Key_Down:
      return nudge({0, -step});
    case Qt::Key_Home:
    case Qt::Key_0:
      return showWholeTake();
    case Qt::Key_Escape:
      if (document_.hasPreview()) {
        document_.dropPreview();
        doing_ = Doing::nothing;
      } else if (taping_) {
        setTaping(false);
      } else {
        picture_.spot.reset();
        spotSight_.reset();
        document_.select({});
        Q_EMIT spotChanged();
      }
      tag_.clear();
      return update();
    default:
      QWidget::keyPressEvent(event);
  }
}

}  // namespace wend::ui
