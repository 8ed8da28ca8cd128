/// The score: the take along the clock. Click or drag to scrub; drag a beat's flag or either end of a key and
/// everything moves with it; drag along the ruler to choose a span; click a stave's name to fold it. In a scroll area
/// that is lower than its staves they fold by need, and clock, beats, crew and snags keep in sight (stave_room.h).
///
/// Keys      left and right nudge the chosen beat or key 0.1 s, with Shift 1 s; without one they move the playhead a
///           frame, with Shift a second; up and down change a key's value; [ and ] set the ends of the span at the
///           playhead; Escape drops a drag, then the span, then what is chosen. While something is dragged digits are
///           its number (handle_drag.h), Enter takes it. A double click picks a handle up, the next click lets it go:
///           the drag without a held button.
#pragma once

#include <QPixmap>
#include <QWidget>
#include <optional>

#include "core/sheets/score_drawing.h"
#include "ui/canvas/drawing_painter.h"
#include "ui/document/answers_bridge.h"
#include "ui/score/handle_drag.h"

namespace wend::ui {

class ScoreView : public QWidget {
  Q_OBJECT

 public:
  ScoreView(Document& document, AnswersBridge& bridge, QWidget* parent = nullptr);

  void setTheme(sheets::Theme theme);
  /// Everything else stays open however short room is; with no names staves fold as room asks.
  void setFolded(std::vector<std::string> names);
  /// Folds a stave or opens it again.
  void toggleStave(const std::string& name);
  std::vector<sheets::StaveBox> staves() const;
  /// The windows of clicked ground, as a lane over the crew; nothing takes it away.
  void setSpot(std::optional<snags::SightOf> spot);
  /// The chosen span of the take; nothing chooses none. It is held within the take.
  void setSpan(std::optional<geometry::Span> span);
  const std::optional<geometry::Span>& span() const { return span_; }
  QSize sizeHint() const override;
  const sheets::ScoreView& view() const { return view_; }

 Q_SIGNALS:
  void told(const QString& words);
  /// What keeps an edit from being made.
  void refused(const QString& words);
  void snagChosen(const QString& key);
  void spanChanged();

 protected:
  bool event(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;
  void moveEvent(QMoveEvent* event) override;
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
  enum class Doing { nothing, scrubbing, pressedRuler, spanning, pressedHandle, draggingHandle, carryingHandle };
  bool dragging() const { return doing_ == Doing::draggingHandle || doing_ == Doing::carryingHandle; }
  void planChanged();
  void redraw();
  void paintIcons(QPainter& painter);
  void paintTag(QPainter& painter);
  std::optional<sheets::ScoreHandle> handleAt(QPointF px) const;
  std::optional<sheets::StaveBox> staveAt(double y) const;
  bool onRuler(QPointF px) const;
  void shownChanged();
  bool foldedByName(QPointF px);
  void tellPlanned(QPointF px);
  bool choseSnag(QPointF px);
  void chooseCrew(QPointF px);
  void showDrag();
  void finishDrag();
  void dropDrag();
  void escape();
  void nudge(double seconds, double steps);
  bool arrow(int key, bool shift);
  std::string chosenKey() const;
  double snappedTime(double px, Qt::KeyboardModifiers keys) const;

  Document& document_;
  AnswersBridge& bridge_;
  DrawingPainter painter_;
  sheets::ScoreView view_;
  QPixmap drawn_;
  bool current_ = false;
  Doing doing_ = Doing::nothing;
  QPointF pressedAt_, lastAt_;
  std::optional<HandleDrag> drag_;
  QString tag_;
  std::optional<snags::SightOf> spot_;
  std::optional<geometry::Span> span_;
};

}  // namespace wend::ui
