#include "ui/canvas/mark_drag.h"

#include <QObject>
#include <algorithm>

#include "core/base/text.h"
#include "core/units/length.h"

namespace wend::ui {

using geometry::Point;
using geometry::Vec;

void MarkDrag::pointTo(Point place, const QString& snappedTo) {
  if (typing()) return;
  pointed_ = place;
  snappedTo_ = snappedTo;
}

bool MarkDrag::typing() const {
  return std::any_of(entries_.begin(), entries_.end(), [](const auto& entry) { return entry.typing(); });
}

bool MarkDrag::type(const QKeyEvent& event, plan::LengthUnit unit) {
  if (event.key() == Qt::Key_Tab || event.key() == Qt::Key_Backtab) {
    typed_ = (typed_ + (event.key() == Qt::Key_Tab ? 1 : 2)) % 3;
    return true;
  }
  TypedEntry& entry = entries_[typed_];
  if (!entry.type(event)) return false;
  const auto read = units::lengthFrom(entry.text().toStdString(), unit);
  metres_[typed_] = entry.typing() && read.ok() ? std::optional(*read) : std::nullopt;
  return true;
}

Point MarkDrag::place() const {
  if (metres_[kWay]) {
    const Vec way = pointed_ - from_;
    return geometry::length(way) > 0 ? from_ + geometry::unit(way) * *metres_[kWay] : from_;
  }
  return {metres_[kEast].value_or(pointed_.x), metres_[kNorth].value_or(pointed_.y)};
}

QString MarkDrag::words(plan::LengthUnit unit) const {
  if (typing() || typed_ != kEast) {
    const QString names[] = {QObject::tr("east x"), QObject::tr("north y"), QObject::tr("moved by")};
    const QString sign = unit == plan::LengthUnit::feet ? QObject::tr("ft") : QObject::tr("m");
    // What was typed before stays in sight.
    const bool both = typed_ == kNorth && entries_[kEast].typing();
    const QString before =
        both ? QStringLiteral("%1 %2 %3, ").arg(names[kEast], entries_[kEast].text(), sign) : QString();
    const QString entry = before + QStringLiteral("%1 %2_ %3").arg(names[typed_], entries_[typed_].text(), sign);
    if (!entries_[typed_].typing()) return QObject::tr("%1  Tab: the next number").arg(entry);
    return metres_[typed_] ? QObject::tr("%1  Enter takes it").arg(entry)
                           : QObject::tr("%1  no such value yet").arg(entry);
  }
  const Point at = place();
  return QString::fromStdString(base::fixed(at.x, 2) + ", " + base::fixed(at.y, 2)) + QStringLiteral("  ") + snappedTo_;
}

}  // namespace wend::ui
