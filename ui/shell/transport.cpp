#include "ui/shell/transport.h"

#include <algorithm>

namespace wend::ui {

namespace {

constexpr int kTickMs = 16;

}  // namespace

Transport::Transport(Document& document, QObject* parent) : QObject(parent), document_(document) {
  timer_.setTimerType(Qt::PreciseTimer);
  timer_.setInterval(kTickMs);
  connect(&timer_, &QTimer::timeout, this, &Transport::tick);
}

void Transport::toggle() {
  if (playing()) return stop();
  if (document_.playhead() >= document_.shown()->clock.length) document_.setPlayhead(0);
  clock_.start();
  timer_.start();
  Q_EMIT changed();
}

void Transport::stop() {
  timer_.stop();
  Q_EMIT changed();
}

void Transport::setSpeed(double speed) {
  speed_ = speed;
  Q_EMIT changed();
}

void Transport::setLoopingBeat(bool loop) {
  loop_ = loop;
  Q_EMIT changed();
}

std::pair<double, double> Transport::beatAround(double t) const {
  double from = 0, until = document_.shown()->clock.length;
  for (const auto& beat : document_.shown()->beats) {
    if (beat.time <= t) from = std::max(from, beat.time);
    if (beat.time > t) until = std::min(until, beat.time);
  }
  return {from, until};
}

void Transport::tick() {
  const double passed = static_cast<double>(clock_.restart()) / 1000 * speed_;
  const double now = document_.playhead(), length = document_.shown()->clock.length;
  double next = now + passed;
  if (loop_) {
    const auto [from, until] = beatAround(now);
    if (next >= until) next = from;
  }
  document_.setPlayhead(std::min(next, length));
  if (next >= length) stop();
}

void Transport::toStart() {
  document_.setPlayhead(0);
}

void Transport::toNextBeat() {
  document_.setPlayhead(beatAround(document_.playhead()).second);
}

void Transport::toPreviousBeat() {
  const double t = document_.playhead();
  const double from = beatAround(t).first;
  document_.setPlayhead(t - from > 0.5 || from == 0 ? from : beatAround(from - 0.01).first);
}

}  // namespace wend::ui
