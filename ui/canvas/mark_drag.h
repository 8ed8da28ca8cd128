/// A drag of a mark on the plan: where the pointer or what is typed takes it, and the words beside it.
///
/// Keys      digits are taken as the number itself: east x first; Tab goes on to north y, to how far the mark is moved
///           in the direction of the pointer, and round again. What was typed of x stays while y is typed.
#pragma once

#include <array>
#include <optional>

#include "core/plan/plan.h"
#include "core/plan/references.h"
#include "ui/document/typed_entry.h"

namespace wend::ui {

class MarkDrag {
 public:
  /// `from` is where the mark stands in the plan.
  MarkDrag(plan::MarkRef mark, geometry::Point from) : mark_(std::move(mark)), from_(from), pointed_(from) {}

  const plan::MarkRef& mark() const { return mark_; }
  /// The pointer is there now. Once something is typed the pointer takes the mark nowhere.
  void pointTo(geometry::Point place, const QString& snappedTo);
  /// False for keys that are no part of a number.
  bool type(const QKeyEvent& event, plan::LengthUnit unit);
  bool typing() const;

  /// What is typed in the place of what is pointed to; how far goes before x and y.
  geometry::Point place() const;
  /// The place and what it snapped to, or what is typed.
  QString words(plan::LengthUnit unit) const;

 private:
  static constexpr std::size_t kEast = 0, kNorth = 1, kWay = 2;

  plan::MarkRef mark_;
  geometry::Point from_, pointed_;
  QString snappedTo_;
  std::size_t typed_ = kEast;
  std::array<TypedEntry, 3> entries_{TypedEntry{true}, TypedEntry{true}, TypedEntry{}};
  std::array<std::optional<double>, 3> metres_;
};

}  // namespace wend::ui
