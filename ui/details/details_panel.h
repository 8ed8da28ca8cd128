/// Details: whatever is chosen, edited by number. Nothing chosen: the plan itself.
#pragma once

#include <QWidget>

#include "core/sheets/theme.h"
#include "ui/document/answers_bridge.h"
#include "ui/document/document.h"

namespace wend::ui {

class DetailsPanel : public QWidget {
  Q_OBJECT

 public:
  DetailsPanel(Document& document, AnswersBridge& bridge, QWidget* parent = nullptr);
  ~DetailsPanel() override;

  void setTheme(sheets::Theme theme);

 Q_SIGNALS:
  /// What keeps an edit from being made, in one line.
  void toldProblem(const QString& line);

 private:
  Document& document_;
  AnswersBridge& bridge_;
  sheets::Theme theme_ = sheets::Theme::dark;
};

}  // namespace wend::ui
