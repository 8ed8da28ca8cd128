#include "ui/document/typed_entry.h"

namespace wend::ui {

bool TypedEntry::type(const QKeyEvent& event) {
  if (event.key() == Qt::Key_Backspace) {
    text_.chop(1);
    return true;
  }
  const QString text = event.text();
  if (text.size() != 1 || event.modifiers().testFlag(Qt::ControlModifier)) return false;
  const bool first = QStringLiteral("0123456789.,'").contains(text) || (negative_ && text == QStringLiteral("-"));
  const bool later = typing() && QStringLiteral("-/\" mcft").contains(text);
  if (!first && !later) return false;
  text_ += text;
  return true;
}

}  // namespace wend::ui
