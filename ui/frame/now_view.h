/// The now panel on the screen: clock, who is sharp, the lens, the next cue, the worst snag.
///
/// A click on the card of the snag, or Enter, goes to that snag.
#pragma once

#include <QWidget>

#include "ui/canvas/drawing_painter.h"
#include "ui/document/answers_bridge.h"
#include "ui/document/document.h"

namespace wend::ui {

class NowView : public QWidget {
  Q_OBJECT

 public:
  NowView(Document& document, AnswersBridge& bridge, QWidget* parent = nullptr);

  void setTheme(sheets::Theme theme);
  static constexpr int kWidth = 240;
  QSize sizeHint() const override { return {kWidth, 544}; }
  QSize minimumSizeHint() const override { return {kWidth, 416}; }

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void instantChanged();
  const snags::Snag* shownSnag() const;
  void goToSnag();

  Document& document_;
  AnswersBridge& bridge_;
  DrawingPainter painter_{sheets::Theme::dark};
};

}  // namespace wend::ui
