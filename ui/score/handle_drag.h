/// A drag of one of the score's handles: where the pointer or what is typed takes it, and the words beside it.
///
/// Keys      Ctrl breaks the snap to beats, tenths of a second, thirds of a stop, whole millimetres and steps of a
///           tape. Shift takes the whole key along, or pulls a cut apart. Digits are taken as the number itself, Tab
///           goes from its value to its time and back.
#pragma once

#include <QKeyEvent>
#include <QPointF>
#include <QString>

#include "core/plan/plan.h"
#include "core/sheets/score_drawing.h"
#include "ui/document/typed_entry.h"
#include "ui/score/handle_edits.h"

namespace wend::ui {

class HandleDrag {
 public:
  HandleDrag(sheets::ScoreHandle handle, QPointF pressedAt) : handle_(std::move(handle)), pressedAt_(pressedAt) {}

  const sheets::ScoreHandle& handle() const { return handle_; }

  /// The pointer is there now. Once something is typed it only says where the words stand.
  void pointTo(QPointF px, Qt::KeyboardModifiers keys, const sheets::ScoreView& view, const plan::Plan& plan);

  /// Takes a key into the number that is being typed. False for keys that are no part of a number.
  bool type(const QKeyEvent& event, const plan::Plan& plan);
  bool typing() const { return typed_.typing(); }

  /// Ensures   (1) a pointer that moved along one axis alone leaves the other as it is
  HandleMove move() const { return move_; }
  /// Time and value as they are now, or what is typed.
  QString words(const plan::Plan& plan) const;

 private:
  enum class Value { none, focal, stop, density, distance };
  Value value() const;
  void take(const plan::Plan& plan);
  std::optional<double> typedMeasure(const plan::Plan& plan) const;
  double snappedMeasure(double measure, plan::LengthUnit unit) const;
  QString valueWords(const plan::Plan& plan, double measure) const;

  sheets::ScoreHandle handle_;
  QPointF pressedAt_;
  HandleMove move_;
  TypedEntry typed_;
  QString snappedTo_;
  bool typesTime_ = false;
  bool understood_ = true;
};

}  // namespace wend::ui
