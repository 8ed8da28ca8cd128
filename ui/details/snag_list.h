/// All snags of the take in a list: gone to, accepted by name, taken back.
#pragma once

#include <QWidget>

#include "core/sheets/theme.h"
#include "ui/document/answers_bridge.h"
#include "ui/document/document.h"

namespace wend::ui {

class SnagList : public QWidget {
  Q_OBJECT

 public:
  SnagList(Document& document, AnswersBridge& bridge, QWidget* parent = nullptr);

  void setTheme(sheets::Theme theme);

 private:
  Document& document_;
  AnswersBridge& bridge_;
  sheets::Theme theme_ = sheets::Theme::dark;
};

}  // namespace wend::ui
