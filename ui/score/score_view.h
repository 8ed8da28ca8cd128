/// The score: the take along the clock. Click or drag to scrub; drag a beat's flag or a key and everything moves with
/// it.
///
/// Keys      left and right nudge the chosen beat or key 0.1 s, with Shift 1 s; without one they move the playhead a
///           frame, with Shift a second; up and down change a key's value; Escape drops a drag.
#pragma once

#include <QPixmap>
#include <QWidget>
#include <optional>

#include "core/sheets/score_drawing.h"
#include "ui/canvas/drawing_painter.h"
#include "ui/document/answers_bridge.h"

namespace wend::ui {

class ScoreView : public QWidget {
  Q_OBJECT

 public:
  ScoreView(Document& document, AnswersBridge& bridge, QWidget* parent = nullptr);

  void setTheme(sheets::Theme theme);
  void setFolded(std::vector<std::string> names);
  /// The windows of clicked ground, as a lane over the crew; nothing takes it away.
  void setSpot(std::optional<snags::SightOf> spot);
  QSize sizeHint() const override;
  const sheets::ScoreView& view() const { return view_; }

 Q_SIGNALS:
  void told(const QString& words);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  enum class Doing { nothing, scrubbing, pressedHandle, draggingHandle };
  void planChanged();
  void redraw();
  void paintTag(QPainter& painter);
  std::optional<sheets::ScoreHandle> handleAt(QPointF px) const;
  void dragTo(QPointF px);
  void nudge(double seconds, double steps);
  std::string chosenKey() const;

  Document& document_;
  AnswersBridge& bridge_;
  DrawingPainter painter_;
  sheets::ScoreView view_;
  QPixmap drawn_;
  bool current_ = false;
  Doing doing_ = Doing::nothing;
  QPointF pressedAt_, lastAt_;
  std::optional<sheets::ScoreHandle> dragged_;
  QString tag_;
  std::optional<snags::SightOf> spot_;
};

}  // namespace wend::ui
