/// The plan: the set from above with everything on it. Drag a mark and everything moves with it; click ground for its
/// windows; lay a tape between two points.
///
/// Keys      arrows nudge the chosen mark 5 cm, with Shift 50 cm; Escape drops what is going on; Ctrl breaks the snap;
///           Home or 0 shows the whole take again, and so does a double click. While a mark is dragged digits are its
///           number (mark_drag.h), Enter takes it.
#pragma once

#include <QPixmap>
#include <QWidget>
#include <optional>

#include "core/sheets/plan_view.h"
#include "ui/canvas/drawing_painter.h"
#include "ui/canvas/mark_drag.h"
#include "ui/canvas/plan_hit.h"
#include "ui/document/answers_bridge.h"

namespace wend::ui {

class PlanCanvas : public QWidget {
  Q_OBJECT

 public:
  PlanCanvas(Document& document, AnswersBridge& bridge, QWidget* parent = nullptr);

  void setTheme(sheets::Theme theme);
  void setGround(sheets::Ground ground);
  sheets::Ground ground() const { return picture_.ground; }
  /// For Ground::clearSpan.
  void setSpan(geometry::Span span);
  bool taping() const { return taping_; }
  void setTaping(bool taping);
  void showWholeTake();
  /// Moves the picture to a place that is not in view.
  void showPlace(geometry::Point place);
  const sheets::PlanView& view() const { return view_; }
  /// The clicked spot's windows, while one is chosen.
  const std::optional<snags::SightOf>& spot() const { return spotSight_; }

 Q_SIGNALS:
  void spotChanged();
  void tapingChanged(bool taping);
  void told(const QString& words);
  /// What keeps an edit from being made.
  void refused(const QString& words);
  void snagChosen(const QString& key);

 protected:
  bool event(QEvent* event) override;
  bool focusNextPrevChild(bool next) override;
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  /// A finished layer as it was last drawn, and what it wants written.
  struct Layer {
    QPixmap pixmap;
    sheets::Writing writing;
    bool current = false;
  };
  enum class Doing { nothing, pressed, draggingMark, panning };

  void answersChanged();
  void viewChanged();
  template <class Make>
  const Layer& layerOf(Layer& layer, Make make);
  void paintTape(QPainter& painter);
  void paintTag(QPainter& painter);
  void dragTo(QPointF px, bool free);
  void showDrag();
  void finishDrag();
  const motion::Track* trackOf(const plan::MarkRef& mark) const;
  void clickAt(QPointF px);
  void pickSpot(geometry::Point place);
  QString spotWords(geometry::Point place) const;
  void tapeClick(geometry::Point place);
  QString tapeText(geometry::Point a, geometry::Point b) const;
  double heightAt(geometry::Point place) const;
  geometry::Point snapped(geometry::Point place, const plan::MarkRef& moving, bool free, QString* to) const;
  void nudge(geometry::Vec by);
  QString legText(const plan::MarkRef& mark) const;

  Document& document_;
  AnswersBridge& bridge_;
  DrawingPainter painter_;
  sheets::PlanView view_;
  sheets::PlanPicture picture_;
  bool viewChosen_ = false;  ///< by hand; else the whole take is kept in view
  Layer ground_, set_, ways_;
  double groundTime_ = -1;
  answers::TakePtr drawnTake_;
  const void* drawnGround_ = nullptr;

  Doing doing_ = Doing::nothing;
  QPointF pressedAt_, lastAt_;
  std::optional<MarkDrag> drag_;  ///< of the mark that was pressed on
  QString tag_;
  bool taping_ = false;
  std::optional<geometry::Point> tapeFrom_, tapeTo_;
  std::optional<snags::SightOf> spotSight_;
};

}  // namespace wend::ui
