#include "ui/details/snag_list.h"

namespace wend::ui {

SnagList::SnagList(Document& document, AnswersBridge& bridge, QWidget* parent)
    : QWidget(parent), document_(document), bridge_(bridge) {}

void SnagList::setTheme(sheets::Theme theme) {
  theme_ = theme;
  update();
}

}  // namespace wend::ui
