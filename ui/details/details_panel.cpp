#include "ui/details/details_panel.h"

namespace wend::ui {

DetailsPanel::DetailsPanel(Document& document, AnswersBridge& bridge, QWidget* parent)
    : QWidget(parent), document_(document), bridge_(bridge) {}

DetailsPanel::~DetailsPanel() = default;

void DetailsPanel::setTheme(sheets::Theme theme) {
  theme_ = theme;
  update();
}

}  // namespace wend::ui
