/// The frame on the screen: what the lens sees at the playhead, under a line that says through which lens; or the same
/// instant from the side, in true heights.
///
/// A click on a figure chooses that performer; the arrow keys Left and Right walk through those in frame. A click on
/// one of the two words in the line over the picture shows that one.
#pragma once

#include <QWidget>

#include "ui/canvas/drawing_painter.h"
#include "ui/document/answers_bridge.h"
#include "ui/document/document.h"

namespace wend::ui {

class FrameView : public QWidget {
  Q_OBJECT

 public:
  FrameView(Document& document, AnswersBridge& bridge, QWidget* parent = nullptr);

  void setTheme(sheets::Theme theme);
  QSize sizeHint() const override { return {344, 224}; }
  QSize minimumSizeHint() const override { return {240, 160}; }

  /// Height of the line over the picture, px.
  static constexpr int kHeader = 28;
  /// "28 mm · T4 · 24.9 × 14.0 mm · 47.9° wide", from the side how high and where it looks; empty without a lens.
  QString lensLine() const;
  bool fromSide() const { return fromSide_; }
  void setFromSide(bool side);
  /// Where to click for the one view or the other.
  QRect headerWord(bool side) const;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void instantChanged();
  void paintHeader(QPainter& painter) const;
  geometry::Drawing picture() const;
  /// Corners about the head of the chosen performer.
  void addChosen(geometry::Drawing& drawing) const;
  void choose(std::size_t performer);

  Document& document_;
  AnswersBridge& bridge_;
  bool fromSide_ = false;
  DrawingPainter painter_{sheets::Theme::dark};
};

}  // namespace wend::ui
