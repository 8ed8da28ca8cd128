#include "ui/score/handle_drag.h"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "core/answers/lens_tracks.h"
#include "core/base/text.h"
#include "core/units/clock_time.h"
#include "core/units/length.h"
#include "core/units/stop.h"
#include "core/units/typed.h"

namespace wend::ui {

namespace {

constexpr double kStartsPx = 3, kBeatReachPx = 6;
constexpr double kSnapSeconds = 0.1, kFreeSeconds = 0.001;

double rounded(double value, double step) {
  return std::round(value / step) * step;
}

}  // namespace

HandleDrag::Value HandleDrag::value() const {
  if (!(handle_.perPx > 0)) return Value::none;
  if (handle_.key.starts_with("zoom/")) return Value::focal;
  if (handle_.key.starts_with("nd/")) return Value::density;
  return handle_.key.starts_with("iris/") ? Value::stop : Value::distance;
}

double HandleDrag::snappedMeasure(double measure, plan::LengthUnit unit) const {
  if (value() == Value::focal) return std::log2(std::max(1.0, std::round(std::exp2(measure))));
  if (value() == Value::density) return std::max(0.0, std::round(measure * 3) / 3);
  if (value() == Value::stop) return std::round(measure * 3) / 3;
  const double metres = 1 / std::max(measure, 1e-3);
  return 1 / rounded(metres, units::tapeStep(metres, unit));
}

void HandleDrag::pointTo(QPointF px, Qt::KeyboardModifiers keys, const sheets::ScoreView& view,
                         const plan::Plan& plan) {
  if (typing()) return;
  const bool free = keys.testFlag(Qt::ControlModifier);
  move_ = {};
  move_.whole = handle_.cut != keys.testFlag(Qt::ShiftModifier);
  snappedTo_.clear();
  const double along = px.x() - pressedAt_.x(), up = pressedAt_.y() - px.y();
  if (std::abs(along) > kStartsPx) {
    const double at = handle_.time + along / view.pxPerSecond();
    move_.to = rounded(at, free ? kFreeSeconds : kSnapSeconds);
    for (std::size_t i = 0; i < plan.beats.size() && !free; ++i) {
      const plan::Beat& beat = plan.beats[i];
      const bool near = std::abs(beat.time - at) * view.pxPerSecond() < kBeatReachPx;
      if (!near || "beat/" + beat.id.text() == handle_.key) continue;
      move_.to = beat.time;
      snappedTo_ = QObject::tr("on beat %1").arg(i + 1);
    }
    move_.to = std::clamp(*move_.to, 0.0, plan.clock.length);
  }
  if (handle_.perPx > 0 && std::abs(up) > kStartsPx) {
    const double measure = handle_.value + up * handle_.perPx;
    move_.measure = free ? measure : snappedMeasure(measure, plan.display);
  }
  if (free) snappedTo_ = QObject::tr("free");
}

bool HandleDrag::type(const QKeyEvent& event, const plan::Plan& plan) {
  if (event.key() == Qt::Key_Tab || event.key() == Qt::Key_Backtab) {
    typesTime_ = !typesTime_ || value() == Value::none;
    take(plan);
    return true;
  }
  const bool began = !typing();
  if (!typed_.type(event)) return false;
  if (began && typing() && value() == Value::none) typesTime_ = true;
  take(plan);
  return true;
}

std::optional<double> HandleDrag::typedMeasure(const plan::Plan& plan) const {
  const std::string text = typed_.text().toStdString();
  if (value() == Value::distance) {
    const auto metres = units::lengthFrom(text, plan.display);
    return metres.ok() && *metres > 0 ? std::optional(1 / *metres) : std::nullopt;
  }
  if (value() == Value::stop) {
    const auto stop = units::stopFrom(text);
    return stop.ok() ? std::optional(answers::stopsOf(*stop)) : std::nullopt;
  }
  const auto number = units::typedNumber(text);
  if (value() == Value::density) return number && *number >= 0 ? std::optional(*number) : std::nullopt;
  return number && *number > 0 ? std::optional(std::log2(*number)) : std::nullopt;
}

/// What is typed so far goes in the place of what was pointed to; the rest of the drag stays.
void HandleDrag::take(const plan::Plan& plan) {
  understood_ = true;
  if (!typing()) return;
  snappedTo_.clear();
  const auto read = typesTime_ ? units::typedNumber(typed_.text().toStdString()) : typedMeasure(plan);
  understood_ = read.has_value();
  if (!read) return;
  if (typesTime_)
    move_.to = std::clamp(*read, 0.0, plan.clock.length);
  else
    move_.measure = *read;
}

QString HandleDrag::valueWords(const plan::Plan& plan, double measure) const {
  if (value() == Value::focal) return QString::fromStdString(base::fixed(std::exp2(measure), 1) + " mm");
  if (value() == Value::density) return QObject::tr("%1 stops").arg(QString::fromStdString(base::fixed(measure, 1)));
  if (value() == Value::stop)
    return QString::fromStdString(
        units::stopText(std::clamp(answers::tNumberOf(measure), units::kWidestStop, units::kClosedStop)));
  return QString::fromStdString(units::lengthText(1 / std::max(measure, 1e-3), plan.display));
}

QString HandleDrag::words(const plan::Plan& plan) const {
  if (typing()) {
    const QString unit = typesTime_                               ? QObject::tr("s")
                         : value() == Value::focal                ? QObject::tr("mm")
                         : value() == Value::stop                 ? QObject::tr("T")
                         : value() == Value::density              ? QObject::tr("stops")
                         : plan.display == plan::LengthUnit::feet ? QObject::tr("ft")
                                                                  : QObject::tr("m");
    const QString entry = typed_.text() + QStringLiteral("_ ") + unit;
    return understood_ ? QObject::tr("%1  Enter takes it").arg(entry) : QObject::tr("%1  no such value yet").arg(entry);
  }
  QStringList parts;
  if (move_.to || value() == Value::none)
    parts << QString::fromStdString(units::secondsText(move_.to.value_or(handle_.time)) + " s");
  if (value() != Value::none) parts << valueWords(plan, move_.measure.value_or(handle_.value));
  if (!snappedTo_.isEmpty()) parts << snappedTo_;
  return parts.join(QStringLiteral("  "));
}

}  // namespace wend::ui
