/// A number that is typed while something is dragged.
///
/// Keys      digits, point, comma and the sign of feet begin it, a minus where it may be negative; letters and signs of
///           units go on; Backspace takes the last one back.
#pragma once

#include <QKeyEvent>
#include <QString>

namespace wend::ui {

class TypedEntry {
 public:
  explicit TypedEntry(bool negative = false) : negative_(negative) {}

  /// Takes a key into the number. False for keys that are no part of one.
  bool type(const QKeyEvent& event);
  bool typing() const { return !text_.isEmpty(); }
  const QString& text() const { return text_; }

 private:
  bool negative_;
  QString text_;
};

}  // namespace wend::ui
