/// The rail at the left: what the pointer does on the plan, and which picture the ground shows. Icon and word together.
#pragma once

#include <QToolButton>
#include <QWidget>
#include <vector>

#include "ui/canvas/plan_canvas.h"

namespace wend::ui {

class Rail : public QWidget {
  Q_OBJECT

 public:
  static constexpr int kWidth = 84;
  Rail(Document& document, AnswersBridge& bridge, PlanCanvas& canvas, QWidget* parent = nullptr);
  void setTheme(sheets::Theme theme);

 private:
  QToolButton* add(const QString& icon, const QString& word, const QString& tip, bool checkable);
  void addMark();
  void refresh();

  Document& document_;
  AnswersBridge& bridge_;
  PlanCanvas& canvas_;
  std::vector<std::pair<QToolButton*, QString>> buttons_;
  QToolButton *pointer_, *tape_, *seen_, *span_, *light_, *plain_;
};

}  // namespace wend::ui
